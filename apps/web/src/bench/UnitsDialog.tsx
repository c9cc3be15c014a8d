import { type Dimension, unitsOf } from "@tidewright/units";
import { type Language, languages } from "@tidewright/words";
import { useFormat } from "../format/useFormat.ts";
import { show, useBench } from "../state/bench.ts";
import { changeSettings, useSettings } from "../state/settings.ts";
import { useWords } from "../words/useWords.ts";
import { Sheet } from "./Sheet.tsx";

const rows = [
  "length",
  "volume",
  "flow",
  "head",
  "pressure",
  "velocity",
  "temperature",
  "salinity",
  "power",
  "energy",
  "density",
  "kinematicViscosity",
] as const satisfies readonly Dimension[];

/** Each language in its own words, for whoever does not read the present one. */
const ownNames: Readonly<Record<Language, string>> = { en: "English", de: "Deutsch" };

/** The language of the page, and a free choice of unit for each quantity, kept for the next visit. */
export function UnitsDialog() {
  const open = useBench((state) => state.dialog === "units");
  const own = useSettings((settings) => settings.own);
  const format = useFormat();
  const words = useWords();
  const { say } = words;
  const language = useSettings((settings) => settings.language);
  const choose = (dimension: Dimension, unit: string) => {
    const { [dimension]: _old, ...rest } = own;
    changeSettings({ own: unit === "" ? rest : { ...rest, [dimension]: unit } });
  };
  return (
    <Sheet name="units" title={say("bench.units.title")} open={open} onClose={() => show({ dialog: undefined })}>
      <div className="field">
        <label className="field-label" htmlFor="language">
          {say("bench.units.language")}
        </label>
        <select
          id="language"
          className="select"
          value={language}
          onChange={(event) => changeSettings({ language: event.target.value as Language })}
        >
          {languages.map((each) => (
            <option key={each} value={each} lang={each}>
              {ownNames[each]}
            </option>
          ))}
        </select>
      </div>
      <p className="quiet">{say("bench.units.note")}</p>
      <div className="field-list">
        {rows.map((dimension) => (
          <div className="field" key={dimension}>
            <label className="field-label" htmlFor={`unit-${dimension}`}>
              {say(`bench.units.${dimension}`)}
            </label>
            <select
              id={`unit-${dimension}`}
              className="select"
              value={own[dimension] ?? ""}
              onChange={(event) => choose(dimension, event.target.value)}
            >
              <option value="">
                {say("bench.units.asSystem", { unit: own[dimension] === undefined ? format.unitOf(dimension) : "…" })}
              </option>
              {unitsOf(dimension).map(({ symbol, name }) => (
                <option key={symbol} value={symbol}>
                  {symbol}, {words.known(name)}
                </option>
              ))}
            </select>
          </div>
        ))}
      </div>
      <p className="sheet-actions">
        <button type="button" className="action" onClick={() => changeSettings({ own: {} })}>
          {say("bench.units.asAll")}
        </button>
        <button type="button" className="action action-strong" onClick={() => show({ dialog: undefined })}>
          {say("bench.units.done")}
        </button>
      </p>
    </Sheet>
  );
}
