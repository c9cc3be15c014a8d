import type { Assessment } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import {
  dimensionRects,
  dimensionRoom,
  fitView,
  flagRects,
  layoutElevation,
  obstaclesOf,
  placeDimensions,
  placeFlags,
  placeLabels,
  sceneInWords,
} from "@tidewright/editor";
import { DimensionLayer } from "../drawing/DimensionLayer.tsx";
import { Hatches } from "../drawing/Hatches.tsx";
import { FlagLayer, LabelLayer } from "../drawing/LabelLayer.tsx";
import { ShapeLayer } from "../drawing/ShapeLayer.tsx";
import { SheetFoot } from "../drawing/SheetFoot.tsx";
import type { ScreenFormat } from "../format/screenFormat.ts";
import { useWords } from "../words/useWords.ts";

interface PictureProps {
  readonly design: Design;
  readonly assessment: Assessment;
  readonly format: ScreenFormat;
}

/** What is to be seen while the program of the bench is under way: the job's name and the drawing with its numbers, once for
 *  a narrow screen and once for a wide one, since nobody knows yet which it is. */
export function FirstPicture(props: PictureProps) {
  return (
    <>
      <p className="first-name">{props.design.name}</p>
      <div className="first-narrow">
        <StillElevation {...props} width={390} height={450} id="first-a" />
      </div>
      <div className="first-wide">
        <StillElevation {...props} width={1040} height={690} id="first-b" />
      </div>
    </>
  );
}

interface StillProps extends PictureProps {
  readonly width: number;
  readonly height: number;
  readonly id: string;
}

/** The elevation as it is drawn, without anything to take hold of. */
function StillElevation({ design, assessment, format, width, height, id }: StillProps) {
  const scene = sceneInWords(layoutElevation(design, assessment), useWords());
  const dimensioned = width > 560;
  const view = fitView(scene.bounds, { width, height, dimensions: dimensionRoom(scene, dimensioned) });
  const obstacles = obstaclesOf(scene, view);
  const flags = placeFlags(scene, view, obstacles);
  const dimensions = dimensioned ? placeDimensions(scene, view, format) : [];
  const keepFree = [...flagRects(flags), ...dimensionRects(dimensions)];
  const labels = placeLabels({ scene, view, format, keepFree, obstacles });
  return (
    <div className="tw-elevation">
      <svg viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <Hatches id={id} scene={scene} view={view} />
        <ShapeLayer scene={scene} view={view} selection={undefined} id={id} />
        <DimensionLayer placed={dimensions} />
        <LabelLayer labels={labels} />
        <FlagLayer flags={flags} />
        <SheetFoot scene={scene} view={view} format={format} />
      </svg>
    </div>
  );
}
