import { demoCatalogue, findPump } from "@tidewright/catalogue";
import { afterEach, describe, expect, it } from "vitest";
import { freshApp, sampleDocument } from "../testing/freshApp.ts";
import { removeFresh } from "../testing/freshDoors.ts";
import { firstPictures } from "./fillFirstPicture.ts";

afterEach(removeFresh);

const reader = { language: "en", system: "metric", own: {} } as const;

describe("the first picture of a design", () => {
  it("shows nothing of a customer any more once they were erased", async () => {
    const { app, store, sharedJob, links } = await freshApp({ listensOn: "127.0.0.1", people: false });
    const designId = links.share.designId!;
    const by = { author: "Mara", at: "2026-03-01T09:00:00.000Z" };
    const named = { ...((await store.designs.latest(designId))!.document as object), name: "Reef of Aldous Penn" };
    expect(await store.designs.append(designId, 1, named, by)).toMatchObject({ ok: true });
    const fill = firstPictures(app, {
      draw: async (document) => (document as { readonly name: string }).name,
      close: async () => {},
    });
    const here = { cookie: undefined, authorization: undefined, forwardedFor: undefined, remoteAddress: "127.0.0.1" };
    const page = '<div id="bench"></div>';
    expect(await fill(here, reader, designId, page)).toContain("Aldous Penn");
    expect(await store.eraseCustomer(sharedJob.customerId!, by)).toMatchObject({ ok: true });
    const after = await fill(here, reader, designId, page);
    expect(after).toContain("first-picture");
    expect(after).not.toContain("Penn");
    expect(await fill({ ...here, remoteAddress: "192.168.1.7" }, reader, designId, page)).toBe(undefined);
  });

  it("is drawn with the shop's own pumps that the design names, and anew once one is changed", async () => {
    const { app, store, links } = await freshApp({ listensOn: "127.0.0.1", people: false });
    const designId = links.share.designId!;
    const by = { author: "Mara", at: "2026-03-01T09:00:00.000Z" };
    const data = findPump(demoCatalogue, "ferrow-c40")!;
    const put = (id: string, version: number, model: string) =>
      store.catalogue.put("pump", id, version, { ...data, model }, by);
    await put("house-1", 0, "first");
    await put("house-2", 0, "other");
    const document = { ...sampleDocument, tankPumps: [{ ref: "house-1", at: [] }] };
    expect(await store.designs.append(designId, 1, document, by)).toMatchObject({ ok: true });
    const fill = firstPictures(app, {
      draw: async (_document, pumps) => pumps.map(({ id, model }) => `${id} ${model}`).join(),
      close: async () => {},
    });
    const here = { cookie: undefined, authorization: undefined, forwardedFor: undefined, remoteAddress: "127.0.0.1" };
    const picture = () => fill(here, reader, designId, '<div id="bench"></div>');
    expect(await picture()).toContain(">house-1 first<");
    await put("house-1", 1, "second");
    expect(await picture()).toContain(">house-1 second<");
  });

  it("is drawn once for every language and choice of units", async () => {
    const { app, links } = await freshApp({ listensOn: "127.0.0.1", people: false });
    const drawn: string[] = [];
    const fill = firstPictures(app, {
      draw: async (_document, _pumps, { language, system }) => {
        drawn.push(`${language} ${system}`);
        return drawn.at(-1);
      },
      close: async () => {},
    });
    const here = { cookie: undefined, authorization: undefined, forwardedFor: undefined, remoteAddress: "127.0.0.1" };
    const german = { language: "de", system: "us", own: {} } as const;
    for (const each of [reader, german, reader, german]) {
      const page = await fill(here, each, links.share.designId!, '<div id="bench"></div>');
      expect(page).toContain(`>${each.language} ${each.system}<`);
    }
    expect(drawn).toEqual(["en metric", "de us"]);
  });
});
