import type { SharedPump } from "@tidewright/protocol";
import type { OwnPumpRow } from "../catalogue/shopRows.ts";

/** Returns the pumps that come with a shared design as rows of the catalogue. What the shop has not told is filled in with what
 *  tells nothing: the customer's page shows no price, and no sentence of it depends on one.
 *  pumps of the shared design   -> rows, still to be read by `readOwnPumps` */
export function sharedPumpRows(pumps: readonly SharedPump[]): OwnPumpRow[] {
  return pumps.map(({ id, controller, ...printed }) => ({
    id,
    data: {
      ...printed,
      price: 0,
      currency: "EUR",
      source: { title: id, status: "published" },
      ...(controller === undefined ? {} : { controller: { ...controller, ref: "", price: 0 } }),
    },
  }));
}
