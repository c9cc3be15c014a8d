import { type CatalogueProblem, type PumpRow, readPumpCsv } from "@tidewright/catalogue";

/** A pump that the shop keeps, with its version. */
export interface KnownPump {
  readonly id: string;
  readonly version: number;
  /** Undefined where what is kept is no pump that can be read. */
  readonly pump: PumpRow | undefined;
}

/** A pump that would be kept: what it replaces, if anything, and the version that must still stand then. */
export interface Arriving {
  readonly pump: PumpRow;
  readonly before: PumpRow | undefined;
  readonly version: number;
}

/** What a table would do, before anything is kept. */
export interface TableReview {
  readonly added: readonly Arriving[];
  readonly changed: readonly Arriving[];
  readonly same: readonly PumpRow[];
  /** Everything wrong: the rows it is in are left out. */
  readonly wrong: readonly CatalogueProblem[];
  readonly doubts: readonly CatalogueProblem[];
}

/** Returns what a table of pumps would add and change.
 *  text of a CSV file   known the shop's own pumps   -> TableReview; every good row is in one of its first three lists */
export function reviewTable(text: string, known: readonly KnownPump[]): TableReview {
  const { pumps, problems } = readPumpCsv(text);
  const byId = new Map(known.map((each) => [each.id, each]));
  const added: Arriving[] = [];
  const changed: Arriving[] = [];
  const same: PumpRow[] = [];
  for (const pump of pumps) {
    const before = byId.get(pump.id);
    if (before === undefined) added.push({ pump, before: undefined, version: 0 });
    else if (before.pump !== undefined && alike(before.pump, pump)) same.push(pump);
    else changed.push({ pump, before: before.pump, version: before.version });
  }
  return {
    added,
    changed,
    same,
    wrong: problems.filter(({ severity }) => severity === "error"),
    doubts: problems.filter(({ severity }) => severity === "doubt"),
  };
}

/** Whether two pumps say the same, whatever order their fields were written in. */
function alike(a: unknown, b: unknown): boolean {
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return Object.is(a, b);
  const [mine, theirs] = [Object.entries(a), new Map(Object.entries(b))];
  return mine.length === theirs.size && mine.every(([key, value]) => theirs.has(key) && alike(value, theirs.get(key)));
}
