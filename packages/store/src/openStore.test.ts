import { execFileSync } from "node:child_process";
import { readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import Database from "libsql";
import { afterEach, describe, expect, it } from "vitest";
import { killEditors } from "../trial/killEditors.ts";
import { openStore } from "./openStore.ts";
import { tokenHash } from "./parts/tokens.ts";
import { migrationStep } from "./schema/migrations.ts";
import { openSqlite } from "./sql/sqliteDatabase.ts";
import { StoreFailure } from "./storeFailure.ts";
import { by, freshFolder, freshPlace, removePlaces } from "./testing/freshStore.ts";

afterEach(removePlaces);

describe("a data folder", () => {
  it("is refused to a second opener in the same program, with the folder and its holder named", async () => {
    const folder = join(freshFolder(), "data");
    const store = await openStore(folder);
    const refusal = await openStore(folder).catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(StoreFailure);
    expect(refusal).toMatchObject({ code: "inUse" });
    expect(String(refusal)).toContain(folder);
    expect(String(refusal)).toContain(`process ${process.pid} on `);
    // The first one is none the worse for it.
    expect(await store.jobs.create({ name: "J" }, by())).toMatchObject({ ok: true });
    await store.close();
    await (await openStore(folder)).close();
  });

  it("is refused to a second program while the first one runs, and free at once when it is killed", async () => {
    const folder = join(freshFolder(), "data");
    const store = await openStore(folder);
    expect(openElsewhere(folder)).toContain(`process ${process.pid} on `);
    await store.close();
    // The other program kills itself with the store open.
    expect(openElsewhere(folder)).toBe("opened");
    await (await openStore(folder)).close();
  });

  it("of a newer program is refused and left as it is", async () => {
    const folder = join(freshFolder(), "data");
    await (await openStore(folder)).close();
    const path = join(folder, "tidewright.db");
    const raw = new Database(path);
    raw.exec("UPDATE tidewright_store SET version = 999");
    raw.close();
    await expect(openStore(folder)).rejects.toMatchObject({ code: "newer", message: expect.stringContaining(folder) });
    const after = new Database(path);
    expect(after.prepare("SELECT version FROM tidewright_store").all()).toEqual([{ version: 999 }]);
    after.close();
  });

  it("of an older program is brought to today's schema, with all that was in it", async () => {
    const folder = freshFolder();
    const older = openSqlite(join(folder, "tidewright.db"));
    await older.write(async (sql) => {
      await sql.change("CREATE TABLE tidewright_store (version INTEGER NOT NULL)");
      await sql.change("INSERT INTO tidewright_store (version) VALUES (1)");
      for (const statement of migrationStep(1, "sqlite")) await sql.change(statement);
      await sql.change("INSERT INTO jobs VALUES ('j', NULL, 'Old', 'built', '', 'old', 3, ?, ?)", [by().at, by().at]);
    });
    await older.close();
    const store = await openStore(folder);
    expect(await store.jobs.find("j")).toMatchObject({ name: "Old", stage: "built", version: 3 });
    expect(await store.links.list("j")).toEqual([]);
    await store.close();
  });

  it("whose links know of no drafts yet takes them in, and the links open as before", async () => {
    const folder = freshFolder();
    const older = openSqlite(join(folder, "tidewright.db"));
    const token = "A".repeat(43);
    await older.write(async (sql) => {
      await sql.change("CREATE TABLE tidewright_store (version INTEGER NOT NULL)");
      await sql.change("INSERT INTO tidewright_store (version) VALUES (3)");
      for (const step of [1, 2, 3]) for (const each of migrationStep(step, "sqlite")) await sql.change(each);
      await sql.change("INSERT INTO links VALUES ('l', ?, 'intake', NULL, NULL, NULL, ?, 'Mara', ?, NULL)", [
        tokenHash(token),
        by().at,
        by("", 59).at,
      ]);
    });
    await older.close();
    const store = await openStore(folder);
    expect(await store.links.find(token, by().at)).toMatchObject({ id: "l", kind: "intake", revokedAt: null });
    expect(await store.links.giveTo("l", "a")).toBe("given");
    await store.links.revoke("l", by());
    expect(await store.links.findAnswered(token, "a", by().at)).toMatchObject({ id: "l" });
    await store.close();
  });

  it("whose migration fails half-way stays at the schema it had", async () => {
    const folder = freshFolder();
    const path = join(folder, "tidewright.db");
    const older = openSqlite(path);
    await older.write(async (sql) => {
      await sql.change("CREATE TABLE tidewright_store (version INTEGER NOT NULL)");
      await sql.change("INSERT INTO tidewright_store (version) VALUES (1)");
      for (const statement of migrationStep(1, "sqlite")) await sql.change(statement);
      // In the way of the second step, after its first statements.
      await sql.change("CREATE TABLE links (id TEXT)");
    });
    await older.close();
    await expect(openStore(folder)).rejects.toThrow("links");
    const raw = new Database(path);
    expect(raw.prepare("SELECT version FROM tidewright_store").all()).toEqual([{ version: 1 }]);
    expect(raw.prepare("SELECT name FROM sqlite_master WHERE name = 'accounts'").all()).toEqual([]);
    raw.close();
  });

  it("that holds something else under the store's name is refused and left as it is", async () => {
    const folder = freshFolder();
    writeFileSync(join(folder, "tidewright.db"), "x".repeat(5000));
    await expect(openStore(folder)).rejects.toMatchObject({ code: "damaged" });
    expect(readFileSync(join(folder, "tidewright.db"), "utf8")).toBe("x".repeat(5000));
  });

  it("cannot be made below a file", async () => {
    const folder = freshFolder();
    writeFileSync(join(folder, "file"), "");
    await expect(openStore(join(folder, "file", "data"))).rejects.toMatchObject({ code: "unreachable" });
  });

  it("that may not grow tells so, keeps all that was acknowledged and works again with more room", async () => {
    const folder = join(freshFolder(), "data");
    const store = await openStore(folder, { maxPages: 200 });
    await store.jobs.create({ id: "j", name: "J" }, by());
    await store.designs.create({ id: "d", jobId: "j", name: "D", document: {} }, by());
    let revision = 1;
    let failure: unknown;
    const document = () => ({ text: "x".repeat(20_000), revision: revision + 1 });
    while (failure === undefined && revision < 500) {
      const outcome = await store.designs.append("d", revision, document(), by()).catch((error: unknown) => {
        failure = error;
      });
      if (outcome?.ok) revision = outcome.value.number;
    }
    expect(failure).toMatchObject({ code: "diskFull", message: expect.stringContaining("nothing of it was kept") });
    expect(revision).toBeGreaterThan(5);
    expect((await store.designs.find("d"))?.revision).toBe(revision);
    await store.close();
    const roomier = await openStore(folder);
    expect(await roomier.designs.history("d")).toHaveLength(revision);
    expect((await roomier.designs.latest("d"))?.document).toMatchObject(revision > 1 ? { revision } : {});
    expect(await roomier.designs.append("d", revision, document(), by())).toMatchObject({ ok: true });
    await roomier.close();
    // All of it is in the one file now; the log beside it is empty or gone.
    expect(statSync(join(folder, "tidewright.db-wal"), { throwIfNoEntry: false })?.size ?? 0).toBe(0);
  });
});

describe("a database that several servers share", () => {
  it.runIf(process.env["DATABASE_URL"])("is made once, though they all start at the same moment", async () => {
    const place = await freshPlace();
    const stores = await Promise.all(Array.from({ length: 4 }, () => openStore(place)));
    await stores[0]?.jobs.create({ id: "j", name: "J" }, by());
    for (const store of stores) {
      expect(await store.jobs.find("j")).toMatchObject({ name: "J" });
      await store.close();
    }
  });

  it("that does not answer is told of, with what to check", async () => {
    // Port 1 of this machine: nobody listens there.
    await expect(openStore("postgres://nobody@127.0.0.1:1/none")).rejects.toMatchObject({
      code: "unreachable",
      message: expect.stringContaining("DATABASE_URL"),
    });
  });
});

describe("a store whose program is killed in the midst of edits", () => {
  it("holds every revision it had acknowledged, with an unbroken history, five times in a row", async () => {
    const figures = await killEditors(await freshPlace(), 5, 20260301);
    expect(figures).toMatchObject({ lost: [], historyGaps: [], failures: [] });
    expect(figures.acknowledged).toBeGreaterThan(5);
  });
});

/** Opens the folder in a program that kills itself as soon as it has it; answers "opened" or the refusal. */
function openElsewhere(folder: string): string {
  const index = fileURLToPath(new URL("./index.ts", import.meta.url));
  const program = `
    import { writeSync } from "node:fs";
    import { openStore } from ${JSON.stringify(index)};
    try {
      await openStore(${JSON.stringify(folder)});
      writeSync(1, "opened");
    } catch (error) { writeSync(1, error.message); }
    process.kill(process.pid, "SIGKILL");`;
  try {
    execFileSync(process.execPath, ["--import", "tsx", "--conditions=source", "--input-type=module", "-e", program], {
      env: { ...process.env, NODE_OPTIONS: "" },
      stdio: ["ignore", "pipe", "inherit"],
    });
    return "";
  } catch (error) {
    return String((error as { stdout: Buffer }).stdout);
  }
}
