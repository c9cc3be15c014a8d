import { chmodSync, closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync, statSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { migrate } from "../schema/migrate.ts";
import type { SqlDatabase } from "../sql/sqlDatabase.ts";
import { openSqlite } from "../sql/sqliteDatabase.ts";
import { StoreFailure } from "../storeFailure.ts";
import { copyRows } from "./copyRows.ts";

/** Writes everything a database holds, as of one moment, into one new file, which is there whole or not at all. */
export async function backupInto(database: SqlDatabase, path: string): Promise<{ readonly bytes: number }> {
  const target = resolve(path);
  if (existsSync(target)) {
    throw new StoreFailure(
      "notEmpty",
      `${target} is there already: name a file that is not, so that no backup is lost.`,
    );
  }
  if (!existsSync(dirname(target))) {
    throw new StoreFailure("unreachable", `There is no folder ${dirname(target)}: make it, or name another file.`);
  }
  const unfinished = `${target}.unfinished`;
  removeDatabase(unfinished);
  try {
    if (!(await database.copyInto(unfinished))) await copyIntoNew(database, unfinished);
    // As private as the folder it was taken from.
    chmodSync(unfinished, 0o600);
    flush(unfinished);
    renameSync(unfinished, target);
    flush(dirname(target));
  } catch (error) {
    removeDatabase(unfinished);
    if (error instanceof StoreFailure && error.code === "diskFull") {
      throw new StoreFailure(
        "diskFull",
        `The disk of ${dirname(target)} has no room for the backup ${target}: none was made, and the store is unharmed. Free some space there, or name another disk.`,
        { cause: error },
      );
    }
    throw error;
  }
  return { bytes: statSync(target).size };
}

async function copyIntoNew(database: SqlDatabase, path: string): Promise<void> {
  const copy = openSqlite(path, { singleFile: true });
  try {
    await migrate(copy, path);
    await database.snapshot((from) => copy.write((to) => copyRows(from, to)));
  } finally {
    await copy.close();
  }
}

/** Hands a file or folder to the disk: a backup that is told of shall outlive a power cut. */
export function flush(path: string): void {
  const isFolder = statSync(path).isDirectory();
  // Windows keeps names by itself and opens no folder for flushing.
  if (isFolder && process.platform === "win32") return;
  const descriptor = openSync(path, isFolder ? "r" : "r+");
  try {
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}

function removeDatabase(path: string): void {
  for (const ending of ["", "-wal", "-shm", "-journal"]) rmSync(path + ending, { force: true });
}
