import { unitLabel, unitsOf } from "@tidewright/units";
import { useId } from "react";
import { useWords } from "../../words/useWords.ts";
import { CurveTable, curveName } from "./CurveTable.tsx";
import { emptyFigure } from "./figure.ts";
import type { JudgedPump } from "./judgePump.ts";
import { PumpPicture } from "./PumpPicture.tsx";
import { emptyPoint, type FormUnits, inUnits, newKey } from "./pumpForm.ts";
import { Told } from "./SheetFields.tsx";
import { goTo, useSheet } from "./sheetContext.ts";

const flowUnits = ["L/h", "L/min", "m3/h", "US gal/h", "US gal/min", "imp gal/h"];
const headUnits = ["m", "cm", "ft", "in"];

/** Head curves: a table for each speed, and beside them the curves as they will be reckoned with. */
export function CurveGroup({ judged }: { readonly judged: JudgedPump }) {
  const { say } = useWords();
  const { form, readOnly, change } = useSheet();
  const several = form.control === "controllable" || form.curves.length > 1;
  return (
    <section className="pump-group pump-curves">
      <div className="block-head">
        <h2>{say("pumps.group.curve")}</h2>
        <div className="curve-units">
          <UnitChoice dimension="flow" units={flowUnits} />
          <UnitChoice dimension="head" units={headUnits} />
        </div>
      </div>
      <div className="curve-columns" data-speeds={form.curves.length > 1 ? "several" : "one"}>
        <div className="curve-tables">
          {readOnly ? null : <p className="quiet">{say("pumps.curve.explain")}</p>}
          <div className="curve-speeds">
            {form.curves.map((curve, table) => (
              <section key={curve.key} className="curve-speed">
                {several ? <h3>{curveName(table, curve, say)}</h3> : null}
                {table === 0 ? null : <Speed table={table} />}
                <CurveTable table={table} />
              </section>
            ))}
          </div>
          {readOnly || !several ? null : (
            <button
              type="button"
              className="action"
              onClick={() => {
                const at = form.curves.length;
                change((now) => ({
                  ...now,
                  curves: [
                    ...now.curves,
                    { key: newKey(), speed: emptyFigure, points: [emptyPoint(), emptyPoint(), emptyPoint()] },
                  ],
                }));
                goTo(`curves.${at}.speed`);
              }}
            >
              {say("pumps.curve.addSpeed")}
            </button>
          )}
        </div>
        <PumpPicture curves={judged.row.curves} units={form.units} />
      </div>
    </section>
  );
}

/** How fast a slower table runs, and the way to be rid of it. */
function Speed({ table }: { readonly table: number }) {
  const { say } = useWords();
  const id = useId();
  const { form, readOnly, change, at } = useSheet();
  const place = `curves.${table}.speed`;
  const problems = at(place);
  const { speed } = form.curves[table] ?? { speed: emptyFigure };
  return (
    <div className="curve-speed-line">
      <div className="field">
        <label className="field-label" htmlFor={id}>
          {say("pumps.curve.speed")}
        </label>
        <input
          id={id}
          className="figure-input"
          type="text"
          inputMode="decimal"
          autoComplete="off"
          data-place={place}
          aria-invalid={problems.some(({ severity }) => severity !== "doubt")}
          aria-describedby={problems.length > 0 ? `${id}-told` : undefined}
          readOnly={readOnly}
          placeholder={say("pumps.needed")}
          value={speed.text}
          onChange={({ target }) => {
            const { value } = target;
            change((now) => ({
              ...now,
              curves: now.curves.map((curve, i) =>
                i === table ? { ...curve, speed: { ...curve.speed, text: value } } : curve,
              ),
            }));
          }}
        />
      </div>
      {readOnly ? null : (
        <button
          type="button"
          className="tool"
          onClick={() => change((now) => ({ ...now, curves: now.curves.filter((_, i) => i !== table) }))}
        >
          {say("pumps.curve.removeSpeed")}
        </button>
      )}
      <Told problems={problems} id={`${id}-told`} />
    </div>
  );
}

interface UnitProps {
  readonly dimension: "flow" | "head";
  readonly units: readonly string[];
}

/** What the numbers of the tables are in; they are turned along. */
function UnitChoice({ dimension, units }: UnitProps) {
  const words = useWords();
  const id = useId();
  const { form, change } = useSheet();
  const known = unitsOf(dimension).map(({ symbol }) => symbol);
  const now = form.units[dimension];
  const choices = [...new Set([...units, now])].filter((unit) => known.includes(unit));
  return (
    <div className="field">
      <label className="field-label" htmlFor={id}>
        {words.say(`pumps.curve.${dimension}Unit`)}
      </label>
      <select
        id={id}
        className="select"
        value={now}
        onChange={({ target }) => {
          const next: FormUnits = { ...form.units, [dimension]: target.value };
          change((old) => inUnits(old, next, words));
        }}
      >
        {choices.map((unit) => (
          <option key={unit} value={unit}>
            {unitLabel(unit, dimension)}
          </option>
        ))}
      </select>
    </div>
  );
}
