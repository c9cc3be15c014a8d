import { type Language, languages } from "@tidewright/words";
import { chooseFile, saveFile } from "../document/files.ts";
import { TextField } from "../fields/TextField.tsx";
import { FilmButton } from "../film/FilmKeeper.tsx";
import { KeepingLine } from "../keeping/KeepingLine.tsx";
import { useKeeping } from "../keeping/keepingState.ts";
import { VariantMenu } from "../keeping/VariantMenu.tsx";
import { lastOwnStep, nextOwnStep, redoEdit, show, undoEdit, useBench } from "../state/bench.ts";
import { changeSettings, type Theme, type UnitSystem, useSettings } from "../state/settings.ts";
import { VersionsButton } from "../versions/VersionsButton.tsx";
import { useWords } from "../words/useWords.ts";
import { Menu } from "./Menu.tsx";
import { TrialMenu } from "./TrialMenu.tsx";

const systems: readonly UnitSystem[] = ["metric", "us", "imperial"];
const themes: readonly Theme[] = ["system", "light", "dark"];
const languageNames: Readonly<Record<Language, string>> = { en: "English", de: "Deutsch" };

/** Name of the job, what is kept, files, undo, units, theme. */
export function TopBar() {
  const { say } = useWords();
  const kept = useKeeping((state) => state.kept !== undefined);
  return (
    <header className="top-bar">
      {kept ? (
        <a className="wordmark" href="./" title={say("keeping.toDesk")}>
          Tidewright
        </a>
      ) : (
        <p className="wordmark">Tidewright</p>
      )}
      <JobName />
      <nav className="tools" aria-label={say("keeping.bar.job")}>
        {kept ? <VariantMenu /> : <TrialMenu onFile={chooseFile} />}
        {kept ? (
          <VersionsButton />
        ) : (
          <a className="tool" href="#/start">
            {say("keeping.bar.new")}
          </a>
        )}
        <button type="button" className="tool" onClick={saveFile}>
          {say("keeping.bar.save")}
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
  const { say } = useWords();
  const name = useBench((state) => state.history.present.name);
  return (
    <div className="job-name">
      <TextField path="/name" value={name} label={say("keeping.bar.jobName")} bare />
      <KeepingLine />
    </div>
  );
}

function HistoryButtons() {
  const { say } = useWords();
  const undoes = useBench((state) => lastOwnStep(state.history)?.label);
  const redoes = useBench((state) => nextOwnStep(state.history)?.label);
  return (
    <>
      <HistoryButton
        word={undoes ? say("keeping.bar.undoStep", { step: undoes }) : say("keeping.bar.undo")}
        sleeps={!undoes}
        onClick={undoEdit}
        path="M7 4 3 8l4 4M3 8h8a5 5 0 0 1 0 10H8"
      />
      <HistoryButton
        word={redoes ? say("keeping.bar.redoStep", { step: redoes }) : say("keeping.bar.redo")}
        sleeps={!redoes}
        onClick={redoEdit}
        path="m13 4 4 4-4 4m4-4H9a5 5 0 0 0 0 10h3"
      />
    </>
  );
}

interface HistoryButtonProps {
  /** What is done, and what would be undone or done again. */
  readonly word: string;
  /** The button sleeps where there is nothing. */
  readonly sleeps: boolean;
  readonly onClick: () => void;
  readonly path: string;
}

function HistoryButton({ word, sleeps, onClick, path }: HistoryButtonProps) {
  return (
    <button type="button" className="tool tool-icon" aria-label={word} disabled={sleeps} onClick={onClick}>
      <svg viewBox="0 0 20 20" width="18" height="18" aria-hidden="true">
        <path d={path} />
      </svg>
    </button>
  );
}

function UnitsMenu() {
  const { say } = useWords();
  const system = useSettings((settings) => settings.system);
  const own = useSettings((settings) => Object.keys(settings.own).length);
  return (
    <Menu label={say("keeping.bar.units")}>
      <p className="menu-title">{say("keeping.bar.numbersIn")}</p>
      {systems.map((id) => (
        <button
          key={id}
          type="button"
          aria-pressed={system === id}
          data-system={id}
          onClick={() => changeSettings({ system: id, own: {} })}
        >
          {say(`keeping.bar.${id}`)}
        </button>
      ))}
      <button type="button" onClick={() => show({ dialog: "units" })}>
        {own === 0 ? say("keeping.bar.chooseEach") : say("keeping.bar.chooseEachOwn", { count: own })}
      </button>
    </Menu>
  );
}

function SheetMenu() {
  const { say } = useWords();
  const theme = useSettings((settings) => settings.theme);
  const dimensions = useSettings((settings) => settings.dimensions);
  const language = useSettings((settings) => settings.language);
  const kept = useKeeping((state) => state.kept !== undefined);
  return (
    <Menu label={say("keeping.bar.sheet")}>
      <button type="button" aria-pressed={dimensions} onClick={() => changeSettings({ dimensions: !dimensions })}>
        {say("keeping.bar.dimensions")}
      </button>
      {kept ? (
        <button type="button" onClick={chooseFile}>
          {say("keeping.bar.file")}
        </button>
      ) : null}
      <button type="button" onClick={() => window.print()}>
        {say("keeping.bar.print")}
      </button>
      <p className="menu-title">{say("keeping.bar.drawnOn")}</p>
      {themes.map((id) => (
        <button
          key={id}
          type="button"
          aria-pressed={theme === id}
          data-theme-choice={id}
          onClick={() => changeSettings({ theme: id })}
        >
          {say(`keeping.bar.${id}`)}
        </button>
      ))}
      <p className="menu-title">{say("keeping.bar.language")}</p>
      {languages.map((id) => (
        <button
          key={id}
          type="button"
          lang={id}
          aria-pressed={language === id}
          data-language={id}
          onClick={() => changeSettings({ language: id })}
        >
          {languageNames[id]}
        </button>
      ))}
    </Menu>
  );
}
