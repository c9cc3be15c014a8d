import { describePlace, timeWords, type VesselTrack } from "@tidewright/advice";
import { formatQuantity, type UnitSystem } from "@tidewright/units";
import { scaleLinear } from "d3-scale";
import { area, line } from "d3-shape";
import type { TimeAxis } from "./timeAxis.ts";

/** One vessel of the plot: its levels over time between floor and rim. Places [px]. */
export interface PlotBand {
  readonly place: string;
  /** JSON Pointer of the vessel in the design. */
  readonly path: string;
  readonly name: string;
  readonly y0: number;
  readonly y1: number;
  /** Place of a level [m above the room's floor]. */
  readonly y: (level: number) => number;
  readonly rimY?: number;
  /** Where the vessel stands; absent where the band shows only its upper part. */
  readonly floorY?: number;
  readonly runningY: number;
  /** SVG paths: the level, the water under it, what stands above the rim. */
  readonly curve: string;
  readonly water: string;
  readonly overRim?: string;
  /** Times at which water stood above the rim, as lines along the rim. */
  readonly spilling: readonly (readonly [x0: number, x1: number])[];
  /** Highest point; for a vessel without a rim its lowest. */
  readonly mark: { readonly x: number; readonly y: number };
  /** Numbers beside the band: heights above the vessel's floor, or volumes. */
  readonly scale: readonly { readonly y: number; readonly text: string; readonly kind: "rim" | "running" | "floor" }[];
  /** The least margin with its time, or what is left, in words. */
  readonly figure: string;
  readonly notes: readonly string[];
  readonly over: boolean;
}

interface BandInput {
  readonly vessel: VesselTrack;
  readonly times: readonly number[];
  readonly levels: readonly number[];
  readonly axis: TimeAxis;
  readonly units: UnitSystem;
  readonly y0: number;
  readonly y1: number;
}

/** Less than this is no range to draw [m]. */
const leastSpan = 0.012;
/** Distance that keeps two numbers apart [px]. */
const apart = 11.5;

/** Returns a vessel's band. The whole vessel is shown where its water moves through a good part of it, else the part near the rim, so
 *  that millimetres can be seen.
 *  vessel, its levels [m] at times [s], axis, units, room between y0 and y1 [px]   -> PlotBand
 *  Source: own construction; paths by d3-shape. */
export function bandLayout({ vessel, times, levels, axis, units, y0, y1 }: BandInput): PlotBand {
  const { place, path, floor, rim, start, highest } = vessel;
  const base = baseOf(vessel);
  const top = Math.max(rim ?? highest, highest);
  const scale = scaleLinear([base, top + 0.1 * (top - base)], [y1, y0]);
  const y = (level: number) => scale(level);
  const points = times.map((t, i): [number, number] => [axis.x(t), levels[i] ?? start]);
  const curve = line<[number, number]>(
    ([x]) => x,
    ([, level]) => y(level),
  ).digits(1);
  const between = (lower: number, upper: (level: number) => number) =>
    area<[number, number]>()
      .x(([x]) => x)
      .y0(lower)
      .y1(([, level]) => upper(level))
      .digits(1);
  const rimY = rim === undefined ? undefined : y(rim);
  const over = rim !== undefined && highest > rim;
  const floorY = base <= floor ? y(floor) : undefined;
  const extreme = extremeOf(vessel, times, levels);
  return {
    place,
    path,
    name: nameOf(place),
    y0,
    y1,
    y,
    ...(rimY === undefined ? {} : { rimY }),
    ...(floorY === undefined ? {} : { floorY }),
    runningY: y(start),
    curve: curve(points) ?? "",
    water: between(y1, y)(points) ?? "",
    ...(over && rimY !== undefined
      ? { overRim: between(rimY, (level) => Math.min(rimY, y(level)))(points) ?? "" }
      : {}),
    spilling: over ? stretches(points, rim) : [],
    mark: { x: axis.x(extreme.t), y: y(extreme.level) },
    scale: scaleNumbers(vessel, y, floorY, units),
    ...words(vessel, extreme, units),
    over,
  };
}

