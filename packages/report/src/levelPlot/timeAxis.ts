import { scaleLinear } from "d3-scale";

/** A scale of time across a picture: where moments stand, and marks at round numbers of one unit. */
export interface TimeAxis {
  /** Place of a time [s] across the picture [px]. */
  readonly x: (seconds: number) => number;
  /** Time [s] at a place [px], held within the axis. */
  readonly timeAt: (x: number) => number;
  readonly unit: "s" | "min" | "h" | "d";
  readonly ticks: readonly { readonly x: number; readonly text: string }[];
}

const units = [
  { unit: "s", size: 1, upTo: 180 },
  { unit: "min", size: 60, upTo: 3 * 3600 },
  { unit: "h", size: 3600, upTo: 3 * 86_400 },
  { unit: "d", size: 86_400, upTo: Number.POSITIVE_INFINITY },
] as const;

/** Returns the time axis of a scenario, marked in seconds, minutes, hours or days as its length asks for.
 *  duration [s]   x0, x1 ends [px]   -> TimeAxis
 *  Source: own choice of units; round marks by d3-scale.
 *  Example: timeAxis(1800, 0, 600).unit  ->  "min"
 *  Example: timeAxis(1800, 0, 600).x(900)  ->  300 */
export function timeAxis(duration: number, x0: number, x1: number): TimeAxis {
  const { unit, size } = units.find(({ upTo }) => duration <= upTo) ?? units[3];
  const scale = scaleLinear([0, Math.max(duration, 1e-9) / size], [x0, x1]);
  const count = Math.max(2, Math.min(12, Math.round((x1 - x0) / 70)));
  return {
    x: (seconds) => scale(seconds / size),
    timeAt: (x) => Math.min(duration, Math.max(0, scale.invert(x) * size)),
    unit,
    ticks: scale.ticks(count).map((value) => ({ x: scale(value), text: String(value) })),
  };
}
