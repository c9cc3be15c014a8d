import { lazy, type ReactNode, type RefObject, Suspense, useEffect, useLayoutEffect, useRef, useState } from "react";
import { openFile } from "../document/files.ts";
import { benchHands, Elevation } from "../drawing/index.ts";
import { FilmKeeper } from "../film/FilmKeeper.tsx";
import { useFilm } from "../film/filmState.ts";
import { useSafeLine } from "../film/useSafeLine.ts";
import { dropFirstPicture } from "../firstPicture/dropFirstPicture.ts";
import { useFormat } from "../format/useFormat.ts";
import { presentKeeping, useKeeping, wouldLose } from "../keeping/keepingState.ts";
import { isTrialKept } from "../keeping/TrialLine.tsx";
import { DrawingViews } from "../plan/DrawingViews.tsx";
import { dropDrag, edit, isUnsaved, redoEdit, select, undoEdit, useBench } from "../state/bench.ts";
import { useSettings } from "../state/settings.ts";
import { isWideScreen, useWideScreen } from "../state/useWideScreen.ts";
import { useVersions } from "../versions/versionsState.ts";
import { enter, useWords } from "../words/useWords.ts";
import { AnswerFigures, AnswerSentence } from "./AnswerStrip.tsx";
import { Drawer } from "./Drawer.tsx";
import { FaultScreen } from "./FaultScreen.tsx";
import { Findings } from "./Findings.tsx";
import { Inspector } from "./Inspector.tsx";
import { PrintedParts } from "./PrintedParts.tsx";
import { SectionIndex } from "./SectionIndex.tsx";
import { TopBar } from "./TopBar.tsx";

// What is not seen at once is not loaded at once: the numbers and the drawing come first.
const FilmStage = lazy(async () => ({ default: (await import("../film/FilmStage.tsx")).FilmStage }));
const Plan = lazy(async () => ({ default: (await import("../plan/Plan.tsx")).Plan }));
const SourcePopover = lazy(async () => {
  const [{ SourcePopover }] = await Promise.all([import("../provenance/SourcePopover.tsx"), enter("provenance")]);
  return { default: SourcePopover };
});
const Curves = lazy(async () => ({ default: (await import("./Curves.tsx")).Curves }));
const UnitsDialog = lazy(async () => ({ default: (await import("./UnitsDialog.tsx")).UnitsDialog }));
const ProblemsDialog = lazy(async () => ({ default: (await import("./ProblemsDialog.tsx")).ProblemsDialog }));
const Versions = lazy(async () => ({ default: (await import("../versions/Versions.tsx")).Versions }));
const VersionDrawing = lazy(async () => ({ default: (await import("../versions/VersionDrawing.tsx")).VersionDrawing }));

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
  const { say } = useWords();
  return (
    <div className={film ? "bench bench-film" : "bench"} data-drop={over ? "" : undefined}>
      <a className="skip" href="#findings">
        {say("keeping.bar.skip")}
      </a>
      <TopBar />
      <main className="work">
        <AnswerSentence />
        <AnswerFigures />
        {film ? <FilmPlace /> : <Drawing />}
        <div className="side">
          <SectionIndex />
          <div className="side-scroll">
            <Side />
          </div>
          <Suspense fallback={<div className="curves curves-coming" />}>
            <Curves />
          </Suspense>
        </div>
        <Drawer />
        <PrintedParts />
      </main>
      <Said />
      <FilmKeeper />
      <Dialogs />
      {over ? <p className="drop-word">{say("keeping.bar.drop")}</p> : null}
    </div>
  );
}

/** Beside the drawing: what is in hand and what is the matter, or the list of versions. */
function Side() {
  const versions = useVersions((state) => state.open);
  const kept = useKeeping((state) => state.kept !== undefined);
  if (!versions || !kept)
    return (
      <>
        <Inspector />
        <Findings />
      </>
    );
  return (
    <Suspense fallback={null}>
      <Versions />
    </Suspense>
  );
}

/** The sheets over the bench, each loaded when it is first asked for and there from then on. */
function Dialogs() {
  const dialog = useBench((state) => state.dialog);
  const source = useBench((state) => state.source !== undefined);
  return (
    <>
      <OnceAsked asked={dialog === "units"}>
        <UnitsDialog />
      </OnceAsked>
      <OnceAsked asked={dialog === "problems"}>
        <ProblemsDialog />
      </OnceAsked>
      <OnceAsked asked={source}>
        <SourcePopover />
      </OnceAsked>
    </>
  );
}

function OnceAsked({ asked, children }: { readonly asked: boolean; readonly children: ReactNode }) {
  const [was, setWas] = useState(false);
  if (asked && !was) setWas(true);
  return asked || was ? <Suspense fallback={null}>{children}</Suspense> : null;
}

/** Where the drawing is, while it shows a film. */
function FilmPlace() {
  const { say } = useWords();
  const again = useFilm((state) => state.played);
  const wide = useWideScreen();
  return (
    <div className="drawing drawing-film">
      <FaultScreen what={say("keeping.bar.theFilm")} again={again}>
        <Suspense fallback={null}>
          <FilmStage wide={wide} />
        </Suspense>
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
  const looking = useVersions((state) => state.looking);
  const { say } = useWords();
  const drawn = assessed !== undefined && height !== undefined;
  useEffect(() => {
    if (drawn) dropFirstPicture();
  }, [drawn]);
  return (
    <section className="drawing" ref={frame} aria-label={say("keeping.bar.elevation")}>
      {looking !== undefined && height !== undefined ? (
        <Suspense fallback={null}>
          <VersionDrawing looking={looking} height={height} />
        </Suspense>
      ) : assessed === undefined || height === undefined ? null : (
        <FaultScreen what={say("keeping.bar.theDrawing")} again={assessed}>
          <DrawingViews
            height={height}
            side={(room) => (
              <Elevation
                design={assessed.design}
                assessment={assessed.assessment}
                selection={selection}
                hands={benchHands}
                format={format}
                ruled={ruled}
                showDimensions={dimensions && room > roomForDimensions}
                height={room}
              />
            )}
            top={(width, room) => (
              <Suspense fallback={null}>
                <Plan
                  design={assessed.design}
                  assessment={assessed.assessment}
                  selection={selection}
                  onSelect={select}
                  onEdit={edit}
                  onDrop={dropDrag}
                  format={format}
                  width={width}
                  height={room}
                />
              </Suspense>
            )}
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

/** The browser asks before a page is left of which something would be lost: a trial that was changed, or what this
 *  device has not written down yet. */
function useLeaveWarning(): void {
  useEffect(() => {
    const leave = (event: BeforeUnloadEvent) => {
      if (leavesSomething()) event.preventDefault();
    };
    window.addEventListener("beforeunload", leave);
    return () => window.removeEventListener("beforeunload", leave);
  }, []);
}

function leavesSomething(): boolean {
  return presentKeeping().kept === undefined ? isUnsaved() && !isTrialKept() : wouldLose();
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
