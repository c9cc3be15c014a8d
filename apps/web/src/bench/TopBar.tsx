import { demoJobs } from "../document/demoJobs.ts";
import { chooseFile, saveFile } from "../document/files.ts";
import { TextField } from "../fields/TextField.tsx";
import { FilmButton } from "../film/FilmKeeper.tsx";
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
  return (
    <header className="top-bar">
      <p className="wordmark">Tidewright</p>
      <JobName />
      <nav className="tools" aria-label="Job">
        <OpenMenu />
        <button type="button" className="tool" onClick={() => show({ dialog: "new" })}>
          New
        </button>
        <button type="button" className="tool" onClick={saveFile}>
          Save
        </button>
        <HistoryButtons />
        <FilmButton />
        <UnitsMenu />
        <SheetMenu />
      </nav>
    </header>
  );
}

function JobName() {
  const name = useBench((state) => state.history.present.name);
  const changed = useBench((state) => state.history.present !== state.savedDesign);
  return (
    <div className="job-name">
      <TextField path="/name" value={name} label="Name of the job" bare />
      {changed ? <span className="unsaved">not saved</span> : null}
    </div>
  );
}

function OpenMenu() {
  return (
    <Menu label="Open">
      <p className="menu-title">Jobs to try</p>
      {demoJobs.map(({ id, design }) => (
        <button key={id} type="button" data-job={id} onClick={() => openDesign(design, `Opened ${design.name}`)}>
          {design.name}
        </button>
      ))}
      <p className="menu-title">Your own</p>
      <button type="button" onClick={chooseFile}>
        A design or scenario file…
      </button>
    </Menu>
  );
}

function HistoryButtons() {
  const undoes = useBench((state) => state.history.past.at(-1)?.label);
  const redoes = useBench((state) => state.history.future[0]?.label);
  return (
    <>
      <HistoryButton word="Undo" step={undoes} onClick={undoEdit} path="M7 4 3 8l4 4M3 8h8a5 5 0 0 1 0 10H8" />
      <HistoryButton word="Redo" step={redoes} onClick={redoEdit} path="m13 4 4 4-4 4m4-4H9a5 5 0 0 0 0 10h3" />
    </>
  );
}

interface HistoryButtonProps {
  readonly word: string;
  /** What would be undone or done again; the button sleeps where there is nothing. */
  readonly step: string | undefined;
  readonly onClick: () => void;
  readonly path: string;
}

function HistoryButton({ word, step, onClick, path }: HistoryButtonProps) {
  return (
    <button
      type="button"
      className="tool tool-icon"
      aria-label={step ? `${word}: ${step}` : word}
      disabled={!step}
      onClick={onClick}
    >
      <svg viewBox="0 0 20 20" width="18" height="18" aria-hidden="true">
        <path d={path} />
      </svg>
    </button>
  );
}

function UnitsMenu() {
  const system = useSettings((settings) => settings.system);
  const own = useSettings((settings) => Object.keys(settings.own).length);
  return (
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
  );
}

function SheetMenu() {
  const theme = useSettings((settings) => settings.theme);
  const dimensions = useSettings((settings) => settings.dimensions);
  return (
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
  );
}
