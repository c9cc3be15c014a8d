import { type Catalogue, demoCatalogue } from "@tidewright/catalogue";
import type { CatalogueMessage } from "./catalogueMessage.ts";
import { currentCatalogue, currentOwnPumps, currentPriceFactors } from "./currentCatalogue.ts";

/** Returns what brings a worker up to the catalogue in force, to be called before each question: nothing is sent where the
 *  worker knows it, and no question meets an older one than was in force when it was asked. */
export function catalogueTeller(): (worker: Pick<Worker, "postMessage">) => Catalogue {
  const told = new WeakMap<object, Catalogue>();
  return (worker) => {
    const catalogue = currentCatalogue();
    // A new worker has what comes with the program.
    if ((told.get(worker) ?? demoCatalogue) !== catalogue)
      worker.postMessage({
        kind: "catalogue",
        pumps: currentOwnPumps(),
        prices: currentPriceFactors(),
      } satisfies CatalogueMessage);
    told.set(worker, catalogue);
    return catalogue;
  };
}
