import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

/** What the trial asks of an embedded database: one table of numbered writes, and every number it still holds. */
export interface TrialDatabase {
  /** Commits one write; resolves only once the database calls it kept. */
  write(number: number, payload: string): Promise<void>;
  /** Every number found, in order, with the length of its payload. */
  readAll(): Promise<{ readonly number: number; readonly length: number }[]>;
  close(): Promise<void>;
}

interface PgliteModule {
  PGlite: {
    create(folder: string): Promise<{
      exec(sql: string): Promise<unknown>;
      query<Row>(sql: string, values?: unknown[]): Promise<{ rows: Row[] }>;
      close(): Promise<void>;
    }>;
  };
}

/** PGlite is not a dependency of the product: TRIAL_MODULES names a folder in which it was installed for the trial. */
function resolveForTrial(name: string): string {
  const folder = process.env["TRIAL_MODULES"];
  const from = folder === undefined ? import.meta.url : pathToFileURL(join(folder, "trial.js")).href;
  return createRequire(from).resolve(name);
}

/** PostgreSQL compiled to WebAssembly over Node's file system, with its defaults (no relaxed durability). */
async function openPglite(folder: string): Promise<TrialDatabase> {
  const module = (await import(pathToFileURL(resolveForTrial("@electric-sql/pglite")).href)) as {
    default?: PgliteModule;
  } & PgliteModule;
  const { PGlite } = module.default ?? module;
  const database = await PGlite.create(folder);
  await database.exec("CREATE TABLE IF NOT EXISTS writes (number INTEGER PRIMARY KEY, payload TEXT NOT NULL)");
  return {
    write: async (number, payload) => {
      await database.query("INSERT INTO writes VALUES ($1, $2)", [number, payload]);
    },
    readAll: async () =>
      (
        await database.query<{ number: number; length: number }>(
          "SELECT number, length(payload) AS length FROM writes ORDER BY number",
        )
      ).rows,
    close: () => database.close(),
  };
}

/** SQLite (libsql's build of it) with a write-ahead log that is flushed to the disk at every commit. */
async function openLibsql(folder: string): Promise<TrialDatabase> {
  const { default: Database } = await import("libsql");
  const database = new Database(join(folder, "trial.db"), { timeout: 5000 });
  for (const setting of ["journal_mode = WAL", "synchronous = FULL"]) database.exec(`PRAGMA ${setting}`);
  database.exec("CREATE TABLE IF NOT EXISTS writes (number INTEGER PRIMARY KEY, payload TEXT NOT NULL)");
  const insert = database.prepare("INSERT INTO writes VALUES (?, ?)");
  const all = database.prepare("SELECT number, length(payload) AS length FROM writes ORDER BY number");
  return {
    write: async (number, payload) => {
      insert.run(number, payload);
    },
    readAll: async () => all.all() as { number: number; length: number }[],
    close: async () => {
      database.close();
    },
  };
}

/** The databases on trial by name. */
export const engines: Readonly<Record<string, (folder: string) => Promise<TrialDatabase>>> = {
  pglite: openPglite,
  libsql: openLibsql,
};
