import type { Design, History, Step } from "@tidewright/design";
import type { DesignHead, Job } from "@tidewright/protocol";
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { Maker } from "../state/maker.ts";
import type { Outbox } from "./outbox.ts";
import { type Timeline, timelineChange, timelineOf } from "./timeline.ts";

/** What is known of the surroundings of a design: shown at once, refreshed from the server. */
export interface Surroundings {
  readonly head: DesignHead;
  readonly job: Job | undefined;
  /** Designs and variants of the same job. */
  readonly siblings: readonly DesignHead[];
}

/** A design as one page of this device holds it; `key` is the design and the page's slot. */
export interface LocalCopy {
  readonly key: string;
  readonly designId: string;
  readonly surroundings: Surroundings;
  readonly outbox: Outbox<Design>;
  /** Who made what the server does not have yet. */
  readonly makers: readonly Maker[];
  readonly history: History<Design>;
}

/** A copy that holds what the server does not have yet, and whose work that is. */
export interface UnsentCopy extends Pick<LocalCopy, "key" | "designId" | "surroundings" | "makers"> {
  /** How many steps wait. */
  readonly changes: number;
}

/** A copy without its history, as it lies in the database. */
type CopyRow = Omit<LocalCopy, "history" | "makers"> & {
  /** Not there in rows of before it was written down. */
  readonly makers?: readonly Maker[];
  readonly cursor: number;
  readonly length: number;
  readonly at: number;
};

interface Schema extends DBSchema {
  copies: { key: string; value: CopyRow; indexes: { design: string } };
  /** Steps of the histories, by copy and place: a history is written as it grows and never as a whole. */
  steps: { key: [string, number]; value: Step };
}

/** Everything this device keeps by itself. Where the browser keeps nothing, `durable` is false and nothing survives. */
export interface LocalCopies {
  readonly durable: boolean;
  /** Keys of the copies of a design, whether each holds what the server does not have yet, and whose work that is. */
  keysOf(
    designId: string,
  ): Promise<readonly { readonly key: string; readonly unsent: boolean; readonly makers: readonly Maker[] }[]>;
  /** Every copy that holds what the server does not have yet. */
  unsent(): Promise<readonly UnsentCopy[]>;
  read(key: string): Promise<LocalCopy | undefined>;
  /** Done once it is written; a copy is written whole or not at all. */
  write(copy: LocalCopy): Promise<void>;
  drop(key: string): Promise<void>;
  /** Keys of the copies that the server has everything of. */
  sent(): Promise<readonly string[]>;
}

let opened: Promise<LocalCopies> | undefined;

/** Returns what this device keeps; opened once. */
export function localCopies(): Promise<LocalCopies> {
  opened ??= open();
  return opened;
}

async function open(): Promise<LocalCopies> {
  try {
    const database = await openDB<Schema>("tidewright", 1, {
      upgrade(fresh) {
        fresh.createObjectStore("copies", { keyPath: "key" }).createIndex("design", "designId");
        fresh.createObjectStore("steps");
      },
      // A page of a newer version wants in: this one lets go, and says so at its next write.
      blocking: (_now, _wanted, event) => (event.target as IDBDatabase).close(),
    });
    // The browser may clear what it was not asked to keep; asking costs nothing, and a no changes nothing.
    void navigator.storage?.persist?.();
    return inDatabase(database);
  } catch {
    return nowhere();
  }
}

const isUnsent = ({ outbox }: Pick<LocalCopy, "outbox">) => outbox.phase !== "kept";
const makersOf = (row: CopyRow): readonly Maker[] => row.makers ?? (isUnsent(row) ? [{ who: "nobody" }] : []);

function inDatabase(database: IDBPDatabase<Schema>): LocalCopies {
  /** What lies in the database of each history, so that only what changed is written. */
  const written = new Map<string, Timeline>();
  const range = (key: string, from = 0, to = Number.MAX_SAFE_INTEGER) => IDBKeyRange.bound([key, from], [key, to]);
  const drop = async (key: string) => {
    written.delete(key);
    const transaction = database.transaction(["copies", "steps"], "readwrite");
    await Promise.all([
      transaction.objectStore("copies").delete(key),
      transaction.objectStore("steps").delete(range(key)),
      transaction.done,
    ]);
  };
  return {
    durable: true,
    async keysOf(designId) {
      const rows = await database.getAllFromIndex("copies", "design", designId);
      return rows
        .sort((a, b) => b.at - a.at)
        .map((row) => ({
          key: row.key,
          unsent: isUnsent(row),
          makers: makersOf(row),
        }));
    },
    async unsent() {
      const rows = await database.getAll("copies");
      return rows.filter(isUnsent).map((row) => {
        const { key, designId, surroundings, outbox } = row;
        return { key, designId, surroundings, makers: makersOf(row), changes: Math.max(1, outbox.changes) };
      });
    },
    async read(key) {
      const transaction = database.transaction(["copies", "steps"]);
      const [row, steps] = await Promise.all([
        transaction.objectStore("copies").get(key),
        transaction.objectStore("steps").getAll(range(key)),
      ]);
      if (row === undefined) return undefined;
      written.set(key, steps);
      const { cursor, length, at: _at, ...stored } = row;
      const rest = { ...stored, makers: makersOf(row) };
      const { present } = row.outbox;
      // Steps that are not all there lead nowhere; the document itself is whole in any case.
      if (steps.length !== length) return { ...rest, history: { past: [], present, future: [] } };
      return { ...rest, history: { past: steps.slice(0, cursor), present, future: steps.slice(cursor) } };
    },
    async write({ history, ...copy }) {
      const timeline = timelineOf(history);
      const { from, steps } = timelineChange(written.get(copy.key) ?? [], timeline);
      const row: CopyRow = { ...copy, cursor: history.past.length, length: timeline.length, at: Date.now() };
      // Strict: an edit counts as kept on this device only once it is on the disk.
      const transaction = database.transaction(["copies", "steps"], "readwrite", { durability: "strict" });
      const store = transaction.objectStore("steps");
      await Promise.all([
        transaction.objectStore("copies").put(row),
        store.delete(range(copy.key, from)),
        ...steps.map((step, place) => store.put(step, [copy.key, from + place])),
        // Asked for at once, so that it is done also where the page is gone before it hears of it.
        Promise.resolve(transaction.commit()),
        transaction.done,
      ]);
      written.set(copy.key, timeline);
    },
    drop,
    async sent() {
      const rows = await database.getAll("copies");
      return rows.filter((row) => !isUnsent(row)).map(({ key }) => key);
    },
  };
}

/** For a browser that lets nothing be kept: everything works, until the page is left. */
function nowhere(): LocalCopies {
  return {
    durable: false,
    keysOf: async () => [],
    unsent: async () => [],
    read: async () => undefined,
    write: async () => {},
    drop: async () => {},
    sent: async () => [],
  };
}
