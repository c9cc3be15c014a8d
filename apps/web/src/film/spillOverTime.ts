import type { Film, VesselTrack } from "@tidewright/advice";

/** Returns how much water had gone over each vessel's rim by each row of a film: the volume booked by the simulation, spread over the
 *  time above the rim as a crest's flow grows, with the depth to the power 1.5.
 *  film its times and levels   vessels their rims and what they spilled   -> for each vessel one volume [m3] a row; empty for a
 *  vessel that spilled nothing
 *  Findings: none. Throws: never.
 *  Valid: any film; the sum at the end is exact, its course is good for a picture.
 *  Source: own construction on the weir law. */
export function spillOverTime(
  { times, levels }: Pick<Film, "times" | "levels">,
  vessels: readonly Pick<VesselTrack, "rim" | "spilled" | "highestAt">[],
): readonly (readonly number[])[] {
  return vessels.map(({ rim, spilled, highestAt }, v) => {
    if (!(spilled > 0) || rim === undefined) return [];
    const pull = levels[v]!.map((level) => Math.max(0, level - rim) ** 1.5);
    const sums = [0];
    for (let i = 1; i < times.length; i += 1)
      sums.push(sums[i - 1]! + 0.5 * (pull[i]! + pull[i - 1]!) * (times[i]! - times[i - 1]!));
    const all = sums.at(-1)!;
    if (all > 0) return sums.map((sum) => (spilled * sum) / all);
    return times.map((t) => (t >= highestAt ? spilled : 0));
  });
}
