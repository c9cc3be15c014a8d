import { type Format, figureText, niceScaleBar, type Scene, type View } from "@tidewright/editor";
import { useWords } from "../words/useWords.ts";

/** Picture points of the screen in one metre of the sheet, at 96 to the inch. */
const pointsPerMetre = 96 / 0.0254;

/** Frame of the sheet, scale bar on the left, title block on the right; on a phone the name and the scale alone. */
export function SheetFoot({
  scene,
  view,
  format,
}: {
  readonly scene: Scene;
  readonly view: View;
  readonly format: Format;
}) {
  const { say, decimal } = useWords();
  const narrow = view.width < 560;
  const top = view.height - view.foot;
  const bar = niceScaleBar(view.scale, format, narrow ? 110 : view.width < 900 ? 96 : 170);
  const ratio = pointsPerMetre / view.scale;
  // On a phone the sheet names the job and its scale; the numbers stand on the parts.
  const cells = scene.summary.slice(0, narrow ? 0 : view.width < 720 ? 2 : 4).map((figure) => ({
    name: figure.before ?? "",
    text: figureText({ value: figure.value, dimension: figure.dimension }, format),
  }));
  const blockTop = top + 8;
  const blockHeight = view.height - 6 - blockTop;
  const cell = 96;
  const nameWidth = narrow ? 0 : Math.min(210, Math.max(120, view.width - 12 - cell * cells.length - 230));
  const left = view.width - 6 - cell * cells.length - nameWidth;
  return (
    <g aria-hidden="true">
      <rect
        x={6}
        y={top + 2}
        width={Math.max(0, view.width - 12)}
        height={Math.max(0, view.foot - 8)}
        className="tw-paper"
      />
      <rect x={5.5} y={5.5} width={Math.max(0, view.width - 11)} height={view.height - 11} className="tw-sheet" />
      <g transform={`translate(18 ${narrow ? top + 20 : top + 30})`}>
        {bar.ticks.map((tick, i) => {
          const next = bar.ticks[i + 1];
          return next === undefined ? null : (
            <rect
              key={tick}
              x={tick * view.scale}
              y={0}
              width={(next - tick) * view.scale}
              height={4.5}
              className={i % 2 ? "tw-barEmpty" : "tw-barFull"}
            />
          );
        })}
        {bar.labels.map(({ at, text }, i) => (
          <text key={at} x={at * view.scale} y={-4} className="tw-sheetText" textAnchor={i === 0 ? "start" : "middle"}>
            {text}
          </text>
        ))}
        <text x={bar.ticks.at(-1)! * view.scale + 30} y={5} className="tw-sheetSmall">
          1 : {ratio < 20 ? decimal(ratio.toFixed(1)) : Math.round(ratio)}
        </text>
      </g>
      {narrow ? (
        <text x={view.width - 14} y={top + 25} className="tw-sheetName" textAnchor="end">
          {clip(scene.name, 24)}
        </text>
      ) : (
        <g>
          <rect x={left} y={blockTop} width={nameWidth} height={blockHeight} className="tw-cell" />
          <text x={left + 8} y={blockTop + 15} className="tw-sheetSmall">
            {say("drawing.elevation")}
          </text>
          <text x={left + 8} y={blockTop + 32} className="tw-sheetName">
            {clip(scene.name, Math.floor(nameWidth / 7))}
          </text>
        </g>
      )}
      {cells.map(({ name, text }, i) => (
        <g key={name} transform={`translate(${left + nameWidth + cell * i} ${blockTop})`}>
          <rect width={cell} height={blockHeight} className="tw-cell" />
          <text x={8} y={15} className="tw-sheetSmall">
            {name}
          </text>
          <text x={8} y={32} className="tw-sheetFigure">
            {text}
          </text>
        </g>
      ))}
    </g>
  );
}

const clip = (text: string, most: number): string =>
  text.length > most ? `${text.slice(0, most - 1).trimEnd()}…` : text;
