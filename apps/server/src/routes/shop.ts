import { routes } from "@tidewright/protocol";
import type { App } from "../app.ts";
import { kept } from "../doors/kept.ts";
import { badInput } from "../doors/refusal.ts";
import { mount } from "../http/mount.ts";
import { pumpProblems } from "./checkPumpRow.ts";

/** What the shop keeps for itself: catalogue rows, settings, and the trail of who did what. */
export function mountShop(app: App): void {
  const { catalogue, settings, audit } = app.store;
  mount(app, routes.catalogueRows, async ({ params: { kind } }) => ({ items: await catalogue.list(kind) }));
  mount(app, routes.putCatalogueRow, async ({ params: { kind, rowId }, expected, body, by }) => {
    const problems = kind === "pump" ? pumpProblems(rowId, body.data) : [];
    if (problems.length > 0) throw badInput(problems);
    return kept(await catalogue.put(kind, rowId, expected, body.data, by));
  });
  mount(app, routes.removeCatalogueRow, async ({ params: { kind, rowId }, expected, by }) =>
    kept(await catalogue.remove(kind, rowId, expected, by)),
  );
  mount(app, routes.settings, () => settings.read());
  mount(app, routes.changeSettings, async ({ expected, body, by }) => kept(await settings.write(expected, body, by)));
  mount(app, routes.audit, async ({ query: { subjectKind, subjectId, ...page } }) => {
    const subject =
      subjectKind === undefined || subjectId === undefined ? undefined : { kind: subjectKind, id: subjectId };
    return { items: await audit.list({ limit: 100, ...page, ...(subject ? { subject } : {}) }) };
  });
}
