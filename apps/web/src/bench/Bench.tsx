import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from "react";
import { openFile } from "../document/files.ts";
import { benchHands, Elevation } from "../drawing/index.ts";
import { FilmKeeper } from "../film/FilmKeeper.tsx";
import { FilmStage } from "../film/FilmStage.tsx";
import { useFilm } from "../film/filmState.ts";
import { useSafeLine } from "../film/useSafeLine.ts";
import { useFormat } from "../format/useFormat.ts";
import { SourcePopover } from "../provenance/SourcePopover.tsx";
import { isUnsaved, redoEdit, undoEdit, useBench } from "../state/bench.ts";
import { useSettings } from "../state/settings.ts";
import { isWideScreen, useWideScreen } from "../state/useWideScreen.ts";
import { AnswerFigures, AnswerSentence } from "./AnswerStrip.tsx";
import { Curves } from "./Curves.tsx";
import { Drawer } from "./Drawer.tsx";
import { FaultScreen } from "./FaultScreen.tsx";
import { Findings } from "./Findings.tsx";
import { Inspector } from "./Inspector.tsx";
import { NewDialog } from "./NewDialog.tsx";
import { ProblemsDialog } from "./ProblemsDialog.tsx";
import { SectionIndex } from "./SectionIndex.tsx";
import { TopBar } from "./TopBar.tsx";
import { UnitsDialog } from "./UnitsDialog.tsx";

/** Below this the drawing scrolls in its place [px]. */
const leastHeight = 240;
/** Below this dimension lines and labels fight for the paper [px]. */
const roomForDimensions = 400;
/** On one column the drawing is no taller than this multiple of its width, and this share of the screen. */
const tallest = 1.15;
const stickyShare = 0.46;

/** The whole bench: answer, drawing, findings, drawer. */
export function Bench() {
  const over = useFileDrop();
  useUndoKeys();
  useLeaveWarning();
  const film = useFilm((state) => state.open);
  return (
    <div className={film ? "bench bench-film" : "bench"} data-drop={over ? "" : undefined}>
      <a className="skip" href="#findings">
        Skip to the findings
      </a>
      <TopBar />
      <main className="work">
        <AnswerSentence />
        <AnswerFigures />
        {film ? <FilmPlace /> : <Drawing />}
        <div className="side">
          <SectionIndex />
          <div className="side-scroll">
            <Inspector />
            <Findings />
          </div>
          <Curves />
        </div>
        <Drawer />
      </main>
      <Said />
      <FilmKeeper />
      <NewDialog />
      <UnitsDialog />
      <ProblemsDialog />
      <SourcePopover />
      {over ? <p className="drop-word">Let go to open the design</p> : null}
    </div>
  );
}

/** Where the drawing is, while it shows a film. */
function FilmPlace() {
  const again = useFilm((state) => state.played);
  const wide = useWideScreen();
  return (
    <div className="drawing drawing-film">
      <FaultScreen what="the film" again={again}>
        <FilmStage wide={wide} />
      </FaultScreen>
    </div>
  );
}

function Drawing() {
  const assessed = useBench((state) => state.assessed);
  const selection = useBench((state) => state.selection);
  const dimensions = useSettings((settings) => settings.dimensions);
  const format = useFormat();
  const frame = useRef<HTMLElement>(null);
  const height = useFreeHeight(frame);
  const ruled = useSafeLine();
  return (
    <section className="drawing" ref={frame} aria-label="Side elevation to scale">
      {assessed === undefined || height === undefined ? null : (
        <FaultScreen what="the drawing" again={assessed}>
          <Elevation
            design={assessed.design}
            assessment={assessed.assessment}
            selection={selection}
            hands={benchHands}
            format={format}
            ruled={ruled}
            showDimensions={dimensions && height > roomForDimensions}
            height={height}
          />
        </FaultScreen>
      )}
    </section>
  );
}

/** Height for the drawing [px]: on a wide screen what the layout leaves, else what lets something of the rest be seen. */
function useFreeHeight(frame: RefObject<HTMLElement | null>): number | undefined {
  const [height, setHeight] = useState<number>();
  useLayoutEffect(() => {
    const element = frame.current;
    if (element === null) return;
    const measure = () => {
      const free = isWideScreen()
        ? element.clientHeight
        : Math.min(element.clientWidth * tallest, window.innerHeight * stickyShare);
      setHeight(Math.max(leastHeight, Math.floor(free)));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    window.addEventListener("resize", measure);
    return () => {
      observer.disconnect();
      window.removeEventListener("resize", measure);
    };
  }, [frame]);
  return height;
}

/** Words on what was just done, for eyes and readers; they fade from the screen by themselves. */
function Said() {
  const said = useBench((state) => state.said);
  return (
    <p className="said" role="status" key={said}>
      {said}
    </p>
  );
}

/** The browser asks before a page with unsaved edits is left. */
function useLeaveWarning(): void {
  useEffect(() => {
    const leave = (event: BeforeUnloadEvent) => {
      if (isUnsaved()) event.preventDefault();
    };
    window.addEventListener("beforeunload", leave);
    return () => window.removeEventListener("beforeunload", leave);
  }, []);
}

function useUndoKeys(): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      const back = key === "z" && !event.shiftKey;
      const forth = (key === "z" && event.shiftKey) || key === "y";
      if (!back && !forth) return;
      // A field with text that is not taken yet keeps its own undo.
      if (event.target instanceof HTMLElement && event.target.matches("[data-draft], [type=search]")) return;
      event.preventDefault();
      if (back) undoEdit();
      else redoEdit();
    };
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  }, []);
}

/** True while a file hangs over the page; a dropped file is opened. */
function useFileDrop(): boolean {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const hasFile = (event: DragEvent) => event.dataTransfer?.types.includes("Files") ?? false;
    const hang = (event: DragEvent) => {
      if (!hasFile(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent) => {
      if (!hasFile(event)) return;
      event.preventDefault();
      setOver(false);
      const file = event.dataTransfer?.files[0];
      if (file !== undefined) void openFile(file);
    };
    document.addEventListener("dragover", hang);
    document.addEventListener("dragleave", leave);
    document.addEventListener("drop", drop);
    return () => {
      document.removeEventListener("dragover", hang);
      document.removeEventListener("dragleave", leave);
      document.removeEventListener("drop", drop);
    };
  }, []);
  return over;
}
