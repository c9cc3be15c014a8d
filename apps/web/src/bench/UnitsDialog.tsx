import { type Dimension, unitsOf } from "@tidewright/units";
import { useFormat } from "../format/useFormat.ts";
import { show, useBench } from "../state/bench.ts";
import { changeSettings, useSettings } from "../state/settings.ts";
import { Sheet } from "./Sheet.tsx";

const rows: readonly (readonly [Dimension, string])[] = [
  ["length", "Lengths"],
  ["volume", "Volumes"],
  ["flow", "Flow"],
  ["head", "Head"],
  ["pressure", "Pressure"],
  ["velocity", "Speed of water"],
  ["temperature", "Temperature"],
  ["salinity", "Salinity"],
  ["power", "Power"],
  ["energy", "Energy"],
  ["density", "Density"],
  ["kinematicViscosity", "Viscosity"],
];

/** A free choice of unit for each quantity, kept for the next visit. */
export function UnitsDialog() {
  const open = useBench((state) => state.dialog === "units");
  const own = useSettings((settings) => settings.own);
  const format = useFormat();
  const choose = (dimension: Dimension, unit: string) => {
    const { [dimension]: _old, ...rest } = own;
    changeSettings({ own: unit === "" ? rest : { ...rest, [dimension]: unit } });
  };
  return (
    <Sheet name="units" title="Units" open={open} onClose={() => show({ dialog: undefined })}>
      <p className="quiet">
        For the numbers on screen. What you typed keeps its own unit in the document; fields take any unit.
      </p>
      <div className="field-list">
        {rows.map(([dimension, label]) => (
          <div className="field" key={dimension}>
            <label className="field-label" htmlFor={`unit-${dimension}`}>
              {label}
            </label>
            <select
              id={`unit-${dimension}`}
              className="select"
              value={own[dimension] ?? ""}
              onChange={(event) => choose(dimension, event.target.value)}
            >
              <option value="">as the system ({own[dimension] === undefined ? format.unitOf(dimension) : "…"})</option>
              {unitsOf(dimension).map(({ symbol, name }) => (
                <option key={symbol} value={symbol}>
                  {symbol}, {name}
                </option>
              ))}
            </select>
          </div>
        ))}
      </div>
      <p className="sheet-actions">
        <button type="button" className="action" onClick={() => changeSettings({ own: {} })}>
          All as the system
        </button>
        <button type="button" className="action action-strong" onClick={() => show({ dialog: undefined })}>
          Done
        </button>
      </p>
    </Sheet>
  );
}
