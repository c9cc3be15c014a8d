import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mergeDocuments } from "./mergeDocuments.ts";
import { mergeOrder } from "./mergeOrder.ts";

const drains = (letters: string) => [...letters].map((name) => ({ name, role: "main" }));
const merged = (base: string, mine: string, theirs: string) => {
  const result = mergeDocuments(drains(base), drains(mine), drains(theirs));
  return result.ok ? result.merged.map(({ name }) => name).join("") : "conflict";
};

/** Places in a list by place in the base. */
const placesOf = (order: readonly number[]): number[] => {
  const to: number[] = [];
  order.forEach((i, place) => {
    to[i] = place;
  });
  return to;
};
const spineOf = (count: number) => Array.from({ length: count }, (_, i) => i);
const orderOf = (count: number) => fc.shuffledSubarray(spineOf(count), { minLength: count });
const two = fc.integer({ min: 2, max: 8 }).chain((count) => fc.tuple(orderOf(count), orderOf(count)));
const mergedOrder = (mine: readonly number[], theirs: readonly number[]) =>
  mergeOrder(spineOf(mine.length), placesOf(mine), placesOf(theirs));

/** The list with an entry taken out and put behind another, or to the front. */
function moved(order: readonly number[], entry: number, behind: number | undefined): number[] {
  const rest = order.filter((one) => one !== entry);
  rest.splice(behind === undefined ? 0 : rest.indexOf(behind) + 1, 0, entry);
  return rest;
}

describe("merging two orders of one list", () => {
  it("joins moves of different entries", () => {
    // By hand: A goes to the end, D to the front.
    expect(merged("ABCD", "BCDA", "DABC")).toBe("DBCA");
    expect(merged("ABCD", "BACD", "ABDC")).toBe("BADC");
    expect(merged("ABCDEF", "BCADEF", "FABCDE")).toBe("FBCADE");
  });

  it("stays at odds where one entry was moved twice, or where it is open which of two neighbours moved", () => {
    expect(merged("ABCD", "BCDA", "BACD")).toBe("conflict");
    expect(merged("ABC", "BAC", "ACB")).toBe("conflict");
    expect(merged("ABC", "CAB", "CBA")).toBe("conflict");
    // A behind C, and F between A and B: no place for F is right for both.
    expect(merged("ABCDEF", "BCADEF", "AFBCDE")).toBe("conflict");
  });

  it("joins a moved part of a run that has no name with another one, by what is in them", () => {
    const run = ["union", "elbow90", "gate", "strainer", "tee"].map((fitting) => ({ kind: "fitting", fitting }));
    const [a, b, c, d, e] = run;
    expect(mergeDocuments(run, [b, c, a, d, e], [e, a, b, c, d])).toEqual({
      ok: true,
      merged: [e, b, c, a, d],
    });
  });

  it("keeps what each inserted behind the entry it was put behind", () => {
    const merged = mergeDocuments(drains("ABCD"), drains("BCDAX"), drains("DYABC"));
    expect(merged.ok && merged.merged.map(({ name }) => name).join("")).toBe("DYBCAX");
  });

  it("is the order of whoever changed it where only one did, and either where both did the same", () => {
    fc.assert(
      fc.property(two, ([mine]) => {
        const base = spineOf(mine.length);
        expect(mergedOrder(mine, base)).toEqual({ spine: mine, disputed: false });
        expect(mergedOrder(base, mine)).toEqual({ spine: mine, disputed: false });
        expect(mergedOrder(mine, mine)).toEqual({ spine: mine, disputed: false });
      }),
    );
  });

  it("is the same whichever of the two is called mine, and loses and doubles nothing", () => {
    let joined = 0;
    fc.assert(
      fc.property(two, ([mine, theirs]) => {
        const one = mergedOrder(mine, theirs);
        const other = mergedOrder(theirs, mine);
        expect(one.disputed).toBe(other.disputed);
        expect([...one.spine].sort((a, b) => a - b)).toEqual(spineOf(mine.length));
        if (one.disputed) return;
        joined += 1;
        expect(one.spine).toEqual(other.spine);
        // No pair stands as neither of the two has it.
        const [m, t, both] = [placesOf(mine), placesOf(theirs), placesOf(one.spine)];
        for (const i of one.spine)
          for (const j of one.spine)
            if (m[i]! < m[j]! && t[i]! < t[j]!) expect(both[i]!, `${i} before ${j}`).toBeLessThan(both[j]!);
      }),
      { numRuns: 2000 },
    );
    expect(joined).toBeGreaterThan(20);
  });

  it("gives what the move of one gives on the list of the other, in either sequence", () => {
    let joined = 0;
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 9 }), fc.nat(), fc.nat(), fc.nat(), fc.nat(), (count, a, b, x, y) => {
        const base = spineOf(count);
        const [one, other] = [a % count, x % count];
        const [behind, beside] = [b % count, y % count];
        // The moves commute where neither is put behind what the other moves.
        if (one === other || behind === other || beside === one || behind === one || beside === other) return;
        const mine = moved(base, one, behind);
        const theirs = moved(base, other, beside);
        const result = mergedOrder(mine, theirs);
        if (result.disputed) return;
        const there = moved(theirs, one, behind);
        const back = moved(mine, other, beside);
        if (there.join() !== back.join()) return;
        joined += 1;
        expect(result.spine).toEqual(there);
      }),
      { numRuns: 3000 },
    );
    expect(joined).toBeGreaterThan(300);
  });
});
