import { randomUUID } from "node:crypto";
import { existsSync, mkdirSync } from "node:fs";
import { join, resolve } from "node:path";
import { backupInto } from "./backup/backupInto.ts";
import { lockFolder } from "./folder/lockFolder.ts";
import { accountsPart } from "./parts/accounts.ts";
import { auditPart } from "./parts/audit.ts";
import { cataloguePart } from "./parts/catalogue.ts";
import { type Limits, usualLimits } from "./parts/checks.ts";
import type { Context } from "./parts/context.ts";
import { customersPart } from "./parts/customers.ts";
import { designsPart } from "./parts/designs.ts";
import { eraseCustomer } from "./parts/eraseCustomer.ts";
import { filesPart } from "./parts/files.ts";
import { jobsPart } from "./parts/jobs.ts";
import { linksPart } from "./parts/links.ts";
import { sessionsPart } from "./parts/sessions.ts";
import { settingsPart } from "./parts/settings.ts";
import { waitsPart } from "./parts/waits.ts";
import { migrate } from "./schema/migrate.ts";
import { openPostgres } from "./sql/postgresDatabase.ts";
import type { SqlDatabase } from "./sql/sqlDatabase.ts";
import { openSqlite } from "./sql/sqliteDatabase.ts";
import type { Store, StoreChange } from "./store.ts";
import { StoreFailure } from "./storeFailure.ts";

/** How a store is opened: what one thing may hold, and how many pages of 4096 bytes an embedded store may grow to. */
export interface StoreOptions {
  readonly limits?: Partial<Limits>;
  readonly maxPages?: number;
}

/** Whether a place of keeping is a PostgreSQL server rather than a folder.
 *  target a folder or a URL   -> true for a URL of PostgreSQL
 *  Example: isDatabaseUrl("postgres://shop@localhost/tidewright")  ->  true
 *  Example: isDatabaseUrl("/var/lib/tidewright")  ->  false */
export function isDatabaseUrl(target: string): boolean {
  return /^postgres(ql)?:\/\//.test(target);
}

/** The file inside a data folder that holds everything. */
export const databaseFile = "tidewright.db";

/** The file inside a data folder that a restore fills, until it is whole and takes the store's name. */
export const restoringFile = "restoring.db";

/** A database with today's schema, and what lets go of it. */
export async function openDatabase(
  target: string,
  options: StoreOptions = {},
): Promise<{ readonly database: SqlDatabase; readonly close: () => Promise<void> }> {
  if (isDatabaseUrl(target)) {
    const database = openPostgres(target);
    try {
      await migrate(database, "The database");
    } catch (error) {
      await database.close();
      throw error;
    }
    return { database, close: () => database.close() };
  }
  const folder = resolve(target);
  try {
    // Customers' data: a folder made here is its owner's alone.
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  } catch (error) {
    throw new StoreFailure(
      "unreachable",
      `The data folder ${folder} cannot be made: check who may write there (${String(error)}).`,
      { cause: error },
    );
  }
  if (existsSync(join(folder, restoringFile)) && !existsSync(join(folder, databaseFile))) {
    // An empty store would be made here otherwise, and taken for the shop's.
    throw new StoreFailure(
      "damaged",
      `A restore into ${folder} is under way or was cut short: let it end, or run it again.`,
    );
  }
  const unlock = lockFolder(folder);
  let opened: SqlDatabase | undefined;
  try {
    const database = openSqlite(join(folder, databaseFile), options);
    opened = database;
    await migrate(database, `The data folder ${folder}`);
    return {
      database,
      close: async () => {
        await database.close();
        unlock();
      },
    };
  } catch (error) {
    await opened?.close();
    unlock();
    throw error;
  }
}

/** Opens what a shop keeps: an embedded database in a folder, made if it is not there, or PostgreSQL by its URL.
 *  target a folder or postgres://...   -> Store
 *  Throws: StoreFailure "inUse" (another program holds the folder), "newer", "damaged", "unreachable", "diskFull".
 *  Valid: a folder on a disk of this machine; PostgreSQL 12 or later.
 *  Source: own construction; decision record 0016. */
export async function openStore(target: string, options: StoreOptions = {}): Promise<Store> {
  const { database, close } = await openDatabase(target, options);
  const listeners = new Set<(change: StoreChange) => void>();
  const context: Context = {
    database,
    limits: { ...usualLimits, ...options.limits },
    newId: randomUUID,
    announce: (change) => database.broadcast(JSON.stringify(change)),
  };
  try {
    const tell = (change: StoreChange): void => {
      for (const listener of listeners) listener(change);
    };
    await database.listen(
      (text) => tell(JSON.parse(text) as StoreChange),
      () => tell({ kind: "missed" }),
    );
  } catch (error) {
    await close();
    throw error;
  }
  return {
    customers: customersPart(context),
    jobs: jobsPart(context),
    designs: designsPart(context),
    catalogue: cataloguePart(context),
    files: filesPart(context),
    settings: settingsPart(context),
    audit: auditPart(context),
    accounts: accountsPart(context),
    sessions: sessionsPart(context),
    links: linksPart(context),
    waits: waitsPart(context),
    eraseCustomer: (customerId, by) => eraseCustomer(context, customerId, by),
    backup: (path) => backupInto(database, path),
    watch: (listener) => {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
    close: async () => {
      listeners.clear();
      await close();
    },
  };
}
