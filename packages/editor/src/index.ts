/** The drawing as data: where everything lies on the sheet, what can be taken hold of there, and what a hand does to the
 *  document. No view framework and no screen: metres and JSON Pointers in, shapes and edits out. */

export { type Addition, additionNames, addThing, duplicatePart } from "./edits/addThings.ts";
export { drawRun, previewRun, type RunEnd } from "./edits/drawRun.ts";
export { insertPart, type RunSpot } from "./edits/insertPart.ts";
export { type MainQuantity, mainQuantity } from "./edits/mainQuantity.ts";
export type { Outcome, Saying } from "./edits/outcome.ts";
export { actionsFor, actOn, type OfferedAction, type PartAction } from "./edits/partActions.ts";
export { choiceLooks, type PartChoice, partChoiceNames, plainPart } from "./edits/partChoices.ts";
export { removePart } from "./edits/removePart.ts";
export { runEndOf } from "./edits/runEnds.ts";
export { runPartAt, seriesAround } from "./edits/runPart.ts";
export { aroundBoth } from "./elevation/bounds.ts";
export { type Camera, cameraView } from "./elevation/camera.ts";
export { layoutFrame } from "./elevation/frame.ts";
export { aimGrip, bodyRadius } from "./elevation/gripEdits.ts";
export { figureText, spokenText } from "./elevation/labelText.ts";
export { layoutElevation } from "./elevation/layoutElevation.ts";
export { heldRects, placeBar } from "./elevation/placeBar.ts";
export { dimensionRects, type PlacedDimension, placeDimensions } from "./elevation/placeDimensions.ts";
export { flagRadius, flagRects, type PlacedFlag, placeFlags } from "./elevation/placeFlags.ts";
export {
  type LabelOffset,
  labelType,
  letteringRoom,
  obstaclesOf,
  type PlacedLabel,
  placeLabels,
  type Rect,
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
  LineHandle,
  PipeShape,
  Point,
  Scene,
  ScenePart,
  Shape,
  SymbolShape,
} from "./elevation/scene.ts";
export { sceneInWords } from "./elevation/sceneInWords.ts";
export { shareScene } from "./elevation/shareScene.ts";
export { shownHandles } from "./elevation/shownHandles.ts";
export { arcGeometry, shareAngle } from "./elevation/speedArc.ts";
export { symbolStrokes } from "./elevation/symbolPaths.ts";
export { fitWords, textWidth } from "./elevation/textWidth.ts";
export { nappe } from "./elevation/vessels.ts";
export { dimensionRoom, fitView, type View } from "./elevation/view.ts";
export { type FlowLine, flowLines } from "./flow/flowLines.ts";
export { flowMarks, flowSlowing } from "./flow/flowMarks.ts";
export { layoutPlan } from "./plan/layoutPlan.ts";
export { drawZoneIn, gripOf, planEdits, planNudge } from "./plan/planEdits.ts";
export type { PlanHandle, PlanPart, PlanScene } from "./plan/planScene.ts";
export { planView } from "./plan/planView.ts";
export { type PlanEffect, type PlanEvent, type PlanState, planIdle } from "./plan/states/planState.ts";
export { planStep } from "./plan/states/planStep.ts";
export {
  type Device,
  type InsertingPart,
  idle,
  type KeyInput,
  type PointerInput,
  type RoutingRun,
  type SheetContext,
  type SheetEffect,
  type SheetEvent,
  type SheetState,
} from "./states/sheet.ts";
export { step } from "./states/step.ts";
