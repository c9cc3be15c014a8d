import type { Answered } from "../api/ask.ts";
import { createStore, type Store } from "../state/store.ts";

/** A list as far as it is loaded. `asOf` tells when it was last whole; undefined before the first time. */
export interface KeptList<Item> {
  readonly items: readonly Item[];
  readonly total: number;
  readonly state: "loading" | "whole" | "unreachable" | "refused";
  readonly asOf: string | undefined;
}

type Page<Item> = { readonly items: readonly Item[]; readonly total: number };

/** Where a list is kept on this device between visits. */
export interface ListCache {
  get(name: string): Promise<unknown>;
  put(name: string, value: unknown): Promise<void>;
}

export interface ListOptions<Item> {
  readonly name: string;
  page(offset: number, limit: number): Promise<Answered<Page<Item>>>;
  one(id: string): Promise<Answered<Item>>;
  readonly cache: ListCache;
  now?(): string;
}

/** A list that shows what is kept on this device at once, and then what the server has. */
export interface ListKeeper<Item> {
  readonly store: Store<KeptList<Item>>;
  refresh(): Promise<void>;
  /** Asks for one entry anew; one that is gone leaves the list. */
  refreshOne(id: string): Promise<void>;
  /** Puts an entry in that the server just answered with. */
  put(item: Item): void;
  drop(id: string): void;
}

const pageSize = 500;

/** Returns a list that loads itself page by page; entries that move between two pages while it does come once.
 *  options   -> ListKeeper. Throws: never. */
export function keptList<Item extends { readonly id: string }>(options: ListOptions<Item>): ListKeeper<Item> {
  const { name, page, one, cache, now = () => new Date().toISOString() } = options;
  const store = createStore<KeptList<Item>>({ items: [], total: 0, state: "loading", asOf: undefined });
  let round = 0;
  let cached: Promise<void> | undefined;

  const remember = () => {
    const { items, asOf } = store.get();
    void cache.put(name, { items, asOf }).catch(() => undefined);
  };
  const showCached = async () => {
    const kept = await cache.get(name).catch(() => undefined);
    if (!isKept<Item>(kept) || store.get().asOf !== undefined || store.get().items.length > 0) return;
    store.patch({ items: kept.items, total: kept.items.length, asOf: kept.asOf });
  };

  const refresh = async (): Promise<void> => {
    round += 1;
    const mine = round;
    cached ??= showCached();
    const found = new Map<string, Item>();
    for (let offset = 0; ; offset += pageSize) {
      const answer = await page(offset, pageSize);
      if (mine !== round) return;
      if (!answer.ok) {
        await cached;
        store.patch({ state: answer.reason });
        return;
      }
      for (const item of answer.value.items) found.set(item.id, item);
      const { total } = answer.value;
      const done = answer.value.items.length < pageSize || offset + pageSize >= total;
      // What is on the screen stays until there is more to show than that.
      if (done || found.size > store.get().items.length)
        store.patch({ items: [...found.values()], total: done ? found.size : total });
      if (done) break;
    }
    store.patch({ state: "whole", asOf: now() });
    remember();
  };

  const put = (item: Item) => {
    const { items } = store.get();
    const rest = items.filter(({ id }) => id !== item.id);
    store.patch({ items: [item, ...rest], total: rest.length + 1 });
    remember();
  };
  const drop = (id: string) => {
    const items = store.get().items.filter((item) => item.id !== id);
    store.patch({ items, total: items.length });
    remember();
  };

  return {
    store,
    refresh,
    async refreshOne(id) {
      const answer = await one(id);
      if (answer.ok) put(answer.value);
      else if (answer.reason === "refused" && answer.problem.status === 404) drop(id);
    },
    put,
    drop,
  };
}

function isKept<Item>(value: unknown): value is { readonly items: Item[]; readonly asOf: string } {
  if (typeof value !== "object" || value === null) return false;
  const { items, asOf } = value as { items?: unknown; asOf?: unknown };
  return Array.isArray(items) && typeof asOf === "string";
}
