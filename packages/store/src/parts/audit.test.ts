import { afterEach, describe, expect, it } from "vitest";
import type { StoreChange } from "../store.ts";
import { by, freshStore, removePlaces } from "../testing/freshStore.ts";

afterEach(removePlaces);

const expiry = "2026-03-01T12:00:00.000Z";

describe("a line of the audit trail", () => {
  it("says which account, and what became of it, but no secret", async () => {
    const store = await freshStore();
    const news: StoreChange[] = [];
    store.watch((change) => news.push(change));
    await store.accounts.create({ id: "m", name: "Mara", role: "owner", passwordHash: "hash-1" }, by("Mara", 0));
    await store.accounts.create({ id: "j", name: "Jo", role: "staff", passwordHash: "hash-2" }, by("Mara", 1));
    await store.accounts.update("j", 1, { role: "readOnly" }, by("Mara", 2));
    await store.accounts.update("j", 2, { passwordHash: "hash-3" }, by("Mara", 3));
    await store.accounts.update("j", 3, { disabled: true }, by("Mara", 4));
    await store.accounts.update("j", 4, { disabled: false, name: "Joan" }, by("Mara", 5));
    const lines = [...(await store.audit.list({ subject: { kind: "account", id: "j" } }))].reverse();
    expect(lines.map(({ about }) => about)).toEqual([
      { name: "Jo", role: "staff" },
      { name: "Jo", role: "readOnly" },
      { name: "Jo", password: "new" },
      { name: "Jo", access: "shut" },
      { name: "Joan", was: "Jo", access: "open" },
    ]);
    expect(JSON.stringify(lines)).not.toContain("hash");
    // Another server's connection brings the news a moment later.
    await expect.poll(() => news.filter(({ kind }) => kind === "account")).toHaveLength(6);
  });

  it("says which row, design, link, file and job, and what of them is gone by now", async () => {
    const store = await freshStore();
    await store.catalogue.put("pump", "house-1", 0, { maker: "Ferrow", model: "C40" }, by("Mara", 1));
    await store.catalogue.put("pump", "house-1", 1, { maker: "Ferrow", model: "C41" }, by("Mara", 2));
    await store.catalogue.remove("pump", "house-1", 2, by("Mara", 3));
    await store.jobs.create({ id: "job", name: "Reef by the window" }, by("Mara", 4));
    await store.designs.create({ id: "d", jobId: "job", name: "First", document: {} }, by("Mara", 5));
    await store.designs.nameVersion("d", 1, "Signed", by("Mara", 6));
    await store.designs.duplicate("d", { id: "v", name: "Quieter" }, by("Mara", 7));
    const link = await store.links.create({ kind: "view", designId: "d", expiresAt: expiry }, by("Mara", 8));
    const intake = await store.links.create({ kind: "intake", expiresAt: expiry }, by("Mara", 9));
    if (!link.ok || !intake.ok) throw new Error("no link was made");
    await store.audit.add(by("Mara", 10), "open", { kind: "link", id: link.value.link.id });
    const photo = { kind: "photo", name: "hall.png", contentType: "image/png", bytes: Buffer.from("x") } as const;
    await store.files.put({ ...photo, jobId: "job" }, by("Mara", 11));
    await store.jobs.update("job", 1, { stage: "built" }, by("Mara", 12));
    await store.jobs.remove("job", 2, by("Mara", 13));
    const ofJob = { job: "Reef by the window", jobId: "job" };
    const lines = [...(await store.audit.list())].reverse();
    expect(lines.map(({ action, subjectKind, about }) => [action, subjectKind, about])).toEqual([
      ["put", "catalogue", { kind: "pump", name: "Ferrow C40", change: "new" }],
      ["put", "catalogue", { kind: "pump", name: "Ferrow C41", change: "changed" }],
      ["remove", "catalogue", { kind: "pump", name: "Ferrow C41" }],
      ["create", "job", { name: "Reef by the window" }],
      ["create", "design", { name: "First", ...ofJob }],
      ["nameVersion", "design", { name: "First", version: "1", ...ofJob }],
      ["duplicate", "design", { name: "Quieter", was: "First", version: "1", ...ofJob }],
      ["create", "link", { kind: "view", design: "First", ...ofJob }],
      ["create", "link", { kind: "intake" }],
      ["open", "link", { kind: "view", design: "First", ...ofJob }],
      ["put", "file", { name: "hall.png", kind: "photo", ...ofJob }],
      ["update", "job", { name: "Reef by the window", fields: "stage" }],
      ["remove", "job", { name: "Reef by the window" }],
    ]);
    expect(JSON.stringify(lines)).not.toContain(link.value.token);
  });

  it("names nobody any more once the customer is erased, whatever was removed before and whoever's it was then", async () => {
    const store = await freshStore();
    await store.customers.create({ id: "c", name: "Ottoline Quillfeather" }, by());
    await store.customers.create({ id: "c2", name: "Somebody else" }, by());
    // One job that stays, one that is removed, one that was somebody else's when it was removed.
    for (const [id, customerId] of [
      ["stays", "c"],
      ["goes", "c"],
      ["moved", "c"],
      ["late", null],
    ] as const) {
      await store.jobs.create({ id, name: `Quillfeather ${id}`, customerId }, by());
      await store.designs.create({ id, jobId: id, name: "Quillfeather's idea", document: {} }, by());
      const link = await store.links.create({ kind: "view", designId: id, expiresAt: expiry }, by());
      if (link.ok) await store.links.revoke(link.value.link.id, by());
      const chart = { kind: "chart", name: "quillfeather.png", contentType: "image/png" } as const;
      await store.files.put({ ...chart, jobId: id, bytes: Buffer.from("x") }, by());
    }
    await store.links.removeExpired("2026-04-01T00:00:00.000Z");
    await store.jobs.update("late", 1, { customerId: "c" }, by());
    await store.jobs.remove("late", 2, by());
    await store.jobs.remove("goes", 1, by());
    await store.jobs.update("moved", 1, { customerId: "c2", name: "Moved" }, by());
    await store.jobs.remove("moved", 2, by());
    await store.jobs.create({ id: "other", name: "Untouched", customerId: "c2" }, by());
    expect(JSON.stringify(await store.audit.list())).toMatch(/Quillfeather/);
    expect(await store.eraseCustomer("c", by())).toMatchObject({ ok: true });
    const after = JSON.stringify(await store.audit.list());
    expect(after).not.toMatch(/quillfeather/i);
    expect(after).toContain("Untouched");
  });
});
