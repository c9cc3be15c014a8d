import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { openStore } from "../openStore.ts";
import { openSqlite } from "../sql/sqliteDatabase.ts";
import type { Store } from "../store.ts";
import { by, freshFolder, freshPlace, freshStore, removePlaces } from "../testing/freshStore.ts";
import { restore } from "./restore.ts";

afterEach(removePlaces);

async function fill(store: Store): Promise<void> {
  await store.customers.create({ id: "c", name: "Ines" }, by());
  await store.jobs.create({ id: "j", name: "Reef", customerId: "c" }, by());
  await store.designs.create({ id: "d", jobId: "j", name: "D", document: { n: 1 } }, by());
  for (let n = 2; n <= 250; n++) await store.designs.append("d", n - 1, { n }, by(), { editId: `e${n}` });
  // A variant whose id sorts before what it varies.
  await store.designs.duplicate("d", { id: "a", name: "A" }, by());
  await store.designs.nameVersion("d", 100, "Signed", by());
  await store.files.put(
    { id: "f", jobId: "j", kind: "photo", name: "f", contentType: "image/png", bytes: Uint8Array.of(0, 255, 3) },
    by(),
  );
  await store.settings.write(0, { ...(await store.settings.read()).settings, name: "Pell & Wicken" }, by());
  await store.catalogue.put("pump", "p", 0, { head: 4 }, by());
}

const everything = async (store: Store): Promise<unknown> => ({
  jobs: await store.jobs.search(),
  customers: await store.customers.search(),
  designs: await store.designs.ofJob("j"),
  history: await store.designs.history("d"),
  documents: await Promise.all([1, 100, 250].map((number) => store.designs.revision("d", number))),
  file: await store.files.get("f").then((file) => file && { ...file, bytes: [...file.bytes] }),
  settings: await store.settings.read(),
  rows: await store.catalogue.list("pump"),
  audit: await store.audit.list(),
});

describe("a backup", () => {
  it("brings everything back, into a folder and into the kind of store it came from", async () => {
    const store = await freshStore();
    await fill(store);
    const folder = freshFolder();
    const path = join(folder, "shop's backup.db");
    const { bytes } = await store.backup(path);
    expect(bytes).toBeGreaterThan(10_000);
    expect(readdirSync(folder)).toEqual(["shop's backup.db"]);
    // Nobody else's to read, on systems that know of permissions.
    if (process.platform !== "win32") expect(statSync(path).mode & 0o077).toBe(0);
    const before = await everything(store);
    for (const place of [join(folder, "again"), await freshPlace()]) {
      await restore(path, place);
      const again = await openStore(place);
      expect(await everything(again)).toEqual(before);
      await again.designs.append("d", 250, { n: 251 }, by());
      await again.close();
    }
  });

  it("is of one moment while edits go on", async () => {
    const store = await freshStore();
    await fill(store);
    const path = join(freshFolder(), "b.db");
    let running = true;
    const backup = store.backup(path).finally(() => {
      running = false;
    });
    let n = 250;
    while (running) {
      await store.designs.append("d", n, { n: n + 1 }, by());
      n++;
      await new Promise((resolve) => setImmediate(resolve));
    }
    await backup;
    expect(n).toBeGreaterThan(250);
    const target = join(freshFolder(), "again");
    await restore(path, target);
    const again = await openStore(target);
    const head = await again.designs.find("d");
    expect(await again.designs.history("d")).toHaveLength(head?.revision ?? 0);
    expect((await again.designs.latest("d"))?.document).toEqual({ n: head?.revision });
    await again.close();
  });

  it("never takes the place of a file, nor a restored store of another", async () => {
    const store = await freshStore();
    const folder = freshFolder();
    const path = join(folder, "b.db");
    await store.backup(path);
    await expect(store.backup(path)).rejects.toMatchObject({ code: "notEmpty" });
    await expect(store.backup(join(folder, "nowhere", "b.db"))).rejects.toMatchObject({ code: "unreachable" });
    await expect(restore(path, folder)).rejects.toMatchObject({ code: "notEmpty" });
    await expect(restore(join(folder, "none.db"), join(folder, "x"))).rejects.toMatchObject({ code: "unreachable" });
  });

  it("can be restored again where a restore was cut short, and no empty store is opened there meanwhile", async () => {
    const store = await freshStore();
    await fill(store);
    const folder = freshFolder();
    const path = join(folder, "b.db");
    await store.backup(path);
    const target = join(folder, "target");
    mkdirSync(target);
    writeFileSync(join(target, "restoring.db"), readFileSync(path).subarray(0, 5000));
    await expect(openStore(target)).rejects.toMatchObject({ code: "damaged" });
    await restore(path, target);
    const again = await openStore(target);
    expect((await again.designs.latest("d"))?.number).toBe(250);
    await again.close();
    expect(readdirSync(target)).not.toContain("restoring.db");
  });

  it("that is cut short or no backup at all is refused, and leaves the folder empty", async () => {
    const store = await freshStore();
    await fill(store);
    const folder = freshFolder();
    await store.backup(join(folder, "b.db"));
    const whole = readFileSync(join(folder, "b.db"));
    writeFileSync(join(folder, "cut.db"), whole.subarray(0, Math.floor(whole.length / 2)));
    writeFileSync(join(folder, "text.db"), "this is a letter");
    const target = join(folder, "target");
    mkdirSync(target);
    // A folder that is made for it goes again, with those above it.
    const fresh = join(folder, "made", "for-it");
    for (const name of ["cut.db", "text.db"]) {
      await expect(restore(join(folder, name), fresh)).rejects.toMatchObject({
        code: "damaged",
        message: `${join(folder, name)} is no backup of a store, or it is damaged: try an earlier one.`,
      });
      expect(existsSync(join(folder, "made"))).toBe(false);
      await expect(restore(join(folder, name), target)).rejects.toMatchObject({ code: "damaged" });
      expect(readdirSync(target)).toEqual([]);
    }
  });

  // What a database file can bring along besides rows: sqlite.org/security.html, "untrusted SQLite database files".
  it.each([
    ["a view", ["DROP TABLE tidewright_store", "CREATE VIEW tidewright_store AS SELECT 1 AS version"]],
    ["a trigger", ["CREATE TRIGGER sly AFTER INSERT ON jobs BEGIN DELETE FROM customers; END"]],
    ["a virtual table", ["CREATE VIRTUAL TABLE sly USING fts5(text)"]],
  ])("that somebody has put %s into is refused before anything is asked of it", async (_what, sql) => {
    const store = await freshStore();
    await fill(store);
    const folder = freshFolder();
    const path = join(folder, "b.db");
    await store.backup(path);
    const tampered = openSqlite(path, { singleFile: true });
    await tampered.write(async (to) => {
      for (const statement of sql) await to.change(statement);
    });
    await tampered.close();
    const target = freshFolder();
    await expect(restore(path, target)).rejects.toMatchObject({
      code: "damaged",
      message: expect.stringMatching(/nothing that a store keeps/),
    });
    expect(readdirSync(target)).toEqual([]);
  });
});
