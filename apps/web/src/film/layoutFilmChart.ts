import { describePlace, timeWords, type WhatIf } from "@tidewright/advice";
import { englishWords, type Words } from "@tidewright/words";
import { scaleOf } from "../curves/scale.ts";
import { capital, clockText } from "./filmWords.ts";
import type { TimeScale } from "./timeScale.ts";

/** One vessel's level against its rim [px]. */
export interface ChartBand {
  /** Index in `WhatIf.vessels`. */
  readonly index: number;
  readonly name: string;
  readonly top: number;
  readonly bottom: number;
  /** The level's line, and the area under it down to the foot of the band. */
  readonly line: string;
  readonly area: string;
  /** Parts of it above the rim; empty where there are none. */
  readonly over: string;
  readonly rim: number | undefined;
  readonly highest: { readonly x: number; readonly y: number };
  readonly start: number;
  /** Height of a level in the band [px]. */
  yOf(level: number): number;
}

/** The chart under a film: a time bar, and a band for each vessel under it [px]. */
export interface FilmChartScene {
  readonly width: number;
  readonly height: number;
  readonly x0: number;
  readonly x1: number;
  /** Where the words of a band stand: over it on a phone, beside it on two lines, or on one where the screen is low. */
  readonly words: "over" | "beside" | "line";
  /** Height of the time bar's line. */
  readonly bar: number;
  readonly ticks: readonly { readonly x: number; readonly text: string }[];
  /** Shortened stretches, and those drawn longer. */
  readonly quiet: readonly { readonly x0: number; readonly x1: number; readonly text: string }[];
  readonly stretched: readonly { readonly x0: number; readonly x1: number }[];
  readonly events: readonly { readonly x: number; readonly bad: boolean; readonly count: number }[];
  readonly bands: readonly ChartBand[];
  /** Moment under a place of the pointer [s]. */
  timeAt(x: number): number;
  xOf(t: number): number;
}

export interface ChartOptions {
  readonly result: WhatIf;
  readonly scale: TimeScale;
  readonly width: number;
  /** Slim bands, their words on one line, where the screen is low. */
  readonly slim?: boolean;
  /** The bar alone, where a table needs the room. */
  readonly barOnly?: boolean;
  /** The reader's words, English where left out. */
  readonly words?: Words;
}

const head = 38;
const gap = 5;
/** Codes of events that are trouble and not just a change. */
const badEvents: ReadonlySet<string> = new Set(["rim/over", "pump/drawsAir", "pump/givenUp", "topOff/empty"]);

/** Returns the chart of a film: every vessel in a band of its own, rims as firm lines, all over one time bar.
 *  options film, time bar and width [px]   -> scene [px]
 *  Findings: none. Throws: never.
 *  Valid: a result with a film. Each band has a scale of its own, true from its lowest level to its rim or highest level.
 *  Source: own construction. */
export function layoutFilmChart(options: ChartOptions): FilmChartScene {
  const { result, scale, width, slim = false, barOnly = false, words = englishWords } = options;
  // As in film.css, where the box at the bar leaves its gutter.
  const narrow = width <= 640;
  const x0 = narrow ? 12 : slim ? 246 : 164;
  const x1 = width - (narrow ? 12 : 20);
  const xOf = (t: number) => x0 + (x1 - x0) * scale.toShare(t);
  const room = narrow ? 40 : slim ? 19 : 30;
  const lead = narrow ? 18 : 0;
  const { film } = result;
  const bands = result.vessels.flatMap((vessel, index): ChartBand[] => {
    // A reservoir without a rim that never moves tells nothing.
    if (barOnly || film === undefined || (vessel.rim === undefined && vessel.highest - vessel.lowest < 1e-4)) return [];
    return [{ ...bandOf(result, words, index, xOf), top: 0, bottom: 0 }];
  });
  let y = head + 6;
  const placed = bands.map((band): ChartBand => {
    const top = y + lead;
    y = top + room + gap;
    return bandOf(result, words, band.index, xOf, top + 3, top + room - 3, top, top + room);
  });
  return {
    width,
    height: y + 2,
    x0,
    x1,
    words: narrow ? "over" : slim ? "line" : "beside",
    bar: head - 12,
    ticks: ticksOf(scale, xOf, narrow ? 64 : 76),
    quiet: scale.stretches.flatMap(({ t0, t1, shortened }) =>
      shortened ? [{ x0: xOf(t0), x1: xOf(t1), text: timeWords(t1 - t0, words) }] : [],
    ),
    stretched: scale.stretches.flatMap(({ t0, t1, stretched }) => (stretched ? [{ x0: xOf(t0), x1: xOf(t1) }] : [])),
    events: eventMarks(result, xOf),
    bands: placed,
    xOf,
    timeAt: (x) => scale.toTime(Math.min(1, Math.max(0, (x - x0) / (x1 - x0)))),
  };
}

