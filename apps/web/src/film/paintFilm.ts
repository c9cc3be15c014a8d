import type { Film, WhatIf } from "@tidewright/advice";
import { type Format, nappe, type View } from "@tidewright/editor";
import { englishWords, type Words } from "@tidewright/words";
import { type FilmFrame, readFrame, rowAt, startFrame } from "./filmFrame.ts";
import type { FilmLine, FilmRun, FilmScene } from "./filmScene.ts";
import { levelWords } from "./filmWords.ts";
import { lineColumn, restingColumn } from "./lineColumn.ts";
import { spillOverTime } from "./spillOverTime.ts";

/** What a painter paints on: elements of the drawing by name. */
export type FilmElements = ReadonlyMap<string, SVGElement>;

interface Painted {
  readonly film: Film;
  readonly result: WhatIf;
  readonly scene: FilmScene;
  readonly view: View;
  readonly format: Format;
  /** The reader's words, English where left out. */
  readonly words?: Words;
  readonly elements: FilmElements;
  /** False where dashes must not run along the pipes. */
  readonly moves: () => boolean;
}

/** Less than this counts as no flow [m3/s]: a litre an hour. */
const noFlow = 2.8e-7;
/** A line that holds this share is full. */
const full = 0.97;
/** How far the dashes run along a pipe in a second of the wall's clock [px], slowest and fastest. */
const [slow, fast] = [16, 70];

/** Returns a function that paints a moment of a film: it writes a few attributes and texts, and only those that differ.
 *  painted what is shown and on what   -> paint(t), t [s]
 *  Findings: none. Throws: never.
 *  Valid: elements made by `FilmDrawing` for this very film and view.
 *  Source: own construction. */
export function paintFilm(painted: Painted): (t: number) => void {
  const { film, result, scene, view, format, elements, moves, words = englishWords } = painted;
  const frame = startFrame(film);
  const spills = spillOverTime(film, result.vessels);
  const columns = scene.lines.map((line) => columnOf(line, film));
  const greatest = scene.runs.map((run) => greatestFlow(film, run));
  const jets = scene.jets.map(({ loop, outlet }) => Math.max(noFlow, ...(film.outletFlow[loop]?.[outlet] ?? [0])));
  const phases = new Float64Array(scene.runs.length);
  const yOf = (y: number) => view.toScreen({ x: 0, y }).y;
  const set = setter(elements);
  let before = 0;

  const paintVessels = () => {
    scene.vessels.forEach(({ index, extent, path, spills: leaks }, i) => {
      const level = frame.levels[index]!;
      const { rim, start } = result.vessels[index]!;
      const top = yOf(Math.min(level, extent.y1 + 0.004));
      const bottom = yOf(extent.y0);
      set(`water-${i}`, "y", top.toFixed(2));
      set(`water-${i}`, "height", Math.max(0, bottom - top).toFixed(2));
      set(`surface-${i}`, "transform", `translate(0 ${top.toFixed(2)})`);
      set(`surface-${i}`, "display", level > extent.y0 + 1e-3 ? "inline" : "none");
      const told = levelWords(level, rim, start, format, words);
      set(`margin-${path}`, "text", told.margin || told.change);
      set(`change-${path}`, "text", told.change);
      set(`label-${path}`, "class", told.over ? "film-label film-over" : "film-label");
      if (leaks) set(`spill-${i}`, "display", told.over ? "inline" : "none");
    });
    scene.crests.forEach(({ from, to, at, way, floor }, i) => {
      const [above, below] = [frame.levels[scene.vessels[from]!.index]!, frame.levels[scene.vessels[to]!.index]!];
      const runs = above > at.y + 2e-4 && below < at.y - 0.004;
      set(`crest-${i}`, "display", runs ? "inline" : "none");
      if (!runs) return;
      const sheet = nappe({ x: at.x - way * 0.008, y: above }, at, Math.max(below, floor), way);
      set(`crest-${i}`, "d", `M${sheet.map((point) => screenText(view, point)).join("L")}Z`);
    });
  };

  const paintLines = () => {
    scene.lines.forEach(({ kind, index, vented }, i) => {
      const name = `${kind}-${index}`;
      const flow = kind === "drain" ? frame.drainFlow[index]! : 0;
      const fill = kind === "drain" ? frame.drainFill[index]! : frame.lineFill[index]!;
      const films = flow > noFlow && fill < full;
      const held = fill >= full ? 1 : vented && films ? 0 : fill;
      set(`clip-${name}`, "y", yOf(columns[i]!(held, frame)).toFixed(2));
      set(`film-${name}`, "display", films ? "inline" : "none");
      if (kind === "drain")
        set(`margin-/drains/${index}`, "text", flow > noFlow ? format(flow, "flow") : words.say("film.noFlow"));
    });
  };

  const paintFlows = (elapsed: number) => {
    scene.runs.forEach((run, i) => {
      const flow = flowOf(run, frame, result);
      const runs = Math.abs(flow) > noFlow;
      set(`arrow-${i}`, "display", runs ? "inline" : "none");
      set(`dash-${i}`, "display", runs ? "inline" : "none");
      if (!runs) return;
      set(`turn-${i}`, "transform", flow < 0 ? "scale(-1 1)" : "scale(1 1)");
      set(`arrow-${i}`, "class", flow < 0 ? "film-arrow film-back" : "film-arrow");
      if (elapsed <= 0) return;
      phases[i] = (phases[i]! - Math.sign(flow) * elapsed * (slow + (fast - slow) * share(flow, greatest[i]!))) % 48;
      set(`dash-${i}`, "stroke-dashoffset", phases[i]!.toFixed(1));
    });
    scene.jets.forEach(({ loop, outlet }, i) => {
      const flow = frame.outletFlow[loop]?.[outlet] ?? 0;
      set(`jet-${i}`, "opacity", flow > noFlow ? (0.25 + 0.75 * share(flow, jets[i]!)).toFixed(2) : "0");
    });
  };

  const paintFloor = (t: number) => {
    const row = rowAt(film.times, t);
    const wet = spills.reduce((sum, list) => sum + between(list, film.times, row, t), 0);
    set("floor", "display", wet > 1e-6 ? "inline" : "none");
    if (wet <= 1e-6) return;
    // A puddle's spread goes with the root of its volume; four litres reach across the drawing.
    set("puddle", "transform", `scale(${Math.min(1, 0.12 + Math.sqrt(wet / 0.004) * 0.88).toFixed(3)} 1)`);
    set("floorText", "text", words.say("film.onFloor", { volume: format(wet, "volume") }));
  };

  return (t) => {
    readFrame(film, t, frame);
    const now = performance.now();
    const elapsed = moves() ? Math.min(0.1, (now - before) / 1000) : 0;
    before = now;
    paintVessels();
    paintLines();
    paintFlows(elapsed);
    paintFloor(t);
  };
}

