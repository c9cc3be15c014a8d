import type { ProblemDetails } from "@tidewright/protocol";
import type { Answered } from "../api/ask.ts";
import type { Maker } from "../state/maker.ts";
import { createStore, type Store } from "../state/store.ts";
import { type FieldConflict, settleConflict } from "./settleConflict.ts";

type Versioned = Readonly<Record<string, unknown>>;

/** What a page with fields that keep themselves shows of one record. */
export interface KeptRecord<Item extends Versioned, Fields extends object> {
  /** As the server has it, as far as is known. */
  readonly record: Item;
  readonly version: number;
  /** What was typed and is not acknowledged. */
  readonly pending: Partial<Fields>;
  readonly state: "kept" | "waiting" | "sending" | "unreachable" | "refused" | "conflict";
  readonly conflicts: readonly FieldConflict[];
  readonly problem: ProblemDetails | undefined;
}

/** How a record is kept: one question to the server, and a place on this device for what it has not acknowledged. */
export interface KeeperOptions<Item extends Versioned, Fields extends object> {
  readonly record: Item;
  readonly version: number;
  save(change: Partial<Fields>, version: number, record: Item): Promise<Answered<Item>>;
  /** Name of the place on this device. */
  readonly draftKey: string;
  readonly drafts?: Pick<Storage, "getItem" | "setItem" | "removeItem">;
  /** Whose typing it is, noted with what waits. */
  readonly maker?: Maker;
  /** Whether what was typed may go out now: not while somebody else would be named as its author. */
  mayGo?(): boolean;
  /** Quiet time after the last key before a change goes out [ms], and before it is tried again. */
  readonly quiet?: number;
  readonly retry?: number;
}

/** A record whose changes go out by themselves, one question at a time. */
export interface RecordKeeper<Item extends Versioned, Fields extends object> {
  readonly store: Store<KeptRecord<Item, Fields>>;
  change(change: Partial<Fields>): void;
  /** Sends what waits now, such as when a field is left or the page goes. */
  flush(): Promise<void>;
  /** Settles one conflict: with my words, or with theirs. */
  choose(field: string, whose: "mine" | "theirs"): void;
  /** Takes in what the server has now. */
  take(record: Item, version: number): void;
  /** Sends what waits a last time. */
  stop(): void;
  /** Ends without another word; what waits stays on this device. */
  halt(): void;
}

/** Returns a keeper of a record: what is typed stays on this device until the server has acknowledged it; what somebody
 *  else changed meanwhile is merged field by field, and where both changed the same field nothing is sent until a person chose.
 *  options   -> RecordKeeper. Throws: never. */
