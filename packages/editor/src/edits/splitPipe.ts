import type { PipePart } from "@tidewright/design";
import { fromSI, type Quantity, toSI } from "@tidewright/units";

/** Returns a pipe cut in two at a share of its length: the lengths add up to the former one, and the rise is shared out in
 *  the same ratio.
 *  pipe   share of its length that comes first, 0 to 1   -> the two pieces; undefined where one would be shorter than 5 mm
 *  The first piece lands on the step a hand sets in the pipe's own unit: 1 mm, 1/8 in.
 *  Source: analytic. */
export function splitPipe(pipe: PipePart, share: number): readonly [PipePart, PipePart] | undefined {
  const { value, unit } = pipe.length;
  const step = lengthStep(unit);
  const first = tidy(Math.round((value * share) / step) * step);
  const rest = tidy(value - first);
  const least = fromSI(0.005, unit, "length");
  if (!(first >= least) || !(rest >= least)) return undefined;
  const { note, ...bare } = pipe;
  const rise = (part: number): Pick<PipePart, "rise"> =>
    pipe.rise === undefined ? {} : { rise: { ...pipe.rise, value: tidy(part) } };
  const firstRise = pipe.rise === undefined ? 0 : tidy((pipe.rise.value * first) / value);
  return [
    { ...bare, length: { value: first, unit }, ...rise(firstRise), ...(note === undefined ? {} : { note }) },
    { ...bare, length: { value: rest, unit }, ...rise((pipe.rise?.value ?? 0) - firstRise) },
  ];
}

/** Returns two pipes of one size as one: lengths and rises added in the first one's units; undefined where they differ.
 *  a, b one behind the other   -> pipe
 *  Source: analytic. */
export function joinPipes(a: PipePart, b: PipePart): PipePart | undefined {
  if (a.series !== b.series || !same(a.bore, b.bore) || !same(a.roughness, b.roughness)) return undefined;
  const rise =
    a.rise === undefined && b.rise === undefined
      ? {}
      : { rise: added(a.rise ?? { value: 0, unit: b.rise!.unit }, b.rise ?? { value: 0, unit: a.rise!.unit }) };
  const note = a.note ?? b.note;
  return { ...a, length: added(a.length, b.length), ...rise, ...(note === undefined ? {} : { note }) };
}

/** The step on which a length lands in a unit: 1 mm in metric units, 1/8 in, 0.01 ft. */
function lengthStep(unit: string): number {
  return { mm: 1, cm: 0.1, m: 0.001, in: 0.125, ft: 0.01 }[unit] ?? 0.001;
}

const same = (a: Quantity | undefined, b: Quantity | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && Math.abs(toSI(a, "length") - toSI(b, "length")) < 1e-9);

const added = (a: Quantity, b: Quantity): Quantity => ({
  value: tidy(a.value + (a.unit === b.unit ? b.value : fromSI(toSI(b, "length"), a.unit, "length"))),
  unit: a.unit,
});

/** Binary dust is no part of what a person would type. */
const tidy = (value: number): number => Number(value.toFixed(9));
