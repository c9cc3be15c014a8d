import { type Link, routes } from "@tidewright/protocol";
import type { App } from "../app.ts";
import { firstDesignOn } from "../compute/firstDesignOn.ts";
import { serveFile } from "../files/serveFile.ts";
import { mount } from "../http/mount.ts";
import { shopPumps } from "../routes/shopCatalogue.ts";
import type { Asker } from "./asker.ts";
import { createLink, invitationOf, noSuchLink, sharedDesignOf } from "./customerLinks.ts";
import { kept } from "./kept.ts";
import { notThere } from "./refusal.ts";
import { takeIntake } from "./takeIntake.ts";
import { senderKey } from "./whoAsks.ts";

/** Customers' links: made and closed by the shop, opened and answered by whoever bears one. */
export function mountLinks(app: App): void {
  const { doors, store } = app;
  mount(app, routes.links, async ({ query }) => ({ items: await store.links.list(query.jobId ?? null) }));
  mount(app, routes.createLink, ({ body, by }) => createLink(doors, body, by.author));
  mount(app, routes.revokeLink, async ({ params, by }) => kept(await store.links.revoke(params.linkId, by)));
  mount(app, routes.shared, ({ asker }) => sharedDesignOf(doors, linkOf(asker)));
  mount(app, routes.sharedLogo, async ({ request }) => {
    const { settings } = await store.settings.read();
    const logo = settings.logoFileId === null ? undefined : await store.files.get(settings.logoFileId);
    // Settings name a file by its id: only a logo of the shop's own goes out to strangers.
    if (logo?.kind !== "logo" || logo.jobId !== null) throw notThere("the shop shows no logo");
    return serveFile(logo, request.headers.get("If-None-Match") ?? undefined);
  });
  mount(app, routes.intake, ({ asker }) => {
    const { link, answered = false } = bearerOf(asker);
    return invitationOf(doors, link, answered);
  });
  mount(app, routes.answerIntake, async ({ asker, body, bearings }) => {
    const { link, draft, answered = false } = bearerOf(asker);
    // The first answer was lost on the way: what was sent is here.
    if (answered) return { received: true as const };
    const { settings } = await store.settings.read();
    const makeDesign = firstDesignOn(app.threads, await shopPumps(store), settings);
    await takeIntake(doors, link, body, makeDesign, senderKey(doors, bearings), draft);
    return { received: true as const };
  });
}

/** The link that a request was let in by. */
const linkOf = (asker: Asker): Link => bearerOf(asker).link;

function bearerOf(asker: Asker) {
  if (asker.who !== "link" || asker.link === undefined) throw noSuchLink();
  return { ...asker, link: asker.link };
}
