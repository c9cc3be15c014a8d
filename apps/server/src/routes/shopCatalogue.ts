import { type Catalogue, demoCatalogue, type PumpRow } from "@tidewright/catalogue";
import type { Store } from "@tidewright/store";

const known = new WeakMap<Store, Catalogue>();

/** Returns what a shop's designs may refer to: its own pumps, then the catalogue that comes with the program.
 *  store of the shop   -> Catalogue, read anew after a change of the shop's rows */
export async function shopCatalogue(store: Store): Promise<Catalogue> {
  const before = known.get(store);
  if (before !== undefined) return before;
  // Watching first: a change while the rows are read must not be missed.
  const stop = store.watch((change) => {
    if (change.kind !== "catalogue") return;
    known.delete(store);
    stop();
  });
  const rows = await store.catalogue.list("pump");
  const pumps = rows.map(({ id, data }) => ({ ...(data as PumpRow), id }));
  const catalogue =
    pumps.length === 0 ? demoCatalogue : { ...demoCatalogue, pumps: [...pumps, ...demoCatalogue.pumps] };
  known.set(store, catalogue);
  return catalogue;
}