/** Height of the water in a line at a moment, by the share it holds. A pumped line that has run empty stands at its source's surface. */
function columnOf({ kind, index, pipes, source }: FilmLine, film: Film): (held: number, frame: FilmFrame) => number {
  const column = lineColumn(pipes);
  const fills = film.lineFill[index] ?? [];
  if (kind === "drain" || source === undefined || fills.length === 0) return column.heightAt;
  const height = restingColumn(column, Math.min(...fills));
  return (held, frame) => height(held, frame.levels[source]!);
}

const share = (flow: number, most: number): number => Math.min(1, Math.abs(flow) / most);

const screenText = (view: View, point: { readonly x: number; readonly y: number }): string => {
  const { x, y } = view.toScreen(point);
  return `${x.toFixed(1)},${y.toFixed(1)}`;
};

/** Writes an attribute or a text where it differs from what was written last. */
function setter(elements: FilmElements): (name: string, attribute: string, value: string) => void {
  const written = new Map<string, string>();
  return (name, attribute, value) => {
    const key = `${name} ${attribute}`;
    if (written.get(key) === value) return;
    written.set(key, value);
    const element = elements.get(name);
    if (element === undefined) return;
    if (attribute === "text") element.textContent = value;
    else element.setAttribute(attribute, value);
  };
}

function flowOf({ source }: FilmRun, frame: ReturnType<typeof startFrame>, result: WhatIf): number {
  if (source.kind === "drain") return frame.drainFlow[source.index] ?? 0;
  const flows = frame.outletFlow[source.index];
  // A loop that goes round in one vessel moves no level and has no film of its own: it runs while it has power.
  if (flows === undefined || flows.length === 0) return hasPower(result, source.index, frame.time) ? noFlow * 2 : 0;
  return source.outlets.reduce((sum, outlet) => sum + flows[outlet]!, 0);
}

/** Whether a loop's pumps run at a moment, by what the scenario has done to them. */
function hasPower({ scenario }: WhatIf, loop: number, t: number): boolean {
  let on = true;
  for (const { at, action } of scenario.events) {
    if (at > t) continue;
    if (action.kind === "powerOff") on = false;
    else if (action.kind === "powerOn") on = true;
    else if ("loop" in action && action.loop === loop) {
      if (action.kind === "pumpStops") on = false;
      if (action.kind === "pumpStarts") on = true;
    }
  }
  return on;
}

function greatestFlow(film: Film, { source }: FilmRun): number {
  const lists =
    source.kind === "drain"
      ? [film.drainFlow[source.index] ?? []]
      : source.outlets.map((outlet) => film.outletFlow[source.index]?.[outlet] ?? []);
  return film.times.reduce(
    (most, _, i) => Math.max(most, Math.abs(lists.reduce((sum, list) => sum + (list[i] ?? 0), 0))),
    noFlow * 2,
  );
}

function between(list: readonly number[], times: readonly number[], row: number, t: number): number {
  if (list.length === 0) return 0;
  const next = Math.min(row + 1, times.length - 1);
  const span = times[next]! - times[row]!;
  const part = span > 0 ? Math.min(1, Math.max(0, (t - times[row]!) / span)) : 0;
  return list[row]! + (list[next]! - list[row]!) * part;
}
