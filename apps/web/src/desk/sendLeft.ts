import type { Maker } from "../state/maker.ts";
import type { KeeperSource } from "./keeperSource.ts";
import { type KeeperOptions, recordKeeper } from "./recordKeeper.ts";

type Drafts = NonNullable<KeeperOptions<never, never>["drafts"]>;
// biome-ignore lint/suspicious/noExplicitAny: records of several kinds go the same way
type AnySource = KeeperSource<any, any>;

/** Sends what was typed into records whose pages are closed, such as without the server the day before. What somebody
 *  else changed meanwhile in the same field stays here and is shown when the page is opened.
 *  keys names of everything kept on this device   sourceOf the record that a key is of, undefined where it is none or its
 *  page is open   drafts   maker whose typing it is from now on   -> how many went out */
export async function sendLeft(
  keys: readonly string[],
  sourceOf: (key: string) => AnySource | undefined,
  drafts: Drafts,
  maker: Maker,
): Promise<number> {
  let sent = 0;
  for (const key of keys) {
    const source = sourceOf(key);
    if (source === undefined) continue;
    const answer = await source.load();
    if (!answer.ok) continue;
    const keeper = recordKeeper<typeof answer.value, Record<string, unknown>>({
      record: answer.value,
      version: answer.value.version,
      save: source.save,
      draftKey: key,
      drafts,
      maker,
    });
    await keeper.flush();
    if (keeper.store.get().state === "kept") {
      source.kept?.(keeper.store.get().record);
      sent += 1;
    }
    keeper.halt();
  }
  return sent;
}
