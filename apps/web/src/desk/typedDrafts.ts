import { type Maker, makerKey } from "../state/maker.ts";

const place = "tidewright.typed.";

/** What was typed into a record and waits on this device, and by whom. */
export interface TypedDraft {
  readonly key: string;
  readonly record: "job" | "customer" | "settings";
  readonly id: string;
  readonly maker: Maker;
  /** The record it was typed into. */
  readonly base: Readonly<Record<string, unknown>>;
  readonly pending: Readonly<Record<string, unknown>>;
}

/** Where the typing of a record waits on this device; each person's has a place of its own. */
export const draftKey = (sourceKey: string, maker: Maker): string => `${place}${makerKey(maker)}.${sourceKey}`;

/** Returns whose typing a key is the place of, and of which record; undefined where it is no such place. `by` undefined in
 *  places of before that was written down.
 *  Example: readDraftKey("tidewright.typed.a1.job.j7")  ->  { by: "a1", record: "job", id: "j7" } */
export function readDraftKey(
  key: string,
): { readonly by: string | undefined; readonly record: TypedDraft["record"]; readonly id: string } | undefined {
  const [, by, record, id = ""] =
    /^tidewright\.typed\.(?:([^.]+)\.)?(job|customer|settings)(?:\.(.+))?$/.exec(key) ?? [];
  return record === undefined ? undefined : { by, record: record as TypedDraft["record"], id };
}

/** Returns whatever was typed on this device and waits; what cannot be read is nobody's and is left alone. */
export function typedDrafts(storage: Storage): readonly TypedDraft[] {
  return Object.keys(storage).flatMap((key) => {
    const at = readDraftKey(key);
    const kept = at === undefined ? undefined : draftAt(storage, key);
    return at === undefined || kept === undefined ? [] : [{ ...kept, key, record: at.record, id: at.id }];
  });
}

/** Takes what everybody typed into a record off this device, such as when the record itself is erased. */
export function dropDrafts(storage: Storage, record: TypedDraft["record"], id: string): void {
  for (const draft of typedDrafts(storage))
    if (draft.record === record && draft.id === id) storage.removeItem(draft.key);
}

function draftAt(storage: Storage, key: string): Pick<TypedDraft, "maker" | "base" | "pending"> | undefined {
  try {
    const { maker, base, pending } = JSON.parse(storage.getItem(key) ?? "null") as Partial<TypedDraft>;
    if (base === undefined || pending === undefined) return undefined;
    return { maker: maker ?? { who: "nobody" }, base, pending };
  } catch {
    return undefined;
  }
}
