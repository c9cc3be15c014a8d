import { type Assessment, type SafetySweep, withSweep } from "@tidewright/advice";
import {
  checkKeptDesign,
  type Design,
  type Edit,
  endDrag,
  type History,
  type Problem,
  record,
  redoMine,
  type Step,
  startHistory,
  undo,
  undoMine,
} from "@tidewright/design";
import { flushSync } from "react-dom";
import { currentCatalogue, watchCatalogue } from "../catalogue/currentCatalogue.ts";
import { partTitle } from "../document/partTitle.ts";
import { type EngineClient, startEngine } from "../engine/engineClient.ts";
import { quickAssess } from "../engine/quickAssess.ts";
import { words } from "../words/useWords.ts";
import type { BenchState } from "./benchState.ts";
import { markEdit, markShown } from "./editToPaint.ts";
import { createStore, useStore } from "./store.ts";

/** Nothing is on the table until `layFirst`; nobody draws the bench before. */
const nothing = undefined as unknown as Design;

const store = createStore<BenchState>({
  history: startHistory(nothing),
  assessed: undefined,
  overTimeOf: undefined,
  curves: undefined,
  ranking: undefined,
  levers: undefined,
  rankedLoop: 0,
  fault: undefined,
  selection: undefined,
  dialog: undefined,
  refused: undefined,
  refusedEdit: undefined,
  lookOnly: undefined,
  tab: "pumps",
  drawerOpen: false,
  source: undefined,
  said: "",
  savedDesign: nothing,
});

/** The newest sweep over time and the document it is about: its findings belong to every assessment of that document. */
let swept: { readonly design: Design; readonly sweep: SafetySweep } | undefined;
const joined = (design: Design, assessment: Assessment): Assessment =>
  swept?.design === design ? withSweep(assessment, swept.sweep) : assessment;

/** Joins what was found over time to the assessment of the same document. */
export function joinSweep(design: Design, sweep: SafetySweep): void {
  swept = { design, sweep };
  const { assessed } = store.get();
  if (assessed?.design === design)
    store.patch({ overTimeOf: design, assessed: { ...assessed, assessment: withSweep(assessed.assessment, sweep) } });
  else store.patch({ overTimeOf: design });
}

/** Returns what `select` takes from the bench and renders again when it changes; `select` must not make new objects. */
export function useBench<Part>(select: (state: BenchState) => Part): Part {
  return useStore(store, select);
}

let engine: EngineClient | undefined;
const quick = quickAssess();
let settling: ReturnType<typeof setTimeout> | undefined;
let curvesAsked = false;
/** True while a pointer presses on the page: nothing slow is asked under a hand. */
let pressed = false;
/** Quiet time after the last edit before the slower questions are asked [ms]. */
const settleTime = 200;
/** Time between two pictures of the curves while a hand moves [ms]; the operating point follows every move. */
const curveTime = 120;

/** True while the document differs from what was last opened or saved. */
export function isUnsaved(): boolean {
  const { history, savedDesign } = store.get();
  return history.present !== savedDesign;
}

/** Lays the first document on the table, with what was done to it before, if that is known. */
export function layFirst(history: History<Design>): void {
  store.patch({ history, savedDesign: history.present });
}

/** Asks about the document on the table: at first on the page's own thread, so that numbers stand there before any worker
 *  has arrived; the workers start once the page has a moment. */
export function startBench(): void {
  const { history } = store.get();
  const answer = quick.first(history.present);
  if (answer === undefined) startWorkers();
  else {
    const assessed = { design: history.present, ...answer, assessment: joined(history.present, answer.assessment) };
    store.patch({ assessed, curves: answer.assessment, fault: undefined });
    whenIdle(startWorkers);
  }
  watchPointers();
  if (!watchesPumps) watchCatalogue(reckonAnew);
  watchesPumps = true;
}

let watchesPumps = false;

/** Other pumps or prices are in force: nothing that was reckoned before counts any more. */
function reckonAnew(): void {
  const design = store.get().history.present;
  swept = undefined;
  const answer = quick.first(design);
  store.patch({
    assessed: answer && { design, ...answer },
    curves: answer?.assessment,
    ranking: undefined,
    levers: undefined,
    fault: undefined,
  });
  if (engine !== undefined) ask();
}

