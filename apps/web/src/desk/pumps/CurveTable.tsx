import { unitLabel } from "@tidewright/units";
import { type ClipboardEvent, type KeyboardEvent, useId, useState } from "react";
import { decimalSign } from "../../format/decimalSign.ts";
import { useWords } from "../../words/useWords.ts";
import { cellPlace } from "./buildPump.ts";
import { readFigure } from "./figure.ts";
import { pastePoints } from "./pastePoints.ts";
import { type CurveForm, emptyPoint, flowMeasure, type PointForm, type PumpForm } from "./pumpForm.ts";
import { Told } from "./SheetFields.tsx";
import { goTo, useSheet } from "./sheetContext.ts";

type Column = "flow" | "head" | "watts";
const columns: readonly Column[] = ["flow", "head", "watts"];

/** The points of one speed as a table that takes two or three columns out of a sheet at once. */
export function CurveTable({ table }: { readonly table: number }) {
  const words = useWords();
  const { say } = words;
  const id = useId();
  const { form, readOnly, change, at } = useSheet();
  const curve = form.curves[table];
  const [wantsWatts, setWantsWatts] = useState(false);
  const [pasted, setPasted] = useState<string>();
  if (curve === undefined) return null;
  const watts = wantsWatts || curve.points.some((point) => point.watts.text.trim() !== "");
  const shown = watts ? columns : columns.slice(0, 2);
  const heading = (column: Column) =>
    column === "watts"
      ? say("pumps.curve.watts")
      : say(`pumps.curve.${column}`, { unit: unitLabel(form.units[column], column) });
  const set = (make: (curve: CurveForm) => CurveForm) => change((now) => withCurve(now, table, make));
  const setRows = (make: (rows: readonly PointForm[]) => readonly PointForm[]) =>
    set((now) => ({ ...now, points: make(now.points) }));

  const paste = (event: ClipboardEvent, row: number, column: Column) => {
    const from = columns.indexOf(column);
    const found = pastePoints(event.clipboardData.getData("text"), decimalSign(words.language), columns.length - from);
    if (found === undefined || readOnly) return;
    event.preventDefault();
    setRows((rows) => {
      const filled = [...rows];
      found.rows.forEach((cells, down) => {
        const target = filled[row + down] ?? emptyPoint();
        const texts = Object.fromEntries(cells.map((text, across) => [columns[from + across], { text }]));
        filled[row + down] = { ...target, ...texts };
      });
      return filled;
    });
    setPasted(
      [
        say("pumps.curve.pasted", { count: found.rows.length }),
        found.skipped > 0 ? say("pumps.curve.skipped", { count: found.skipped }) : "",
      ]
        .filter(Boolean)
        .join(", "),
    );
  };
  const onKey = (event: KeyboardEvent, row: number, column: Column) => {
    const down = { Enter: 1, ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (down === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const to = row + down;
    if (to >= curve.points.length) {
      if (event.key !== "Enter" || readOnly) return;
      setRows((rows) => [...rows, emptyPoint()]);
    }
    if (to >= 0) goTo(cellPlace(table, to, event.key === "Enter" ? "flow" : column));
  };
  const remove = (row: number) => {
    setRows((rows) => rows.filter((_, i) => i !== row));
    goTo(cellPlace(table, Math.max(0, Math.min(row, curve.points.length - 2)), "flow"));
  };
  return (
    <div className="curve-table">
      <table aria-label={curveName(table, curve, say)}>
        <thead>
          <tr>
            <th scope="col" className="curve-row">
              <span className="visually-hidden">#</span>
            </th>
            {shown.map((column) => (
              <th key={column} scope="col">
                {heading(column)}
              </th>
            ))}
            {readOnly ? null : <td className="curve-hand" />}
          </tr>
        </thead>
        {curve.points.map((point, row) => {
          const told = columns.flatMap((column) => at(cellPlace(table, row, column)));
          return (
            <tbody key={point.key}>
              <tr>
                <th scope="row" className="curve-row">
                  {row + 1}
                </th>
                {shown.map((column) => {
                  const place = cellPlace(table, row, column);
                  return (
                    <td key={column}>
                      <input
                        className="figure-input"
                        type="text"
                        inputMode="decimal"
                        autoComplete="off"
                        spellCheck={false}
                        data-place={place}
                        aria-label={say("pumps.curve.cell", { column: heading(column), row: row + 1 })}
                        aria-invalid={at(place).some(({ severity }) => severity !== "doubt")}
                        aria-describedby={told.length > 0 ? `${id}-${row}` : undefined}
                        readOnly={readOnly}
                        value={point[column].text}
                        onChange={({ target }) => {
                          const { value } = target;
                          setRows((rows) =>
                            rows.map((each, i) =>
                              i === row ? { ...each, [column]: { ...each[column], text: value } } : each,
                            ),
                          );
                        }}
                        onKeyDown={(event) => onKey(event, row, column)}
                        onPaste={(event) => paste(event, row, column)}
                      />
                    </td>
                  );
                })}
                {readOnly ? null : (
                  <td className="curve-hand">
                    <button
                      type="button"
                      className="icon-button"
                      aria-label={say("pumps.curve.removeRow", { row: row + 1 })}
                      onClick={() => remove(row)}
                    >
                      ×
                    </button>
                  </td>
                )}
              </tr>
              {told.length === 0 ? null : (
                <tr>
                  <td />
                  <td colSpan={shown.length + (readOnly ? 0 : 1)} className="curve-told">
                    <Told problems={told} id={`${id}-${row}`} />
                  </td>
                </tr>
              )}
            </tbody>
          );
        })}
      </table>
      <Told problems={at(`curves.${table}`)} id={`${id}-table`} />
      {readOnly ? null : (
        <p className="curve-hands">
          <button
            type="button"
            className="tool"
            onClick={() => {
              setRows((rows) => [...rows, emptyPoint()]);
              goTo(cellPlace(table, curve.points.length, "flow"));
            }}
          >
            {say("pumps.curve.addRow")}
          </button>
          <button
            type="button"
            className="tool"
            onClick={() => change((now) => withCurve(now, table, (old) => sorted(old, now, words)))}
          >
            {say("pumps.curve.sort")}
          </button>
          {watts ? null : (
            <button type="button" className="tool" onClick={() => setWantsWatts(true)}>
              {say("pumps.curve.addWatts")}
            </button>
          )}
          <span className="quiet" role="status">
            {pasted}
          </span>
        </p>
      )}
    </div>
  );
}

const withCurve = (form: PumpForm, table: number, make: (curve: CurveForm) => CurveForm): PumpForm => ({
  ...form,
  curves: form.curves.map((curve, i) => (i === table ? make(curve) : curve)),
});

/** Rows by rising flow; those whose flow cannot be read go last, in their order. */
function sorted(curve: CurveForm, form: PumpForm, words: ReturnType<typeof useWords>): CurveForm {
  const flowOf = ({ flow }: PointForm): number => {
    const reading = readFigure(flow, flowMeasure(form.units), words);
    return reading.state === "read" ? reading.value : Number.POSITIVE_INFINITY;
  };
  const points = curve.points
    .map((point) => ({ point, flow: flowOf(point) }))
    .sort((a, b) => (a.flow === b.flow ? 0 : a.flow - b.flow))
    .map(({ point }) => point);
  return { ...curve, points };
}

/** How a table of points is spoken of. */
export function curveName(table: number, curve: CurveForm, say: ReturnType<typeof useWords>["say"]): string {
  return table === 0 ? say("pumps.curve.full") : say("pumps.curve.slower", { speed: `${curve.speed.text || "?"} %` });
}
