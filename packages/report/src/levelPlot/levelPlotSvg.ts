import type { WhatIf } from "@tidewright/advice";
import { fontFaces, inkAndPaper, type Palette } from "../inkAndPaper.ts";
import { element, escaped } from "../svg/element.ts";
import { fitLines, textWidth } from "../svg/textWidth.ts";
import type { PlotBand } from "./bandLayout.ts";
import { type EventKind, textIndent } from "./eventLayout.ts";
import { type LevelPlotModel, type LevelPlotOptions, levelPlotModel } from "./levelPlotModel.ts";

type Style = Readonly<Record<string, string | number | undefined>>;

/** Returns the levels of a played scenario as a drawing that stands alone: SVG without outside fonts, styles or scripts, with a title and a
 *  description in words.
 *  whatIf played with its film   options LevelPlotOptions   -> SVG text, well-formed XML
 *  Findings: none. Throws: RangeError where the scenario was played without its film.
 *  Valid: as `levelPlotModel`.
 *  Source: W3C SVG 2; own drawing. */
export function levelPlotSvg(whatIf: WhatIf, options: LevelPlotOptions): string {
  const model = levelPlotModel(whatIf, options);
  const palette = inkAndPaper(options.dark);
  const { width, height } = model;
  const id = `levels-${whatIf.scenario.id.replace(/[^A-Za-z0-9]+/g, "-")}`;
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width,
      height,
      viewBox: `0 0 ${width} ${height}`,
      role: "img",
      "aria-labelledby": `${id}-title ${id}-text`,
      "font-family": fontFaces,
      style: "font-variant-numeric: tabular-nums",
    },
    element("title", { id: `${id}-title` }, escaped(`${model.heading}: levels over time, ${model.title}`)),
    element("desc", { id: `${id}-text` }, escaped(inWords(model))),
    element("rect", { width, height, fill: palette.paper }),
    heading(model, palette),
    axis(model, palette),
    ...model.bands.map((band) => bandGround(band, model, palette)),
    eventLines(model, palette),
    ...model.bands.map((band) => bandCurve(band, model, palette)),
    eventMarks(model, palette),
    list(model, palette),
  );
}

function text(x: number, y: number, words: string, style: Style): string {
  return element("text", { x, y, ...style }, escaped(words));
}

const isBad = ({ verdict }: LevelPlotModel) => verdict === "wet" || verdict === "dry" || verdict === "unsolved";

function heading(model: LevelPlotModel, { ink, ink2, ink3, warn }: Palette): string {
  const { width, frame } = model;
  const room = width - 40;
  const [title = ""] = fitLines(model.title, 13, room * 0.4, 1);
  const [head = ""] = fitLines(model.heading, 20, room - textWidth(title, 13) - 16, 1);
  return [
    text(20, 32, head, { "font-size": 20, "font-weight": 600, fill: ink }),
    text(width - 20, 32, title, { "font-size": 13, fill: ink2, "text-anchor": "end" }),
    ...model.sentence.map((line, i) =>
      text(20, 53 + 17 * i, line, {
        "font-size": 13,
        "font-weight": isBad(model) ? 600 : undefined,
        fill: isBad(model) ? warn : ink2,
      }),
    ),
    text(frame.x0 - 22, model.marksY + 3.5, "above its floor", {
      "font-size": 10.5,
      fill: ink3,
      "text-anchor": "end",
    }),
    text(frame.x1 + 12, model.marksY + 3.5, "least margin", { "font-size": 10.5, fill: ink3 }),
  ].join("");
}

function axis({ axis: { ticks, unit }, frame }: LevelPlotModel, { ink, ink2, rule }: Palette): string {
  const { x0, x1, y0, y1 } = frame;
  return [
    ...ticks.map(({ x }) =>
      element("path", { d: `M${x.toFixed(1)},${y0}V${y1 + 13}`, stroke: rule, "stroke-width": 0.8 }),
    ),
    element("path", { d: `M${x0},${y1 + 9}H${x1}`, stroke: ink, "stroke-width": 0.9 }),
    ...ticks.map(({ x, text: words }) =>
      text(x, y1 + 26, words, { "font-size": 11.5, fill: ink2, "text-anchor": "middle" }),
    ),
    text(x1 + 12, y1 + 26, unit, { "font-size": 11.5, fill: ink2 }),
  ].join("");
}

