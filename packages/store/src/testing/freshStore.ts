import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import pg from "pg";
import { openStore, type StoreOptions } from "../openStore.ts";
import type { Store } from "../store.ts";

/** Every place made for a test, taken away by `removePlaces`. */
const removals: (() => Promise<void>)[] = [];
let count = 0;

/** A new folder; it is gone after the test. */
export function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "tidewright-store-"));
  removals.push(async () => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** An empty place for a store: a folder, or a schema of its own in the database that DATABASE_URL names. */
export async function freshPlace(): Promise<string> {
  const url = process.env["DATABASE_URL"];
  if (url === undefined) return join(freshFolder(), "data");
  const schema = `test_${process.pid}_${++count}_${Date.now()}`;
  await onServer(url, `CREATE SCHEMA ${schema}`);
  removals.push(() => onServer(url, `DROP SCHEMA ${schema} CASCADE`));
  return `${url}${url.includes("?") ? "&" : "?"}options=-csearch_path%3D${schema}`;
}

/** An open store in a place of its own, closed after the test. */
export async function freshStore(options: StoreOptions = {}): Promise<Store> {
  const store = await openStore(await freshPlace(), options);
  removals.push(() => store.close());
  return store;
}

/** Takes away what tests made, latest first; to be called after each. */
export async function removePlaces(): Promise<void> {
  while (removals.length > 0) await removals.pop()?.();
}

async function onServer(url: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query(statement);
  await client.end();
}

/** Who does things in tests, at the minute given. */
export const by = (author = "Mara", minute = 0) => ({
  author,
  at: `2026-03-01T09:${String(minute).padStart(2, "0")}:00.000Z`,
});
