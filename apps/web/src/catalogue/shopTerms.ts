import { routes, type ShopSettings } from "@tidewright/protocol";
import { ask } from "../api/ask.ts";
import { deskCache } from "../desk/deskCache.ts";
import { onChange } from "../keeping/changes.ts";
import { createStore, useStore } from "../state/store.ts";

/** What the shop says once for all its jobs that designs are made and priced with. */
export type ShopTerms = Pick<ShopSettings, "currency" | "tariff" | "units" | "priceMultipliers">;

/** Terms as far as they are known; `asked` once the server has said what they are. */
const store = createStore<{ readonly terms: ShopTerms | undefined; readonly asked: boolean }>({
  terms: undefined,
  asked: false,
});

/** Name of the terms among what the desk keeps on this device; like its lists they go when somebody signs out. */
const cacheName = "shopTerms";

/** What is known of the shop at this moment: nothing on trial and in a page that no shop stands behind. */
export const presentTerms = (): ShopTerms | undefined => store.get().terms;

/** Returns what is known of the shop and renders again when it changes. */
export const useShopTerms = (): ShopTerms | undefined => useStore(store, (state) => state.terms);

/** Tells of every change of the terms; returns how to stop it. */
export function watchTerms(listener: () => void): () => void {
  let last = presentTerms();
  return store.subscribe(() => {
    const { terms } = store.get();
    if (terms === last) return;
    last = terms;
    listener();
  });
}

/** Takes over what was said of the shop, or that nothing is. */
export function takeTerms(said: ShopTerms | undefined): void {
  const terms = said && {
    currency: said.currency,
    tariff: said.tariff,
    units: said.units,
    priceMultipliers: said.priceMultipliers,
  };
  // The same again must not set everything that watches to work.
  if (JSON.stringify(terms) !== JSON.stringify(presentTerms())) store.patch({ terms });
}

/** As `takeTerms`, of what the server has just said: kept on this device for the next visit. */
export function learnTerms(said: ShopTerms): void {
  takeTerms(said);
  store.patch({ asked: true });
  void deskCache.put(cacheName, presentTerms()).catch(() => undefined);
}

async function askTerms(): Promise<void> {
  const answer = await ask(routes.settings, {});
  // What is known stands until the server is heard of again: a line that comes back brings the question back.
  if (answer.ok) learnTerms(answer.value.settings);
  // Where somebody must sign in first there is no line to listen on.
  if (answer.ok || answer.reason === "unreachable") listen();
}

let listening = false;

function listen(): void {
  if (!listening)
    onChange((told) => {
      if (told.kind === "settings" || told.kind === "lineBack") void askTerms();
    });
  listening = true;
}

/** Puts the shop's terms in force for a page that keeps designs: from this device at once, then from the server, and again
 *  whenever somebody changes them. It may be called as often as one likes, such as after signing in.
 *  -> done once the server has answered or cannot be reached */
export async function followShopTerms(): Promise<void> {
  if (store.get().asked) return;
  const known = (await deskCache.get(cacheName).catch(() => undefined)) as ShopTerms | undefined;
  if (!store.get().asked && known?.priceMultipliers !== undefined) takeTerms(known);
  await askTerms();
}