function bandOf(
  { film, vessels }: WhatIf,
  words: Words,
  index: number,
  xOf: (t: number) => number,
  high = 0,
  low = 1,
  top = 0,
  bottom = 1,
): ChartBand {
  const { place, rim, lowest, highest, highestAt, start } = vessels[index]!;
  const most = Math.max(rim ?? highest, highest);
  // A level that stands still would fill no range: a centimetre at least.
  const span = Math.max(0.01, most - lowest);
  const y = scaleOf([most - span * 1.12, most], [low, high]);
  const yOf = (level: number) => y(level);
  const points = thinned(
    film!.times.map((t, i) => ({ x: xOf(t), y: yOf(film!.levels[index]![i]!), level: film!.levels[index]![i]! })),
  );
  const text = (list: readonly { readonly x: number; readonly y: number }[]) =>
    list.map((p) => `${p.x.toFixed(1)},${p.y.toFixed(1)}`).join("L");
  const line = `M${text(points)}`;
  const edge = rim === undefined ? undefined : yOf(rim);
  const over =
    edge === undefined || highest <= rim!
      ? ""
      : `M${points[0]!.x},${edge}L${text(points.map((p) => ({ x: p.x, y: Math.min(p.y, edge) })))}L${points.at(-1)!.x},${edge}Z`;
  return {
    index,
    name: place.startsWith("sump.")
      ? words.say("film.sumpBand", { name: place.slice("sump.".length) })
      : capital(describePlace(place, words)),
    top,
    bottom,
    line,
    area: `${line}L${points.at(-1)!.x.toFixed(1)},${bottom}L${points[0]!.x.toFixed(1)},${bottom}Z`,
    over,
    rim: edge,
    highest: { x: xOf(highestAt), y: yOf(highest) },
    start: yOf(start),
    yOf,
  };
}

/** Rows that fall on the same pixel add nothing but their extremes. */
function thinned<P extends { readonly x: number; readonly y: number }>(points: readonly P[]): P[] {
  const kept: P[] = [];
  let column: P[] = [];
  const flush = () => {
    if (column.length <= 4) kept.push(...column);
    else {
      const low = column.reduce((a, b) => (b.y > a.y ? b : a));
      const high = column.reduce((a, b) => (b.y < a.y ? b : a));
      kept.push(...new Set(column.filter((p) => p === column[0] || p === low || p === high || p === column.at(-1))));
    }
  };
  for (const point of points) {
    if (column.length > 0 && Math.floor(column[0]!.x * 2) !== Math.floor(point.x * 2)) {
      flush();
      column = [];
    }
    column.push(point);
  }
  flush();
  return kept;
}

const steps = [
  1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10_800, 21_600, 43_200, 86_400, 172_800, 432_000,
];

/** Round times in the stretches that are not shortened, at least `room` pixels apart. */
function ticksOf(scale: TimeScale, xOf: (t: number) => number, room: number): { x: number; text: string }[] {
  const ticks: { x: number; text: string }[] = [];
  for (const { t0, t1, shortened } of scale.stretches) {
    if (shortened) continue;
    const wide = xOf(t1) - xOf(t0);
    const step = steps.find((each) => (each / (t1 - t0)) * wide >= room) ?? steps.at(-1)!;
    for (let t = Math.ceil(t0 / step) * step; t <= t1 + 1e-9; t += step) {
      const x = xOf(t);
      if (ticks.length === 0 || x - ticks.at(-1)!.x >= room * 0.8) ticks.push({ x, text: clockText(t) });
    }
  }
  return ticks;
}

/** Marks on the bar; those that would stand on each other are one, and as bad as the worst of them. */
function eventMarks({ events }: WhatIf, xOf: (t: number) => number): FilmChartScene["events"] {
  const marks: { x: number; bad: boolean; count: number }[] = [];
  for (const { t, code } of events) {
    const x = xOf(t);
    const last = marks.at(-1);
    if (last !== undefined && x - last.x < 5) {
      last.bad ||= badEvents.has(code);
      last.count += 1;
    } else marks.push({ x, bad: badEvents.has(code), count: 1 });
  }
  return marks;
}
