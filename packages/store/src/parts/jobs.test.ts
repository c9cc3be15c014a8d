import { afterEach, describe, expect, it } from "vitest";
import { by, freshStore, removePlaces } from "../testing/freshStore.ts";

afterEach(removePlaces);

describe("jobs and customers", () => {
  it("are kept, changed by the version that was seen, and refused by one that is gone", async () => {
    const store = await freshStore();
    const customer = await store.customers.create({ id: "c1", name: "Ines Müller", contact: "ines@example.org" }, by());
    expect(customer).toMatchObject({ ok: true, value: { version: 1, notes: "" } });
    await store.jobs.create({ id: "j1", name: "Waiting room", customerId: "c1" }, by());
    const changed = await store.jobs.update("j1", 1, { stage: "proposed" }, by("Jo", 1));
    expect(changed).toMatchObject({
      ok: true,
      value: { version: 2, stage: "proposed", name: "Waiting room", customerName: "Ines Müller" },
    });
    expect(await store.jobs.update("j1", 1, { name: "Late" }, by("Mara", 2))).toMatchObject({
      ok: false,
      reason: "conflict",
      current: { version: 2, stage: "proposed", name: "Waiting room" },
    });
    expect(await store.customers.update("c1", 1, { notes: "two dogs" }, by())).toMatchObject({
      ok: true,
      value: { version: 2, name: "Ines Müller", notes: "two dogs" },
    });
    expect(await store.customers.create({ id: "c1", name: "Other" }, by())).toMatchObject({
      ok: false,
      reason: "conflict",
    });
    expect((await store.audit.list({ subject: { kind: "job", id: "j1" } })).map(({ action }) => action)).toEqual([
      "update",
      "create",
    ]);
  });

  it("are found by every word, without accents or capitals, in the name, the notes or the customer", async () => {
    const store = await freshStore();
    await store.customers.create({ id: "c1", name: "Ines Müller" }, by());
    await store.jobs.create({ id: "a", name: "Waiting-room reef", customerId: "c1" }, by("Jo", 1));
    await store.jobs.create({ id: "b", name: "School corridor", notes: "100% soft corals" }, by("Jo", 2));
    const found = async (text: string) => (await store.jobs.search({ text })).items.map(({ id }) => id);
    expect(await found("MULLER reef")).toEqual(["a"]);
    expect(await found("müller")).toEqual(["a"]);
    expect(await found("corals school")).toEqual(["b"]);
    expect(await found("100%")).toEqual(["b"]);
    expect(await found("1_0")).toEqual([]);
    expect(await found("")).toEqual(["b", "a"]);
    expect((await store.customers.search({ text: "ines" })).total).toBe(1);
  });

  it("are listed and searched among a thousand", async () => {
    const store = await freshStore();
    for (let i = 0; i < 1000; i++) await store.jobs.create({ name: `Reef ${i} corridor ${i % 7}` }, by());
    const page = await store.jobs.search({ text: "corridor 99" });
    const all = await store.jobs.search({ limit: 1000 });
    expect(page.total).toBe(19);
    expect(all.items).toHaveLength(1000);
  });

  it("name every problem at once", async () => {
    const store = await freshStore();
    const outcome = await store.jobs.create(
      { name: "  ", stage: "lost" as never, customerId: "nobody", notes: "a\0b" },
      by(),
    );
    const paths = !outcome.ok && outcome.reason === "invalid" ? outcome.problems.map(({ path }) => path) : [];
    expect(paths.sort()).toEqual(["/customerId", "/name", "/notes", "/stage"]);
    expect((await store.jobs.search()).total).toBe(0);
  });

  it("go with their designs and files when they are removed, and variants elsewhere stay", async () => {
    const store = await freshStore();
    await store.jobs.create({ id: "gone", name: "Gone" }, by());
    await store.jobs.create({ id: "stays", name: "Stays" }, by());
    await store.designs.create({ id: "d", jobId: "gone", name: "D", document: { a: 1 } }, by());
    await store.designs.append("d", 1, { a: 2 }, by());
    await store.designs.duplicate("d", { id: "v", name: "V", jobId: "stays" }, by());
    expect(await store.jobs.remove("gone", 7, by())).toMatchObject({ ok: false, reason: "conflict" });
    expect(await store.jobs.remove("gone", 1, by())).toMatchObject({ ok: true });
    expect(await store.designs.latest("d")).toBeUndefined();
    expect(await store.designs.find("v")).toMatchObject({ variantOf: null });
    expect((await store.designs.latest("v"))?.document).toEqual({ a: 2 });
  });

  it("answer odd pages, ids and versions with nothing, not with an error", async () => {
    const store = await freshStore();
    await store.jobs.create({ id: "j", name: "J" }, by());
    expect(await store.jobs.search({ limit: -1, offset: Number.NaN })).toEqual({ items: [], total: 1 });
    expect((await store.jobs.search({ limit: 1e12 })).items).toHaveLength(1);
    expect(await store.jobs.find("j\0")).toBeUndefined();
    expect(await store.designs.revision("j", 1e12)).toBeUndefined();
    expect(await store.designs.revision("j", 1.5)).toBeUndefined();
    expect(await store.jobs.update("j", 1e12, { name: "K" }, by())).toMatchObject({ ok: false, reason: "conflict" });
  });

  it("tell which customers nothing was done for since an instant", async () => {
    const store = await freshStore();
    for (const id of ["busy", "quiet", "new"]) {
      await store.customers.create({ id, name: id }, by("Jo", id === "new" ? 30 : 0));
      await store.jobs.create({ id, name: id, customerId: id }, by("Jo", 0));
    }
    await store.designs.create({ id: "d", jobId: "busy", name: "D", document: {} }, by("Jo", 20));
    expect((await store.customers.unusedSince(by("Jo", 10).at)).map(({ id }) => id)).toEqual(["quiet"]);
    expect(await store.audit.removeBefore(by("Jo", 10).at)).toBe(5);
    expect(await store.audit.list()).toHaveLength(2);
  });
});
