import { dimensions, unitTable } from "./dimensions.ts";
import type { Dimension } from "./quantity.ts";
import type { UnitDefinition } from "./unitDefinition.ts";

/** Spelling without what people vary freely: spaces, "per", raised digits, degree signs before a letter, a closing full stop. */
const plain = (text: string): string =>
  text
    .trim()
    .replace(/²/g, "2")
    .replace(/³/g, "3")
    .replace(/₂/g, "2")
    .replace(/\^/g, "")
    .replace(/\s+per\s+/gi, "/")
    .replace(/\s+/g, "")
    .replace(/[°º](?=[a-z])/gi, "")
    .replace(/\.$/, "");

interface Index {
  /** As spelled. */
  readonly exact: ReadonlyMap<string, UnitDefinition>;
  /** Lower case; null where two units differ only by case. */
  readonly anyCase: ReadonlyMap<string, UnitDefinition | null>;
}

function indexOf(units: readonly UnitDefinition[]): Index {
  const exact = new Map<string, UnitDefinition>();
  const anyCase = new Map<string, UnitDefinition | null>();
  for (const unit of units)
    for (const spelling of [unit.symbol, unit.label, ...unit.aliases]) {
      const key = plain(spelling);
      if (key === "") continue;
      if (!exact.has(key)) exact.set(key, unit);
      if (unit.caseSensitive) continue;
      const lower = key.toLowerCase();
      const other = anyCase.get(lower);
      anyCase.set(lower, other === undefined || other === unit ? unit : null);
    }
  return { exact, anyCase };
}

const index = Object.fromEntries(dimensions.map((dimension) => [dimension, indexOf(unitTable[dimension])])) as Record<
  Dimension,
  Index
>;

/** The unit that a spelling means in a dimension: symbol or alias, in any case where that leaves no doubt. */
export function findUnit(spelling: string, dimension: Dimension): UnitDefinition | undefined {
  const found = index[dimension];
  if (found === undefined)
    throw new RangeError(`"${String(dimension)}" is not a dimension; use one of: ${dimensions.join(", ")}`);
  // The common case, a canonical symbol without spaces, is answered without any text work.
  const direct = found.exact.get(spelling);
  if (direct !== undefined) return direct;
  const key = plain(spelling);
  return found.exact.get(key) ?? found.anyCase.get(key.toLowerCase()) ?? undefined;
}

/** Dimensions other than the given one in which a spelling is a unit. */
export function otherDimensionsOf(spelling: string, dimension: Dimension): readonly Dimension[] {
  return dimensions.filter((other) => other !== dimension && findUnit(spelling, other) !== undefined);
}

/** The accepted symbol nearest to a misspelt one, or undefined where nothing is near. */
export function nearestUnit(spelling: string, dimension: Dimension): string | undefined {
  const wanted = plain(spelling).toLowerCase();
  let best: { symbol: string; distance: number } | undefined;
  for (const unit of unitTable[dimension])
    for (const candidate of [unit.symbol, ...unit.aliases]) {
      const key = plain(candidate).toLowerCase();
      const distance = editDistance(wanted, key);
      // A third of the letters may be wrong; more is another word.
      if (
        distance <= Math.max(1, Math.floor(key.length / 3)) &&
        distance < key.length &&
        distance < (best?.distance ?? 99)
      )
        best = { symbol: unit.symbol, distance };
    }
  return best?.symbol;
}

/** Letters to insert, drop or change between two words (Levenshtein 1966), by rows. Long words are not compared. */
function editDistance(a: string, b: string): number {
  if (Math.abs(a.length - b.length) > 8) return 99;
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length]!;
}
