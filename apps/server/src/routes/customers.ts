import { routes } from "@tidewright/protocol";
import type { App } from "../app.ts";
import { kept } from "../doors/kept.ts";
import { notThere } from "../doors/refusal.ts";
import { mount } from "../http/mount.ts";

/** Customers: listed, read, changed, and erased on their wish. */
export function mountCustomers(app: App): void {
  const { customers } = app.store;
  mount(app, routes.customers, ({ query }) => customers.search(query), { remembered: true });
  // Before the route of one customer, whose path would take "unused" for a name.
  mount(app, routes.unusedCustomers, async ({ query }) => ({ items: await customers.unusedSince(query.since) }));
  mount(app, routes.createCustomer, async ({ body, by }) => kept(await customers.create(body, by)));
  mount(app, routes.customer, async ({ params: { customerId } }) => {
    const found = await customers.find(customerId);
    if (!found) throw notThere(`There is no customer "${customerId}".`);
    return found;
  });
  mount(app, routes.changeCustomer, async ({ params, expected, body, by }) =>
    kept(await customers.update(params.customerId, expected, body, by)),
  );
  mount(app, routes.eraseCustomer, async ({ params, by }) =>
    kept(await app.store.eraseCustomer(params.customerId, by)),
  );
}