function startWorkers(): void {
  engine ??= startEngine({
    assessed(design, assessment, took) {
      quick.hear(took);
      const { assessed, history } = store.get();
      // Where the page has reckoned the document itself, an answer under a hand or to an older one brings only curves.
      const known = assessed?.design === history.present;
      const behind = known && (pressed || design !== history.present);
      const answer = { design, assessment: joined(design, assessment), took };
      // Without flushSync React would wait for its own time slice and the frame would be missed.
      flushSync(() => store.patch({ curves: assessment, fault: undefined, ...(behind ? {} : { assessed: answer }) }));
      if (!behind) markShown(design);
      if (!warmed) {
        warmed = true;
        whenIdle(() => quick.warm(design));
      }
    },
    ranked: (design, ranking) => store.patch({ ranking: { design, ranking } }),
    levered: (design, levers) => store.patch({ levers: { design, levers } }),
    fault: (_asked, message) => store.patch({ fault: message }),
  });
  ask();
}

let warmed = false;

const whenIdle = (work: () => void) =>
  typeof requestIdleCallback === "undefined" ? setTimeout(work, 500) : requestIdleCallback(work, { timeout: 2000 });

let watching = false;

function watchPointers(): void {
  if (watching) return;
  watching = true;
  const press = (now: boolean) => (event: PointerEvent) => {
    if (event.isPrimary) pressed = now;
  };
  addEventListener("pointerdown", press(true), true);
  addEventListener("pointerup", press(false), true);
  addEventListener("pointercancel", press(false), true);
}

/** Takes a history with a new document over: its numbers at once where the page can reckon them within the frame, else
 *  when the worker answers. */
function lay(history: History<Design>, started: number, change: Partial<BenchState> = {}): void {
  const design = history.present;
  markEdit(design, started);
  const { curves } = store.get();
  const answer = engine === undefined ? undefined : quick.ask(design, curves);
  if (answer === undefined) {
    store.patch({ ...change, history, refusedEdit: undefined });
    ask();
    return;
  }
  flushSync(() =>
    store.patch({ ...change, history, refusedEdit: undefined, fault: undefined, assessed: { design, ...answer } }),
  );
  markShown(design);
  if (!curvesAsked) {
    curvesAsked = true;
    setTimeout(() => {
      curvesAsked = false;
      if (pressed) engine?.assess(store.get().history.present);
    }, curveTime);
  }
  settle();
}

function ask(): void {
  engine?.assess(store.get().history.present);
  settle();
}

/** Asks the slower questions once no hand moves anything any more. */
function settle(): void {
  clearTimeout(settling);
  settling = setTimeout(() => {
    if (pressed) {
      settle();
      return;
    }
    const { history, rankedLoop, curves, assessed } = store.get();
    if (assessed?.design !== history.present || assessed.assessment !== curves) engine?.assess(history.present);
    engine?.rank(history.present, { loop: rankedLoop });
    engine?.levers(history.present);
  }, settleTime);
}

/** True while a hand moves something on the page: nothing is laid under it. */
export function isHandBusy(): boolean {
  return pressed;
}

/** The document with all that was done to it, for those who keep it. */
export function presentHistory(): History<Design> {
  return store.get().history;
}

/** Lays a history on the table that has taken in what somebody else did. */
export function layTaken(history: History<Design>): void {
  lay(history, performance.now());
}

/** Tells of every change of the history; returns how to stop it. */
export function watchHistory(listener: () => void): () => void {
  let last = store.get().history;
  return store.subscribe(() => {
    const { history } = store.get();
    if (history === last) return;
    last = history;
    listener();
  });
}

/** Says why nothing may be changed here, or that it may. */
export function lookOnly(why: string | undefined): void {
  if (store.get().lookOnly !== why) store.patch({ lookOnly: why });
}

function refusal(): Problem | undefined {
  const why = store.get().lookOnly;
  return why === undefined ? undefined : { path: "", message: why, fix: words().say("keeping.lookOnlyFix") };
}

/** How edits of one drag or one field are held together, and when the drag is over. */
export interface EditOptions {
  readonly dragKey?: string;
  readonly done?: boolean;
  readonly label?: string;
}

/** Makes edits as one step if the document stays sound; else leaves it as it was and returns the first problem. */
export function edit(edits: readonly Edit[], options: EditOptions = {}): Problem | undefined {
  const started = performance.now();
  const refused = refusal();
  if (refused !== undefined) {
    store.patch({ refusedEdit: refused, said: refused.message });
    return refused;
  }
  const { history } = store.get();
  const recorded = record(history, edits, options.label ?? "edit", options.dragKey);
  const problem = recorded.problem ?? soundness(recorded.history.present, history.present);
  if (problem !== undefined) {
    store.patch({ refusedEdit: problem });
    return problem;
  }
  const next = options.done ? endDrag(recorded.history) : recorded.history;
  // A lifted pointer without a move closes the step and changes no number.
  if (next.present === history.present) store.patch({ history: next, refusedEdit: undefined });
  else lay(next, started);
  return undefined;
}

