import { type Catalogue, demoCatalogue, readOwnPumps, withOwnPumps } from "@tidewright/catalogue";
import type { Store } from "@tidewright/store";

const known = new WeakMap<Store, Promise<Catalogue>>();

/** Returns what a shop's designs may refer to: its own pumps, then the catalogue that comes with the program.
 *  store of the shop   -> Catalogue, read anew after a change of the shop's rows, and where one may have been
 *  missed */
export function shopCatalogue(store: Store): Promise<Catalogue> {
  const before = known.get(store);
  if (before !== undefined) return before;
  // Watching first: a change while the rows are read must not be missed.
  const stop = store.watch((change) => {
    if (change.kind === "catalogue" || change.kind === "missed") forget();
  });
  const forget = (): void => {
    known.delete(store);
    stop();
  };
  const reading = read(store);
  known.set(store, reading);
  reading.catch(forget);
  return reading;
}

/** Returns the shop's own pumps alone.
 *  store of the shop   -> PumpRow[] */
export async function shopPumps(store: Store): Promise<Catalogue["pumps"]> {
  const { pumps } = await shopCatalogue(store);
  return pumps.slice(0, pumps.length - demoCatalogue.pumps.length);
}

async function read(store: Store): Promise<Catalogue> {
  // Rows of a restored backup may be from before the check at the door.
  return withOwnPumps(demoCatalogue, readOwnPumps(await store.catalogue.list("pump")).pumps);
}
