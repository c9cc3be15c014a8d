/** The drawing as data: where everything lies on the sheet, what can be taken hold of there, and what a hand does to the
 *  document. No view framework and no screen: metres and JSON Pointers in, shapes and edits out. */

export { layoutFrame } from "./elevation/frame.ts";
export { editsFor, nudgeOf, type SetEdit } from "./elevation/handleEdits.ts";
export { handleAt, partAt } from "./elevation/hitTest.ts";
export { figureText, spokenText } from "./elevation/labelText.ts";
export { layoutElevation } from "./elevation/layoutElevation.ts";
export { dimensionRects, type PlacedDimension, placeDimensions } from "./elevation/placeDimensions.ts";
export { flagRadius, flagRects, type PlacedFlag, placeFlags } from "./elevation/placeFlags.ts";
export {
  type LabelOffset,
  labelType,
  letteringRoom,
  obstaclesOf,
  type PlacedLabel,
  placeLabels,
} from "./elevation/placeLabels.ts";
export { pointAlong, polylineLength } from "./elevation/polyline.ts";
export { niceScaleBar } from "./elevation/scaleBar.ts";
export type {
  AreaShape,
  BoxShape,
  Extent,
  Format,
  Handle,
  Levels,
  PipeShape,
  Point,
  Scene,
  ScenePart,
  Shape,
  SymbolShape,
} from "./elevation/scene.ts";
export { shareScene } from "./elevation/shareScene.ts";
export { angleShare, arcGeometry, shareAngle } from "./elevation/speedArc.ts";
export { symbolStrokes } from "./elevation/symbolPaths.ts";
export { fitWords, textWidth } from "./elevation/textWidth.ts";
export { nappe } from "./elevation/vessels.ts";
export { fitView, type View } from "./elevation/view.ts";
