import {
  describeScenario,
  describeVerdict,
  type Format,
  type PartNames,
  type Verdict,
  verdictFacts,
  type WhatIf,
} from "@tidewright/advice";
import { formatQuantity, type UnitSystem } from "@tidewright/units";
import { fitLines } from "../svg/textWidth.ts";
import { bandLayout, type PlotBand } from "./bandLayout.ts";
import { type EventMark, eventLayout, type PlotEvent } from "./eventLayout.ts";
import { type TimeAxis, timeAxis } from "./timeAxis.ts";

/** What a level plot is drawn with: the reader's units, the size of the picture [px], and the names of the design's parts. */
export interface LevelPlotOptions {
  readonly units: UnitSystem;
  readonly width: number;
  readonly height: number;
  /** Names of drains and loops, such as the Design itself. */
  readonly names: PartNames;
  /** Name of the design, beside the scenario's. */
  readonly title: string;
  readonly dark?: boolean;
}

/** Everything that stands where in a level plot [px], for whoever draws it. */
export interface LevelPlotModel {
  readonly width: number;
  readonly height: number;
  readonly heading: string;
  readonly title: string;
  readonly verdict: Verdict;
  /** The verdict in a sentence, broken to the picture's width, and whole. */
  readonly sentence: readonly string[];
  readonly summary: string;
  /** Frame of the bands, and the height at which the marks of events stand. */
  readonly frame: { readonly x0: number; readonly x1: number; readonly y0: number; readonly y1: number };
  readonly marksY: number;
  readonly axis: TimeAxis;
  readonly bands: readonly PlotBand[];
  readonly events: readonly PlotEvent[];
  readonly marks: readonly EventMark[];
  /** Events that the list has no room for. */
  readonly moreEvents: number;
  readonly listY: number;
}

const edge = 20;
const left = 190;
const right = 112;
const sentenceSize = 13;
const sentenceLine = 17;
/** Heading and its distance to the sentence; marks of the events; axis with its numbers; gap between bands. */
const headingHeight = 44;
const marksHeight = 34;
const axisHeight = 40;
const gap = 12;

/** Returns where everything of a level plot stands: one band a vessel with its rim, its levels over time and its least margin, a common
 *  time axis, numbered events and their list.
 *  whatIf played with its film   options LevelPlotOptions   -> LevelPlotModel [px]
 *  Findings: none. Throws: RangeError where the scenario was played without its film.
 *  Valid: from about 560 x 360 px up; below that the texts have no room.
 *  Source: own construction. */
export function levelPlotModel(whatIf: WhatIf, options: LevelPlotOptions): LevelPlotModel {
  const { film, scenario, vessels } = whatIf;
  if (film === undefined) throw new RangeError("a level plot needs the film: play the scenario with it");
  const { units, width, height, names, title } = options;
  const format: Format = (si, dimension) => formatQuantity(si, dimension, units[dimension]);
  const summary = describeVerdict(verdictFacts(whatIf), names, format);
  const sentence = fitLines(summary, sentenceSize, width - 2 * edge, 2);
  const x0 = left;
  const x1 = Math.max(x0 + 60, width - right);
  const axis = timeAxis(scenario.duration, x0, x1);
  const rows = Math.max(3, Math.floor((height * 0.2) / 14));
  const list = eventLayout(whatIf, names, axis, { x0: edge, x1: width - edge, rows });
  const listY = height - edge - list.height - (list.more > 0 ? 14 : 0);
  const y0 = headingHeight + sentence.length * sentenceLine + marksHeight;
  const y1 = Math.max(y0 + 20 * vessels.length, listY - axisHeight - 8);
  const tall = (y1 - y0 - gap * (vessels.length - 1)) / vessels.length;
  const bands = vessels.map((vessel, i) => {
    const top = y0 + i * (tall + gap);
    return bandLayout({
      vessel,
      times: film.times,
      levels: film.levels[i] ?? [],
      axis,
      units,
      y0: top,
      y1: top + tall,
    });
  });
  return {
    width,
    height,
    heading: describeScenario(scenario),
    title,
    verdict: whatIf.verdict,
    sentence,
    summary,
    frame: { x0, x1, y0, y1 },
    marksY: y0 - 16,
    axis,
    bands,
    events: list.events,
    marks: list.marks,
    moreEvents: list.more,
    listY,
  };
}
