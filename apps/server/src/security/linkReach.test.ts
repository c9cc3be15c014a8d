import { demoCatalogue, findPump } from "@tidewright/catalogue";
import { type Routes, routes } from "@tidewright/protocol";
import { afterEach, describe, expect, it } from "vitest";
import { type As, type FreshApp, freshApp, sampleDocument } from "../testing/freshApp.ts";
import { removeFresh } from "../testing/freshDoors.ts";
import { jpeg } from "../testing/sampleFiles.ts";

afterEach(removeFresh);

const at = "2026-03-01T09:00:00.000Z";
const by = { author: "Mara", at };

/** Everything of the customer whose link it is, and of another one. */
async function twoCustomers(fresh: FreshApp) {
  const { store, sharedJob } = fresh;
  await store.customers.create({ id: "other", name: "Berta Quill", contact: "berta@quill.example" }, by);
  await store.jobs.create({ id: "other-job", name: "Quill's office", customerId: "other", notes: "secret-note" }, by);
  await store.designs.create(
    { id: "other-design", jobId: "other-job", name: "Other", document: { ...sampleDocument, name: "secret-design" } },
    by,
  );
  const photo = { kind: "photo", name: "secret-photo.jpg", contentType: "image/jpeg", bytes: jpeg() } as const;
  await store.files.put({ id: "other-file", jobId: "other-job", ...photo }, by);
  await store.files.put({ id: "own-file", jobId: sharedJob.id, ...photo }, by);
  const [own] = await store.designs.ofJob(sharedJob.id);
  return {
    customerId: ["other", sharedJob.customerId!],
    jobId: ["other-job", sharedJob.id],
    designId: ["other-design", own!.id],
    fileId: ["other-file", "own-file"],
    number: ["1"],
    pumpId: ["house-shown"],
    accountId: [fresh.accounts.owner.id],
    linkId: [fresh.links.share.id],
    kind: ["pump"],
    rowId: ["1"],
  } as Readonly<Record<string, readonly string[]>>;
}

/** Every address that a path has with these names filled in. */
const filled = (path: string, names: Readonly<Record<string, readonly string[]>>): string[] => {
  const hole = /\{(\w+)\}/.exec(path);
  return hole ? names[hole[1]!]!.flatMap((name) => filled(path.replace(hole[0], name), names)) : [path];
};

