import { steady } from "./alignment.ts";
import { sameJson } from "./sameJson.ts";

/** The order of what both kept: theirs where the two are at odds. */
export interface MergedOrder {
  readonly spine: readonly number[];
  readonly disputed: boolean;
}

/** Longest list whose pairs are looked at one by one. */
const longest = 1000;

/** Returns the order of entries that both kept: that of whoever changed it; where both did, each pair of entries stands as
 *  whoever turned it round has it, if the two moved different entries and all pairs together make one order.
 *
 *  A pair stands one way or the other, so two people who both turned it round agree, and no pair is ever at odds: the joined
 *  pairs do not depend on who is called mine. They make an order exactly when the numbers of entries before each are 0, 1, 2,
 *  and so on (H. G. Landau's scores of a transitive tournament, 1953; from memory). Then entries that one of them left alone
 *  stand as the other has them, which is what comes out when the moves of one are made on the list of the other.
 *
 *  spine entries by their place in the base, ascending   my, their places in the two lists by place in the base -> order */
export function mergeOrder(spine: readonly number[], my: readonly number[], their: readonly number[]): MergedOrder {
  const by = (to: readonly number[]) => [...spine].sort((x, y) => to[x]! - to[y]!);
  const [mine, theirs] = [by(my), by(their)];
  if (sameJson(mine, spine) || sameJson(mine, theirs)) return { spine: theirs, disputed: false };
  if (sameJson(theirs, spine)) return { spine: mine, disputed: false };
  const both = spine.length > longest ? undefined : joined(spine, my, their);
  return both === undefined ? { spine: theirs, disputed: true } : { spine: both, disputed: false };
}

function joined(spine: readonly number[], my: readonly number[], their: readonly number[]): number[] | undefined {
  // What both may have moved is nobody's to place. The least that was moved leaves it open which of two neighbours that
  // changed places: then it may have been either.
  const mine = steady(spine.map((i) => my[i]!));
  const theirs = steady(spine.map((i) => their[i]!));
  if (spine.some((_, place) => !mine.has(place) && !theirs.has(place))) return undefined;
  const order = new Array<number>(spine.length);
  const before = spine.map(() => 0);
  spine.forEach((i, place) => {
    for (let other = place + 1; other < spine.length; other++) {
      const j = spine[other]!;
      const turned = my[i]! > my[j]! || their[i]! > their[j]!;
      before[turned ? place : other]! += 1;
    }
  });
  for (const [place, count] of before.entries()) {
    if (order[count] !== undefined) return undefined;
    order[count] = spine[place]!;
  }
  return order;
}
