import { type TypedDraft, typedDrafts } from "../desk/typedDrafts.ts";
import { isOwnWork, type Maker } from "../state/maker.ts";
import { presentMaker, presentSession } from "../state/session.ts";
import { createStore, useStore } from "../state/store.ts";
import { localCopies, type UnsentCopy } from "./localCopies.ts";

/** Work of somebody else that waits on this device: a design, or what was typed into a record. */
export type AnothersItem =
  | ({ readonly kind: "design" } & UnsentCopy)
  | ({ readonly kind: "typed"; readonly makers: readonly Maker[] } & TypedDraft);

interface AnothersWork {
  readonly items: readonly AnothersItem[];
  /** Whether it is being decided what becomes of it. */
  readonly asking: boolean;
  /** What was left to wait, so that it is not told of again and again. */
  readonly left: readonly string[];
}

const store = createStore<AnothersWork>({ items: [], asking: false, left: [] });

/** Returns what `select` takes from what is known of others' work; `select` must not make new objects. */
export function useAnothersWork<Part>(select: (state: AnothersWork) => Part): Part {
  return useStore(store, select);
}

/** Looks whether work of somebody else waits on this device; it is never sent without a word of whoever is here now. */
export async function lookForAnothers({ ask = false } = {}): Promise<void> {
  const items = await anothersItems();
  store.patch({ items, ...(ask ? { asking: true, left: [] } : {}) });
  if (items.length === 0) store.patch({ asking: false });
}

/** Opens the question what becomes of it, or leaves it to wait. */
export function decideOnAnothers(asking: boolean): void {
  store.patch({ asking, left: asking ? [] : store.get().items.map(({ key }) => key) });
}

async function anothersItems(): Promise<readonly AnothersItem[]> {
  const { session } = presentSession();
  // At the door nobody learns what others work on, and nobody could do anything about it.
  if (session === undefined || session.who === "nobody") return [];
  const me = presentMaker();
  const anothers = ({ makers }: { readonly makers: readonly Maker[] }) => !isOwnWork(makers, me);
  const designs = (await (await localCopies()).unsent()).filter(anothers);
  const typed = typedHere()
    .map((draft) => ({ ...draft, makers: [draft.maker] }))
    .filter(anothers);
  return [
    ...designs.map((copy) => ({ kind: "design", ...copy }) as const),
    ...typed.map((draft) => ({ kind: "typed", ...draft }) as const),
  ];
}

function typedHere(): readonly TypedDraft[] {
  try {
    return typedDrafts(localStorage);
  } catch {
    return [];
  }
}