describe("the bearer of a customer's link", () => {
  it("reaches nothing by an id, neither another customer's nor the own one", async () => {
    const fresh = await freshApp();
    const names = await twoCustomers(fresh);
    let tried = 0;
    for (const id of Object.keys(routes) as (keyof Routes)[]) {
      const { path, method, access } = routes[id];
      if (access === "open" || access === "share" || access === "intake") continue;
      for (const address of filled(path, names)) {
        for (const as of ["share", "intake"] as As[]) {
          const response = await fresh.ask(address, { method, as, ...(method === "GET" ? {} : { json: {} }) });
          expect({ address, as, status: response.status }).toEqual({ address, as, status: 403 });
          expect(await response.text()).not.toMatch(/secret|Quill|Penn/);
          tried++;
        }
      }
    }
    expect(tried).toBeGreaterThan(100);
  });

  it("sees the one design whatever it asks for besides", async () => {
    const fresh = await freshApp();
    await twoCustomers(fresh);
    for (const more of [
      "?designId=other-design",
      "?revision=2",
      "?jobId=other-job",
      "/../designs/other-design",
      "?link=other",
      "/other-design",
      "/%2e%2e/jobs",
    ]) {
      const response = await fresh.ask(`/api/shared${more}`, { as: "share" });
      const text = await response.text();
      expect(text).not.toMatch(/secret|Quill|Penn|aldous/i);
      if (response.status === 200) expect(JSON.parse(text)).toMatchObject({ designName: "First", revision: 1 });
      else expect([403, 404, 422]).toContain(response.status);
    }
  });

  it("sees of the shop's own pumps those that the design names, and of them what a maker prints", async () => {
    const fresh = await freshApp();
    const { store } = fresh;
    const data = {
      ...findPump(demoCatalogue, "ferrow-c40")!,
      price: 271.3,
      note: "secret-note",
      source: { title: "secret-list", status: "published" },
      controller: { included: false, ref: "secret-ref", price: 33.7 },
      purchase: "secret-price",
    };
    await store.catalogue.put("pump", "house-shown", 0, { ...data, model: "Shown" }, by);
    await store.catalogue.put("pump", "house-other", 0, { ...data, model: "secret-model" }, by);
    await store.catalogue.put("pump", "house-bad", 0, { maker: "secret-bad" }, by);
    const [own] = await store.designs.ofJob(fresh.sharedJob.id);
    const see = async () => {
      const response = await fresh.ask("/api/shared", { as: "share" });
      expect(response.status).toBe(200);
      return response.text();
    };
    expect(JSON.parse(await see())).toMatchObject({ pumps: [] });
    const named = (ref: string) => ({
      ...sampleDocument,
      loops: sampleDocument.loops.map((loop) => ({ ...loop, pumps: loop.pumps.map((pump) => ({ ...pump, ref })) })),
    });
    await store.designs.append(own!.id, 1, named("house-shown"), by);
    const text = await see();
    const { pumps } = JSON.parse(text) as { pumps: Record<string, unknown>[] };
    expect(pumps).toMatchObject([
      { id: "house-shown", model: "Shown", curves: data.curves, ratedPower: data.ratedPower },
    ]);
    expect(text).not.toMatch(/secret|271[.]3|33[.]7|"price"|"note"/);
    await store.designs.append(own!.id, 2, named("house-bad"), by);
    expect(JSON.parse(await see())).toMatchObject({ pumps: [] });
  });

  it("is nobody else, even with an owner's session in the same browser", async () => {
    const fresh = await freshApp();
    const cookie = `tidewright=${fresh.secrets.owner}`;
    for (const as of ["share", "intake"] as As[]) {
      const jobs = await fresh.ask("/api/jobs", { as, headers: { Cookie: cookie } });
      expect(jobs.status).toBe(403);
      const session = await fresh.ask("/api/session", { as, headers: { Cookie: cookie } });
      expect(await session.json()).toMatchObject({ who: "nobody", role: null });
    }
    const wrongDoor = await fresh.ask("/api/intake", { as: "share", headers: { Cookie: cookie } });
    expect(wrongDoor.status).toBe(404);
  });

  it("is told the same, to the letter, of a link that is unknown, expired, revoked or of another kind", async () => {
    const fresh = await freshApp();
    const { store, clock } = fresh;
    const soon = new Date(clock.now + 1000).toISOString();
    const [own] = await store.designs.ofJob(fresh.sharedJob.id);
    const make = async () => {
      const made = await store.links.create({ kind: "view", designId: own!.id, expiresAt: soon }, by);
      if (!made.ok) throw new Error("no link was made");
      return made.value;
    };
    const [expired, revoked] = [await make(), await make()];
    await store.links.revoke(revoked.link.id, by);
    clock.now += 2000;
    const answers = new Set<string>();
    for (const token of [expired.token, revoked.token, "A".repeat(43), "short", "", fresh.secrets.intake]) {
      const response = await fresh.ask("/api/shared", { headers: { Authorization: `Link ${token}` } });
      answers.add(`${response.status} ${await response.text()}`);
    }
    expect([...answers]).toHaveLength(1);
    expect([...answers][0]).toMatch(/^404 /);
    // A secret is of no use as a session, nor a session as a link.
    const asSession = await fresh.ask("/api/jobs", { headers: { Cookie: `tidewright=${fresh.secrets.share}` } });
    expect(asSession.status).toBe(401);
    const asLink = await fresh.ask("/api/shared", { headers: { Authorization: `Link ${fresh.secrets.owner}` } });
    expect(asLink.status).toBe(404);
    for (const scheme of ["Bearer", "Basic", "link:", ""]) {
      const other = await fresh.ask("/api/shared", { headers: { Authorization: `${scheme} ${fresh.secrets.share}` } });
      expect(other.status).toBe(404);
    }
  });

  it("who sent a draft is answered as the first time, and nobody else learns that it came", async () => {
    const fresh = await freshApp();
    const { store, secrets } = fresh;
    const [own, another] = ["1", "2"].map((end) => `00000000-0000-4000-8000-00000000000${end}`);
    const as = (draft: string | undefined) => ({
      headers: { Authorization: `Link ${secrets.intake}${draft === undefined ? "" : `.${draft}`}` },
    });
    const json = {
      name: "Ottoline Quillfeather",
      contact: "555 0199",
      notes: "",
      answers: { tank: { volume: { value: 300, unit: "L" } } },
    };
    const told = async (response: Response) => `${response.status} ${await response.text()}`;
    const send = async (draft?: string) => told(await fresh.ask("/api/intake", { method: "POST", json, ...as(draft) }));
    const open = async (draft?: string) => told(await fresh.ask("/api/intake", as(draft)));
    expect(await open(own)).toMatch(/^200 .*"answered":false/);
    const first = await send(own);
    expect(first).toMatch(/^201 /);
    expect(await send(own)).toBe(first);
    expect(await open(own)).toMatch(/^200 .*"answered":true/);
    expect(await open(own)).not.toMatch(/Quillfeather|0199/);
    expect((await store.jobs.search({ text: "Quillfeather" })).total).toBe(1);
    const unknown = await told(await fresh.ask("/api/intake", { headers: { Authorization: "Link none" } }));
    for (const draft of [undefined, another, "", `${own}x`]) {
      expect(await open(draft)).toBe(unknown);
      expect(await send(draft)).toBe(unknown);
    }
    // It opens no other door.
    expect((await fresh.ask("/api/shared", as(own))).status).toBe(404);
    expect((await fresh.ask("/api/jobs", as(own))).status).toBe(403);
    const everything = JSON.stringify([await store.links.list(null), await store.audit.list()]);
    expect(everything).not.toContain(own);
  });

  it("finds the logo alone of all files, and only while it is one", async () => {
    const fresh = await freshApp();
    const { store } = fresh;
    await twoCustomers(fresh);
    expect((await fresh.ask("/api/shared/logo", { as: "share" })).status).toBe(404);
    const { settings } = await store.settings.read();
    // A photo of a customer named as logo, by mistake or malice of somebody with an account.
    await store.settings.write(0, { ...settings, logoFileId: "other-file" }, by);
    expect((await fresh.ask("/api/shared/logo", { as: "share" })).status).toBe(404);
  });
});
