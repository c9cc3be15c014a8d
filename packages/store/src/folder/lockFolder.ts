import { readFileSync, writeFileSync } from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";
import Database from "libsql";
import { StoreFailure } from "../storeFailure.ts";

/** Holds a data folder for this program until the answer is called, or the program ends in whatever way.
 *  The lock is the operating system's, taken through an empty database of its own: it needs no check of process numbers,
 *  which mean nothing across containers, and none is left behind by a kill. A second holder, in this process or another,
 *  is told who holds the folder. */
export function lockFolder(folder: string): () => void {
  const holderPath = join(folder, "holder.json");
  let lock: Database.Database | undefined;
  try {
    lock = new Database(join(folder, "lock"), { timeout: 0 });
    lock.exec("BEGIN EXCLUSIVE");
  } catch (error) {
    lock?.close();
    const code = String((error as { code?: unknown }).code ?? "");
    if (!code.startsWith("SQLITE_BUSY")) {
      throw new StoreFailure(
        "unreachable",
        `${folder} cannot be locked: check that it exists and who may write there (${String(error)}).`,
        { cause: error },
      );
    }
    throw new StoreFailure(
      "inUse",
      `The data folder ${folder} is in use by ${holder(holderPath)}. One program may hold it at a time: stop that one, give this one another folder, or share a PostgreSQL database by DATABASE_URL.`,
    );
  }
  const held = lock;
  try {
    const since = new Date().toISOString();
    writeFileSync(holderPath, JSON.stringify({ process: process.pid, host: hostname(), since }));
  } catch {
    // Only the words of a refusal depend on it; a full disk shall still be opened for reading.
  }
  return () => {
    if (!held.open) return;
    held.exec("ROLLBACK");
    held.close();
  };
}

function holder(path: string): string {
  try {
    const { process: id, host, since } = JSON.parse(readFileSync(path, "utf8")) as Record<string, unknown>;
    return `process ${id} on ${host}, since ${since}`;
  } catch {
    return "another program";
  }
}
