import { useEffect, useState } from "react";
import { makerKey } from "../state/maker.ts";
import { presentMaker, useSession } from "../state/session.ts";
import { useStore } from "../state/store.ts";
import type { Item, KeeperSource } from "./keeperSource.ts";
import { type KeptRecord, type RecordKeeper, recordKeeper } from "./recordKeeper.ts";
import { heedDoor, onShopChange } from "./shopLists.ts";
import { draftKey } from "./typedDrafts.ts";

/** What a page has of its record: a keeper, or why there is none. */
export interface LoadedKeeper<Record extends Item, Fields extends object> {
  readonly keeper: RecordKeeper<Record, Fields> | undefined;
  readonly missing: "notFound" | "unreachable" | "refused" | undefined;
}

const drafts = () => {
  try {
    return localStorage;
  } catch {
    return undefined;
  }
};

/** Loads a record and keeps what is typed into it; the source must be the same for the life of the component. */
export function useKeeper<Record extends Item, Fields extends object>(
  source: KeeperSource<Record, Fields>,
): LoadedKeeper<Record, Fields> {
  const [loaded, setLoaded] = useState<LoadedKeeper<Record, Fields>>({ keeper: undefined, missing: undefined });
  // Somebody else at the same page finds their own typing in the fields and not another's.
  useSession();
  const maker = presentMaker();
  const who = makerKey(maker);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the page is made anew for another record
  useEffect(() => {
    let keeper: RecordKeeper<Record, Fields> | undefined;
    let gone = false;
    const begin = (record: Record) => {
      const storage = drafts();
      keeper = recordKeeper<Record, Fields>({
        record,
        version: record.version,
        save: async (change, version, present) => {
          const answer = heedDoor(await source.save(change, version, present));
          if (answer.ok) source.kept?.(answer.value);
          return answer;
        },
        draftKey: draftKey(source.key, maker),
        maker,
        mayGo: () => makerKey(presentMaker()) === who,
        ...(storage === undefined ? {} : { drafts: storage }),
      });
      setLoaded({ keeper, missing: undefined });
    };
    const load = async () => {
      const answer = heedDoor(await source.load());
      if (gone) return;
      if (answer.ok) {
        if (keeper === undefined) begin(answer.value);
        else keeper.take(answer.value, answer.value.version);
        return;
      }
      if (answer.reason === "refused") {
        setLoaded({ keeper: undefined, missing: answer.problem.status === 404 ? "notFound" : "refused" });
        return;
      }
      const known = source.known?.();
      if (keeper === undefined && known !== undefined) begin(known);
      else if (keeper === undefined) setLoaded({ keeper: undefined, missing: "unreachable" });
    };
    void load();
    const stop = onShopChange((change) => {
      if (change === "everything" || source.concerns(change)) void load();
    });
    const flush = () => void keeper?.flush();
    const back = () => void load().then(flush);
    addEventListener("pagehide", flush);
    addEventListener("online", back);
    return () => {
      gone = true;
      stop();
      keeper?.stop();
      removeEventListener("pagehide", flush);
      removeEventListener("online", back);
    };
  }, [source.key, who]);
  return loaded;
}

/** What a keeper has now; renders again when it changes. */
export function useKept<Record extends Item, Fields extends object>(
  keeper: RecordKeeper<Record, Fields>,
): KeptRecord<Record, Fields> {
  return useStore(keeper.store, (state) => state);
}

/** A field as it is shown: what was typed, else what is kept. */
export function shownField<
  Record extends Item,
  Fields extends object,
  Field extends string & keyof Record & keyof Fields,
>(kept: KeptRecord<Record, Fields>, field: Field): Record[Field] {
  return field in kept.pending ? (kept.pending[field] as unknown as Record[Field]) : kept.record[field];
}
