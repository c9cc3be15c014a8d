import { demoJobs } from "../document/demoJobs.ts";
import { chooseFile, saveFile } from "../document/files.ts";
import { TextField } from "../fields/TextField.tsx";
import { openDesign, redoEdit, show, undoEdit, useBench } from "../state/bench.ts";
import { changeSettings, type Theme, type UnitSystem, useSettings } from "../state/settings.ts";
import { Menu } from "./Menu.tsx";

const systems: readonly (readonly [UnitSystem, string])[] = [
  ["metric", "Metric"],
  ["us", "US"],
  ["imperial", "Imperial"],
];
const themes: readonly (readonly [Theme, string])[] = [
  ["system", "As the system"],
  ["light", "Paper"],
  ["dark", "Graphite"],
];

/** Name of the job, files, undo, units, theme. */
export function TopBar() {
  const name = useBench((state) => state.history.present.name);
  const undoes = useBench((state) => state.history.past.at(-1)?.label);
  const redoes = useBench((state) => state.history.future[0]?.label);
  const changed = useBench((state) => state.history.present !== state.savedDesign);
  const system = useSettings((settings) => settings.system);
  const own = useSettings((settings) => Object.keys(settings.own).length);
  const theme = useSettings((settings) => settings.theme);
  const dimensions = useSettings((settings) => settings.dimensions);

  return (
    <header className="top-bar">
      <p className="wordmark">Tidewright</p>
      <div className="job-name">
        <TextField path="/name" value={name} label="Name of the job" bare />
        {changed ? <span className="unsaved">not saved</span> : null}
      </div>
      <nav className="tools" aria-label="Job">
        <Menu label="Open">
          <p className="menu-title">Jobs to try</p>
          {demoJobs.map(({ id, design }) => (
            <button key={id} type="button" data-job={id} onClick={() => openDesign(design, `Opened ${design.name}`)}>
              {design.name}
            </button>
          ))}
          <p className="menu-title">Your own</p>
          <button type="button" onClick={chooseFile}>
            A design file…
          </button>
        </Menu>
        <button type="button" className="tool" onClick={() => show({ dialog: "new" })}>
          New
        </button>
        <button type="button" className="tool" onClick={saveFile}>
          Save
        </button>
        <button
          type="button"
          className="tool tool-icon"
          aria-label={undoes ? `Undo: ${undoes}` : "Undo"}
          disabled={!undoes}
          onClick={undoEdit}
        >
          <svg viewBox="0 0 20 20" width="18" height="18" aria-hidden="true">
            <path d="M7 4 3 8l4 4M3 8h8a5 5 0 0 1 0 10H8" />
          </svg>
        </button>
        <button
          type="button"
          className="tool tool-icon"
          aria-label={redoes ? `Redo: ${redoes}` : "Redo"}
          disabled={!redoes}
          onClick={redoEdit}
        >
          <svg viewBox="0 0 20 20" width="18" height="18" aria-hidden="true">
            <path d="m13 4 4 4-4 4m4-4H9a5 5 0 0 0 0 10h3" />
          </svg>
        </button>
        <Menu label="Units">
          <p className="menu-title">Numbers in</p>
          {systems.map(([id, label]) => (
            <button
              key={id}
              type="button"
              aria-pressed={system === id}
              data-system={id}
              onClick={() => changeSettings({ system: id, own: {} })}
            >
              {label}
            </button>
          ))}
          <button type="button" onClick={() => show({ dialog: "units" })}>
            {own === 0 ? "Choose each…" : `Choose each… (${own} of your own)`}
          </button>
        </Menu>
        <Menu label="Sheet">
          <button type="button" aria-pressed={dimensions} onClick={() => changeSettings({ dimensions: !dimensions })}>
            Dimension lines
          </button>
          <p className="menu-title">Drawn on</p>
          {themes.map(([id, label]) => (
            <button
              key={id}
              type="button"
              aria-pressed={theme === id}
              data-theme-choice={id}
              onClick={() => changeSettings({ theme: id })}
            >
              {label}
            </button>
          ))}
        </Menu>
      </nav>
    </header>
  );
}