/** Water, walls and floor of a vessel: a tray cut open; walls that go on below are broken off. */
function bandGround(band: PlotBand, { frame }: LevelPlotModel, palette: Palette): string {
  const { y0, y1, rimY, floorY } = band;
  const { x0, x1 } = frame;
  const { ink, water } = palette;
  const top = rimY ?? y0;
  const bottom = floorY ?? y1;
  const walls =
    floorY === undefined
      ? [x0, x1].map((x) => `M${x},${top}V${bottom - 7}l-3,1.8l6,2.6l-3,1.8V${bottom}`).join("")
      : `M${x0},${top}V${bottom}H${x1}V${top}`;
  return [
    element("path", { d: band.water, fill: water, "fill-opacity": 0.2 }),
    element("path", { d: walls, fill: "none", stroke: ink, "stroke-width": 1, "stroke-linejoin": "round" }),
  ].join("");
}

/** Level, rim and marks of a vessel, above all lines of the ground. */
function bandCurve(band: PlotBand, { frame }: LevelPlotModel, palette: Palette): string {
  const { rimY, runningY, mark, over, overRim } = band;
  const { x0, x1 } = frame;
  const { ink, ink2, ink3, paper, water2, warn } = palette;
  const running = { stroke: ink3, "stroke-width": 0.8, "stroke-dasharray": "5 4" };
  const rim = rimY?.toFixed(1);
  return [
    element("path", { d: `M${x0},${runningY.toFixed(1)}H${x1}`, ...running }),
    overRim === undefined ? "" : element("path", { d: overRim, fill: warn }),
    element("path", { d: band.curve, fill: "none", stroke: water2, "stroke-width": 1.7, "stroke-linejoin": "round" }),
    rim === undefined ? "" : element("path", { d: `M${x0 - 5},${rim}H${x1 + 5}`, stroke: ink, "stroke-width": 2 }),
    ...band.spilling.map(([from, to]) =>
      element("path", {
        d: `M${from.toFixed(1)},${rim}H${Math.max(to, from + 2).toFixed(1)}`,
        stroke: warn,
        "stroke-width": 4,
      }),
    ),
    rimY !== undefined && mark.y - rimY > 16
      ? element("path", { d: arrows(mark.x, rimY + 2, mark.y - 4.5), stroke: ink2, "stroke-width": 0.9, fill: "none" })
      : "",
    element("circle", { cx: mark.x, cy: mark.y, r: 3, fill: paper, stroke: over ? warn : water2, "stroke-width": 1.6 }),
    bandWords(band, frame, palette),
  ].join("");
}

/** A measure between two heights, with an arrow at each end. */
function arrows(x: number, y0: number, y1: number): string {
  const at = x.toFixed(1);
  return `M${at},${y0.toFixed(1)}V${y1.toFixed(1)}m-2.4,-4l2.4,4l2.4,-4M${at},${y0.toFixed(1)}m-2.4,4l2.4,-4l2.4,4`;
}

function bandWords(band: PlotBand, { x0, x1 }: LevelPlotModel["frame"], palette: Palette): string {
  const { ink, ink2, ink3, warn } = palette;
  const { y0, y1, over } = band;
  const middle = (y0 + y1) / 2;
  // Many vessels on little paper: what is left is the name and the number.
  const narrow = y1 - y0 < 32;
  const name = fitLines(band.name, narrow ? 11.5 : 12.5, x0 - 20 - 74, narrow ? 1 : 2);
  const notes = narrow ? [] : band.notes;
  return [
    ...name.map((line, i) =>
      text(20, middle + 4 + (i - (name.length - 1) / 2) * 14, line, {
        "font-size": narrow ? 11.5 : 12.5,
        "font-weight": 600,
        fill: ink,
      }),
    ),
    ...band.scale.map(({ y, text: words, kind }) =>
      text(x0 - 9, y + 3.8, words, { "font-size": 10.5, fill: kind === "rim" ? ink : ink3, "text-anchor": "end" }),
    ),
    text(x1 + 12, middle + (notes.length > 0 ? -2 : 5), band.figure, {
      "font-size": narrow ? 13 : 15,
      "font-weight": 600,
      fill: over ? warn : ink,
    }),
    ...notes.map((note, i) =>
      text(x1 + 12, middle + 12 + 12.5 * i, note, { "font-size": 10.5, fill: over && i > 0 ? warn : ink2 }),
    ),
  ].join("");
}