/** Ends the drag in progress, if any: the next edit is a step of its own. */
export function endDragNow(): void {
  const { history } = store.get();
  const ended = endDrag(history);
  if (ended !== history) store.patch({ history: ended });
}

/** Takes back the drag in progress as if it had never been; a drag that has ended stays. */
export function dropDrag(dragKey: string): void {
  const { history } = store.get();
  if (history.past.at(-1)?.key !== dragKey) return;
  lay({ ...undo(history), future: [] }, performance.now());
}

/** What is wrong with a document that is to follow another one; a pump that is gone from the catalogue may stay, not come. */
function soundness(design: Design, before: Design): Problem | undefined {
  const reading = checkKeptDesign(design, currentCatalogue(), [before]);
  return reading.ok ? undefined : reading.problems[0];
}

/** Takes over a changed document as one step: only the sections that differ from its base are written.
 *  base the document it was made from   design the changed one   -> the problem where the table has moved on since */
export function takeOver(base: Design, design: Design, label: string): Problem | undefined {
  if (base !== store.get().history.present)
    return {
      path: "",
      message: "the design has changed since this was solved",
      fix: "it is being solved again; try once more",
    };
  const present = base as unknown as Record<string, unknown>;
  const wanted = design as unknown as Record<string, unknown>;
  const edits: Edit[] = [];
  for (const key of new Set([...Object.keys(present), ...Object.keys(wanted)])) {
    if (JSON.stringify(present[key]) === JSON.stringify(wanted[key])) continue;
    edits.push(key in wanted ? { op: "set", path: `/${key}`, value: wanted[key] } : { op: "remove", path: `/${key}` });
  }
  if (edits.length === 0) return undefined;
  const problem = edit(edits, { label });
  if (problem === undefined) say(`${label}: done`);
  return problem;
}

/** Takes back the last step of one's own; what others did since stands. */
export function undoEdit(): void {
  step(undoMine, "keeping.undone");
}

/** Makes the step last undone again. */
export function redoEdit(): void {
  step(redoMine, "keeping.doneAgain");
}

/** The last step that was made here and not by somebody else. */
export function lastOwnStep({ past }: History<Design>): Step | undefined {
  for (let place = past.length - 1; place >= 0; place -= 1) if (past[place]!.others === undefined) return past[place];
  return undefined;
}
/** The next step that could be made again. */
export const nextOwnStep = ({ future }: History<Design>): Step | undefined => future[0];

function step(way: typeof undoMine, word: "keeping.undone" | "keeping.doneAgain"): void {
  const { history } = store.get();
  const label = (way === undoMine ? lastOwnStep(history) : nextOwnStep(history))?.label ?? "";
  const taken = way(history);
  const at = taken.conflict?.[0]?.path;
  const problem = taken.history === history ? undefined : soundness(taken.history.present, history.present);
  const refused = refusal();
  if (refused !== undefined) store.patch({ said: refused.message });
  else if (at !== undefined || problem !== undefined) {
    const part = partTitle(history.present, at ?? problem!.path);
    store.patch({ said: words().say("keeping.stepBlocked", { step: label, part }) });
  } else if (taken.history !== history)
    lay(taken.history, performance.now(), { said: words().say(word, { step: label }) });
}

/** Lays another document on the table, as a step that can be undone: nothing unsaved is ever lost by opening. */
export function openDesign(design: Design, said: string): void {
  const refused = refusal();
  if (refused !== undefined) {
    store.patch({ said: refused.message });
    return;
  }
  const recorded = record(endDrag(store.get().history), { op: "set", path: "", value: design }, `open ${design.name}`);
  store.patch({
    history: recorded.history,
    savedDesign: design,
    selection: undefined,
    dialog: undefined,
    refused: undefined,
    refusedEdit: undefined,
    rankedLoop: 0,
    said,
  });
  ask();
}

/** Marks the document as saved. */
export function markSaved(): void {
  store.patch({ savedDesign: store.get().history.present, said: words().say("keeping.bar.saved") });
}

/** The document as it stands, for those who need it once and not on every change. */
export function presentDesign(): Design {
  return store.get().history.present;
}

/** Takes a part in hand by its JSON Pointer, or lays it down. */
export function select(selection: string | undefined): void {
  store.patch({ selection, refusedEdit: undefined });
}

/** Asks which pump suits another loop. */
export function rankLoop(rankedLoop: number): void {
  store.patch({ rankedLoop });
  ask();
}

/** Changes what is shown around the document: windows, sections, words. */
export function show(
  change: Partial<Pick<BenchState, "dialog" | "refused" | "tab" | "drawerOpen" | "source" | "refusedEdit">>,
): void {
  store.patch(change);
}

/** Says a word on what was done, also to a screen reader. */
export function say(said: string): void {
  store.patch({ said });
}
