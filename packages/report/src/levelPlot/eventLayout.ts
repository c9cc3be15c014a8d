import {
  describeWhatIfEvent,
  type EventGroup,
  groupEvents,
  type PartNames,
  repeatWords,
  timeWords,
  type WhatIf,
  type WhatIfEvent,
} from "@tidewright/advice";
import { fitLines, textWidth } from "../svg/textWidth.ts";
import type { TimeAxis } from "./timeAxis.ts";

/** Weighty or not: something was done, the floor or a pump suffers, something changed by itself. */
export type EventKind = "action" | "trouble" | "change";

/** A number over the bands, or a span of them where events follow too closely to be told apart. Places [px]. */
export interface EventMark {
  readonly text: string;
  readonly kind: EventKind;
  /** Where the first of them happened, where the mark stands so that marks keep apart, and its width. */
  readonly x: number;
  readonly markX: number;
  readonly width: number;
}

/** What happened, with its number and its line in the list. Places [px]. */
export interface PlotEvent {
  readonly number: number;
  readonly event: WhatIfEvent;
  readonly x: number;
  /** Where it happened again. */
  readonly again: readonly number[];
  readonly kind: EventKind;
  /** Time and words of the list below. */
  readonly time: string;
  readonly lines: readonly string[];
  /** First baseline of its place in the list. */
  readonly at: { readonly x: number; readonly y: number };
}

/** The list below the bands: its entries, what it has no room for, and its height [px]. */
export interface EventList {
  readonly events: readonly PlotEvent[];
  readonly marks: readonly EventMark[];
  readonly more: number;
  readonly height: number;
}

/** Which events are told where there is room for a few only: what was done and what wets a floor first. */
const weight = (event: WhatIfEvent): number => {
  if (event.code === "action") return 0;
  if (isTrouble(event)) return 1;
  if (/^(siphon|circuit|topOff)\//.test(event.code)) return 2;
  return event.code.startsWith("drain/") ? 3 : 4;
};

function isTrouble({ code }: WhatIfEvent): boolean {
  return code === "rim/over" || code === "pump/drawsAir" || code === "pump/givenUp";
}

const size = 11;
const lineHeight = 14;
/** Space between neighbouring marks, and the distance up to which events are marked as one [px]. */
const between = 3;
const together = 7;

/** Returns the events of a scenario, numbered in the order of their time; what happens again and again has one number.
 *  whatIf, names of its parts, axis, frame of the list [px] with the most lines it may take   -> EventList
 *  Source: own construction. */
export function eventLayout(
  { events, scenario }: WhatIf,
  names: PartNames,
  axis: TimeAxis,
  frame: { readonly x0: number; readonly x1: number; readonly rows: number },
): EventList {
  const groups = groupEvents(events);
  const columns = Math.max(1, Math.floor((frame.x1 - frame.x0) / 300));
  const wide = (frame.x1 - frame.x0) / columns;
  const entry = (group: EventGroup): Told => {
    const text = `${describeWhatIfEvent(group[0], scenario, names)}${repeatWords(group)}`;
    return { group, lines: fitLines(text, size, wide - textIndent - 12, 2) };
  };
  const all = groups.map(entry);
  const chosen = chooseThatFit(all, columns, frame.rows);
  // Filled column by column, so that time runs downward.
  const total = chosen.reduce((sum, { lines }) => sum + lines.length, 0);
  const perColumn = Math.max(Math.ceil(total / columns), 1);
  let column = 0;
  let row = 0;
  let most = 0;
  const placed = chosen.map(({ group: [first, ...others], lines }, i): PlotEvent => {
    if (row > 0 && row + lines.length > perColumn && column < columns - 1) {
      column++;
      row = 0;
    }
    const at = { x: frame.x0 + column * wide, y: row * lineHeight };
    row += lines.length;
    most = Math.max(most, row);
    const x = axis.x(first.t);
    return {
      number: i + 1,
      event: first,
      x,
      again: others.map(({ t }) => axis.x(t)),
      kind: first.code === "action" ? "action" : isTrouble(first) ? "trouble" : "change",
      time: timeWords(first.t),
      lines,
      at,
    };
  });
  return {
    events: placed,
    marks: marksOf(placed, axis.x(0), axis.x(scenario.duration)),
    more: groups.length - chosen.length,
    height: most * lineHeight,
  };
}

/** Where the words of an entry begin: number, then time. */
export const textIndent = 88;

type Told = { readonly group: EventGroup; readonly lines: readonly string[] };

/** The weightiest entries that fill the rows, back in the order of time. */
function chooseThatFit(all: readonly Told[], columns: number, rows: number): Told[] {
  const byWeight = [...all].sort((a, b) => weight(a.group[0]) - weight(b.group[0]) || a.group[0].t - b.group[0].t);
  // Columns break between entries: a line of each may stay empty.
  let room = rows * columns - (columns - 1);
  const chosen = new Set<Told>();
  for (const each of byWeight) {
    if (each.lines.length > room) break;
    room -= each.lines.length;
    chosen.add(each);
  }
  return all.filter((each) => chosen.has(each));
}

/** Marks of events: those of one kind that follow closely share one, such as "2–8". */
function marksOf(events: readonly PlotEvent[], least: number, most: number): EventMark[] {
  const groups: [PlotEvent, ...PlotEvent[]][] = [];
  for (const event of events) {
    const last = groups.at(-1);
    if (last !== undefined && last[0].kind === event.kind && event.x - last[0].x < together) last.push(event);
    else groups.push([event]);
  }
  const marks = groups.map(([first, ...others]) => {
    const end = others.at(-1)?.number;
    const text = end === undefined ? String(first.number) : `${first.number}–${end}`;
    return { text, kind: first.kind, x: first.x, width: Math.max(15, textWidth(text, 10) + 9) };
  });
  const places = keptApart(marks, least, most);
  return marks.map((mark, i) => ({ ...mark, markX: places[i] ?? mark.x }));
}

/** Returns places near those wished and in their order that keep apart, inside an interval where it is wide enough. */
function keptApart(
  marks: readonly { readonly x: number; readonly width: number }[],
  least: number,
  most: number,
): number[] {
  const places = marks.map(({ x }) => x);
  const need = (i: number) => ((marks[i]?.width ?? 0) + (marks[i + 1]?.width ?? 0)) / 2 + between;
  for (let i = 0; i < places.length; i++)
    places[i] = Math.max(places[i]!, least, (places[i - 1] ?? Number.NEGATIVE_INFINITY) + need(i - 1));
  for (let i = places.length - 1; i >= 0; i--)
    places[i] = Math.min(places[i]!, most, (places[i + 1] ?? Number.POSITIVE_INFINITY) - need(i));
  return places;
}