/** Lowest level that the band shows [m]. */
function baseOf({ floor, rim, start, highest, lowest }: VesselTrack): number {
  const top = Math.max(rim ?? highest, highest);
  const span = Math.max(leastSpan, top - Math.min(lowest, start));
  return rim === undefined || span * 2.2 >= top - floor ? Math.min(floor, lowest) : top - span * 1.5;
}

/** A reservoir's footprint is not in the design, so its water is told by volume. */
function heightText({ place, floor, area: footprint }: VesselTrack, level: number, units: UnitSystem): string {
  return place === "topOff"
    ? formatQuantity((level - floor) * footprint, "volume", units.volume)
    : formatQuantity(level - floor, "length", units.length);
}

function scaleNumbers(
  vessel: VesselTrack,
  y: (level: number) => number,
  floorY: number | undefined,
  units: UnitSystem,
): PlotBand["scale"] {
  const { rim, start, floor } = vessel;
  const numbers: { y: number; text: string; kind: "rim" | "running" | "floor" }[] = [];
  if (rim !== undefined) numbers.push({ y: y(rim), text: `rim ${heightText(vessel, rim, units)}`, kind: "rim" });
  const above = numbers[0]?.y ?? Number.NEGATIVE_INFINITY;
  const runningY = Math.max(y(start), above + apart);
  numbers.push({ y: runningY, text: heightText(vessel, start, units), kind: "running" });
  if (floorY !== undefined && floorY >= runningY + apart)
    numbers.push({ y: floorY, text: heightText(vessel, floor, units), kind: "floor" });
  return numbers;
}

/** The highest level, or the lowest of a vessel without a rim: when it was there first, and whether it stayed. */
interface Extreme {
  readonly level: number;
  readonly t: number;
  readonly stays: boolean;
}

/** Levels closer than this look alike, and the film is no finer [m]. */
const alike = 3e-4;

function extremeOf(
  { rim, highest, lowest }: VesselTrack,
  times: readonly number[],
  levels: readonly number[],
): Extreme {
  const level = rim === undefined ? lowest : highest;
  const near = (value: number | undefined) => value !== undefined && Math.abs(value - level) < alike;
  const first = Math.max(0, levels.findIndex(near));
  return { level, t: times[first] ?? 0, stays: levels.slice(first).every(near) };
}

function words(vessel: VesselTrack, { t, stays }: Extreme, units: UnitSystem): { figure: string; notes: string[] } {
  const { margin, lowest, spilled } = vessel;
  const moment = stays
    ? t <= 0
      ? "throughout"
      : `from ${timeWords(t)} on`
    : t <= 0
      ? "at the start"
      : `at ${timeWords(t)}`;
  if (margin === undefined) return { figure: `${heightText(vessel, lowest, units)} left`, notes: [moment] };
  const length = (si: number) => formatQuantity(si, "length", units.length);
  // Less than the reader's unit can show is neither over nor under.
  const size = length(Math.abs(margin));
  const atRim = !/[1-9]/.test(size);
  return {
    figure: atRim ? "at its rim" : margin < 0 ? `${size} over` : size,
    notes: [moment, ...(spilled > 0 ? [`${formatQuantity(spilled, "volume", units.volume)} spilt`] : [])],
  };
}

/** Stretches of a curve that lie above a level, with straight lines between its points. */
function stretches(points: readonly (readonly [number, number])[], level: number): [number, number][] {
  const found: [number, number][] = [];
  let from: number | undefined;
  points.forEach(([x, value], i) => {
    const [beforeX, before] = points[i - 1] ?? [x, value];
    const crossing = value === before ? x : beforeX + ((level - before) / (value - before)) * (x - beforeX);
    if (value > level && from === undefined) from = before > level ? beforeX : crossing;
    else if (value <= level && from !== undefined) {
      found.push([from, crossing]);
      from = undefined;
    }
  });
  if (from !== undefined) found.push([from, points.at(-1)?.[0] ?? from]);
  return found;
}

/** Vessels as a margin has room for: "Display", "Overflow box", "Sump “return”". */
function nameOf(place: string): string {
  const text = place.startsWith("sump.") ? `sump “${place.slice("sump.".length)}”` : describePlace(place);
  return text.charAt(0).toUpperCase() + text.slice(1);
}