export function recordKeeper<Item extends Versioned, Fields extends object>(
  options: KeeperOptions<Item, Fields>,
): RecordKeeper<Item, Fields> {
  const { save, draftKey, drafts, maker, mayGo = () => true, quiet = 700, retry = 8000 } = options;
  const store = createStore<KeptRecord<Item, Fields>>({
    record: options.record,
    version: options.version,
    pending: {},
    state: "kept",
    conflicts: [],
    problem: undefined,
  });
  let timer: ReturnType<typeof setTimeout> | undefined;
  let flight: Promise<void> | undefined;
  let stopped = false;
  /** What pending changes were made from. */
  let base: Item = options.record;

  const later = (wait: number) => {
    clearTimeout(timer);
    if (!stopped) timer = setTimeout(() => void flush(), wait);
  };
  const remember = () => {
    const { pending } = store.get();
    try {
      if (Object.keys(pending).length === 0) drafts?.removeItem(draftKey);
      else drafts?.setItem(draftKey, JSON.stringify({ base, pending, maker }));
    } catch {
      // A full or closed storage: the change still goes out from memory.
    }
  };

  /** Lays the server's record under what is pending. */
  const lay = (record: Item, version: number, mine: Partial<Fields>) => {
    const { resend, conflicts } = settleConflict(base, mine, record);
    const pending = { ...resend, ...Object.fromEntries(conflicts.map(({ field, mine: value }) => [field, value])) };
    const left = Object.keys(pending).length > 0;
    store.patch({
      record,
      version,
      pending: pending as Partial<Fields>,
      conflicts,
      problem: undefined,
      state: conflicts.length > 0 ? "conflict" : left ? "waiting" : "kept",
    });
    // With a conflict open the base stays, so that what they changed is told from what I changed.
    if (conflicts.length === 0) base = record;
    remember();
    return left && conflicts.length === 0;
  };

  const send = async (): Promise<void> => {
    const { pending, version, record, conflicts } = store.get();
    if (conflicts.length > 0 || Object.keys(pending).length === 0 || !mayGo()) return;
    store.patch({ state: "sending" });
    const answer = await save(pending, version, record);
    const typedSince = Object.fromEntries(
      Object.entries(store.get().pending).filter(([field, value]) => (pending as Versioned)[field] !== value),
    ) as Partial<Fields>;
    if (answer.ok) {
      base = answer.value;
      if (lay(answer.value, answer.version ?? version + 1, typedSince)) later(quiet);
    } else if (answer.reason === "unreachable") {
      store.patch({ state: "unreachable" });
      later(retry);
    } else if (answer.problem.status === 412 && isRecord(answer.problem.current)) {
      const theirs = answer.problem.current as Item;
      if (lay(theirs, versionIn(theirs) ?? version + 1, store.get().pending)) later(0);
    } else store.patch({ state: "refused", problem: answer.problem });
  };

  const flush = async (): Promise<void> => {
    clearTimeout(timer);
    while (flight !== undefined) await flight;
    flight = send().finally(() => {
      flight = undefined;
    });
    await flight;
  };

  const draft = draftOf<Item, Fields>(drafts, draftKey);
  if (draft !== undefined) {
    base = draft.base;
    if (lay(options.record, options.version, draft.pending)) later(0);
  }

  return {
    store,
    change(change) {
      const pending = { ...store.get().pending, ...change };
      const { conflicts } = store.get();
      store.patch({
        pending,
        conflicts: conflicts.map((conflict) =>
          conflict.field in change ? { ...conflict, mine: (change as Versioned)[conflict.field] } : conflict,
        ),
        state: conflicts.length > 0 ? "conflict" : "waiting",
        problem: undefined,
      });
      remember();
      if (conflicts.length === 0) later(quiet);
    },
    flush,
    choose(field, whose) {
      const { conflicts, pending, record } = store.get();
      const left = conflicts.filter((conflict) => conflict.field !== field);
      const { [field as keyof Fields]: _mine, ...without } = pending;
      store.patch({
        conflicts: left,
        pending: whose === "mine" ? pending : (without as Partial<Fields>),
        state: left.length > 0 ? "conflict" : "waiting",
      });
      if (left.length === 0) base = record;
      remember();
      if (left.length > 0) return;
      if (Object.keys(store.get().pending).length === 0) store.patch({ state: "kept" });
      else later(0);
    },
    take(record, version) {
      if (flight !== undefined || version < store.get().version) return;
      if (lay(record, version, store.get().pending)) later(quiet);
    },
    stop() {
      void flush();
      stopped = true;
      clearTimeout(timer);
    },
    halt() {
      stopped = true;
      clearTimeout(timer);
    },
  };
}

function draftOf<Item extends Versioned, Fields extends object>(
  drafts: KeeperOptions<Item, Fields>["drafts"],
  key: string,
): { readonly base: Item; readonly pending: Partial<Fields> } | undefined {
  try {
    const kept: unknown = JSON.parse(drafts?.getItem(key) ?? "null");
    if (!isRecord(kept) || !isRecord(kept["base"]) || !isRecord(kept["pending"])) return undefined;
    return { base: kept["base"] as Item, pending: kept["pending"] as Partial<Fields> };
  } catch {
    return undefined;
  }
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === "object" && value !== null;

function versionIn(record: Versioned): number | undefined {
  return typeof record["version"] === "number" ? record["version"] : undefined;
}