/** Thin lines through all bands at what happened; what is done to the system stands firmer than what follows. */
function eventLines({ events, marks, frame, marksY }: LevelPlotModel, palette: Palette): string {
  const { y0, y1 } = frame;
  const stroke = { action: palette.ink2, trouble: palette.warn, change: palette.ink3 };
  const style = (kind: EventKind) => ({
    fill: "none",
    stroke: stroke[kind],
    "stroke-width": kind === "action" ? 1 : 0.8,
    "stroke-dasharray": kind === "action" ? undefined : "1.5 2.5",
  });
  return [
    ...events.map(({ x, kind }) => element("path", { d: `M${x.toFixed(1)},${y0 - 3}V${y1}`, ...style(kind) })),
    ...events.map(({ again, kind }) =>
      again.length === 0
        ? ""
        : element("path", { d: again.map((at) => `M${at.toFixed(1)},${y0 - 3}v-4`).join(""), stroke: stroke[kind] }),
    ),
    ...marks.map(({ x, markX, kind }) =>
      element("path", { d: `M${markX.toFixed(1)},${marksY + 7}L${x.toFixed(1)},${y0 - 3}`, stroke: stroke[kind] }),
    ),
  ].join("");
}

/** A number in a ring, filled with ink where something was done, with the warning colour where the floor or a pump suffers. */
function ringed(words: string, kind: EventKind, x: number, y: number, width: number, palette: Palette): string {
  const { ink, ink2, paper, warn } = palette;
  const fill = { action: ink, trouble: warn, change: paper }[kind];
  const stroke = { action: ink, trouble: warn, change: ink2 }[kind];
  return (
    element("rect", { x: x - width / 2, y: y - 7.5, width, height: 15, rx: 7.5, fill, stroke }) +
    text(x, y + 3.5, words, {
      "font-size": 10,
      "font-weight": 600,
      fill: kind === "change" ? ink2 : paper,
      "text-anchor": "middle",
    })
  );
}

function eventMarks({ marks, marksY }: LevelPlotModel, palette: Palette): string {
  return marks
    .map(({ text: words, kind, markX, width }) => ringed(words, kind, markX, marksY, width, palette))
    .join("");
}

function list({ events, listY, moreEvents, height }: LevelPlotModel, palette: Palette): string {
  const { ink, ink2, ink3, warn } = palette;
  const entries = events.map((event) => {
    const { at, kind, lines, number, time } = event;
    const y = listY + at.y + 10;
    const fill = kind === "trouble" ? warn : kind === "action" ? ink : ink2;
    return [
      element(
        "g",
        { transform: `translate(${at.x + 8},${y - 3.8}) scale(0.82)` },
        ringed(String(number), kind, 0, 0, number > 9 ? 18 : 15, palette),
      ),
      text(at.x + 24, y, time, { "font-size": 11, fill: ink2 }),
      ...lines.map((line, i) => text(at.x + textIndent, y + 14 * i, line, { "font-size": 11, fill })),
    ].join("");
  });
  const others = moreEvents === 1 ? "and one other kind of event" : `and ${moreEvents} other kinds of event`;
  const more = moreEvents === 0 ? "" : text(20 + textIndent, height - 16, others, { "font-size": 11, fill: ink3 });
  return entries.join("") + more;
}

/** The picture for those who do not see it. */
function inWords({ summary, bands, events }: LevelPlotModel): string {
  const vessels = bands.map(({ name, figure, notes, rimY, over }) => {
    const to = rimY === undefined || figure === "at its rim" ? "" : over ? " its rim" : " to its rim";
    return `${name}: ${[`${figure}${to}`, ...notes].join(", ")}.`;
  });
  const told = events.map(({ time, lines }) => `${time}: ${lines.join(" ")}.`);
  return [summary, ...vessels, ...told].join(" ");
}
