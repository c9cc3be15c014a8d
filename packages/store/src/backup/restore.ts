import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { databaseFile, isDatabaseUrl, openDatabase, restoringFile } from "../openStore.ts";
import { schemaVersion, tables } from "../schema/migrations.ts";
import type { SqlDatabase } from "../sql/sqlDatabase.ts";
import { openSqlite } from "../sql/sqliteDatabase.ts";
import { StoreFailure } from "../storeFailure.ts";
import { flush } from "./backupInto.ts";
import { copyRows } from "./copyRows.ts";

/** Puts a backup where a store is opened from: an empty folder, or an empty PostgreSQL database; from there `openStore`.
 *  path the file of a backup   target a folder or postgres://...   -> nothing; the store is closed
 *  Throws: StoreFailure "notEmpty" (there is a store already), "damaged" (no whole backup), "newer", "unreachable",
 *  "diskFull".
 *  Valid: backups of this and of earlier programs; of either database into either.
 *  Source: own construction; decision record 0016. */
export async function restore(path: string, target: string): Promise<void> {
  const source = resolve(path);
  if (!existsSync(source)) throw new StoreFailure("unreachable", `There is no backup ${source}: check its name.`);
  if (isDatabaseUrl(target)) return restoreIntoServer(source, target);
  const folder = resolve(target);
  // The topmost folder that this makes, so that a restore that fails leaves none behind.
  const made = mkdirSync(folder, { recursive: true, mode: 0o700 });
  // What a restore that was cut short has left behind is nobody's.
  if (readdirSync(folder).some((name) => !name.startsWith(restoringFile))) {
    throw new StoreFailure("notEmpty", `The folder ${folder} is not empty: restore into a new one, then open that.`);
  }
  const unfinished = join(folder, restoringFile);
  try {
    // Worked on in a copy, so that the backup itself stays as it was made.
    copyFileSync(source, unfinished);
    await checkBackup(unfinished, source);
    flush(unfinished);
    renameSync(unfinished, join(folder, databaseFile));
    flush(folder);
  } catch (error) {
    for (const ending of ["", "-wal", "-shm"]) rmSync(unfinished + ending, { force: true });
    if (made !== undefined) rmSync(made, { recursive: true, force: true });
    if ((error as { code?: unknown }).code === "ENOSPC") {
      throw new StoreFailure("diskFull", `The disk of ${folder} has no room for the backup: free some space there.`, {
        cause: error,
      });
    }
    throw error;
  }
  // Brings an older backup to today's schema, and shows that it opens.
  await (await openDatabase(folder)).close();
}

async function restoreIntoServer(source: string, url: string): Promise<void> {
  const { database, close } = await openDatabase(url);
  try {
    for (const { name } of tables) {
      if ((await database.read.rows(`SELECT 1 FROM ${name} LIMIT 1`)).length > 0) {
        throw new StoreFailure("notEmpty", "The database holds a store already: restore into an empty one.");
      }
    }
    const folder = mkdtempSync(join(tmpdir(), "tidewright-restore-"));
    try {
      await restore(source, join(folder, "store"));
      const copy = await openDatabase(join(folder, "store"));
      try {
        await copy.database.snapshot((from) => database.write((to) => copyRows(from, to)));
      } finally {
        await copy.close();
      }
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  } finally {
    await close();
  }
}

async function checkBackup(path: string, source: string): Promise<void> {
  // What the database says of it helps nobody who restores.
  const damaged = (cause: unknown): StoreFailure =>
    new StoreFailure("damaged", `${source} is no backup of a store, or it is damaged: try an earlier one.`, { cause });
  const notWhole = (why: string): StoreFailure =>
    new StoreFailure("damaged", `${source} is no whole backup of a store (${why}): try an earlier one.`);
  let database: SqlDatabase | undefined;
  try {
    database = openSqlite(path, { singleFile: true });
    // Before anything is asked of it: a file that somebody made may answer with a program of theirs (a view, a trigger, a
    // virtual table, whose modules have had faults), and what a store keeps has none of these.
    const [foreign] = await database.read.rows<{ name: string }>(
      "SELECT name FROM sqlite_schema WHERE type NOT IN ('table', 'index') OR sql LIKE 'CREATE VIRTUAL %'",
    );
    if (foreign) throw notWhole(`"${foreign.name}" is nothing that a store keeps`);
    const [integrity] = await database.read.rows<{ integrity_check: string }>("PRAGMA integrity_check");
    if (integrity?.integrity_check !== "ok") throw damaged(integrity?.integrity_check);
    const [found] = await database.read.rows<{ version: number }>("SELECT version FROM tidewright_store");
    if (!found) throw notWhole("it names no version");
    if (found.version > schemaVersion) {
      throw new StoreFailure("newer", `${source} was made by a newer program: update this one before restoring it.`);
    }
  } catch (error) {
    if (error instanceof StoreFailure && error.code !== "damaged") throw error;
    throw error instanceof StoreFailure && error.message.startsWith(source) ? error : damaged(error);
  } finally {
    await database?.close();
  }
}
