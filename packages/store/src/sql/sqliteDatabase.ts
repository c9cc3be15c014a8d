import Database from "libsql";
import AsyncDatabase from "libsql/promise";
import { StoreFailure } from "../storeFailure.ts";
import type { Sql, SqlDatabase, SqlValue } from "./sqlDatabase.ts";

/** How an embedded database is opened; `maxPages` bounds its size in pages of 4096 bytes, `singleFile` keeps no log
 *  beside the file (slower, for copies). */
export interface SqliteOptions {
  readonly maxPages?: number;
  readonly singleFile?: boolean;
}

/** Opens an embedded database in a file: write-ahead log, flushed to the disk at every commit. */
export function openSqlite(path: string, options: SqliteOptions = {}): SqlDatabase {
  const connect = (): Database.Database => {
    const connection = new Database(path, { timeout: 5000 });
    // A file may come from anywhere; what its schema holds runs with the least rights there are.
    connection.exec("PRAGMA trusted_schema = OFF");
    connection.exec("PRAGMA foreign_keys = ON");
    return connection;
  };
  const writer = explained(path, () => {
    const connection = connect();
    // FULL flushes the log at every commit, so an acknowledged change outlives a power cut as well as a kill.
    connection.exec(`PRAGMA journal_mode = ${options.singleFile ? "DELETE" : "WAL"}`);
    connection.exec("PRAGMA synchronous = FULL");
    // What is erased is overwritten with zeros, not only unlinked.
    connection.exec("PRAGMA secure_delete = ON");
    if (options.maxPages !== undefined) connection.exec(`PRAGMA max_page_count = ${options.maxPages}`);
    return connection;
  });
  // Reads have a connection of their own: on the writer's they would see transactions that are not finished.
  const reader = explained(path, connect);
  reader.exec("PRAGMA query_only = ON");
  const readSql = sqlOf(reader, path);
  const writeSql = sqlOf(writer, path);
  const inTurn = turns();
  const readInTurn = turns();
  const listeners: ((text: string) => void)[] = [];
  let closed = false;

  return {
    dialect: "sqlite",
    read: readSql,
    write: (work) => inTurn(() => transaction(writer, path, "BEGIN IMMEDIATE", () => work(writeSql))),
    snapshot: (work) =>
      readInTurn(async () => {
        const connection = explained(path, connect);
        try {
          return await transaction(connection, path, "BEGIN", () => work(sqlOf(connection, path)));
        } finally {
          connection.close();
        }
      }),
    copyInto: async (target) => {
      // On a thread of its own, with a snapshot of its own: edits go on meanwhile.
      const connection = new AsyncDatabase(path, { timeout: 5000 });
      try {
        await connection.exec(`VACUUM INTO '${target.replaceAll("'", "''")}'`);
      } catch (error) {
        throw failure(target, error);
      } finally {
        connection.close();
      }
      return true;
    },
    scrub: () =>
      inTurn(async () => {
        explained(path, () => writer.exec("PRAGMA wal_checkpoint(TRUNCATE)"));
      }),
    // One program holds the folder, so there is nobody else to tell.
    broadcast: (text) => {
      for (const listener of listeners) listener(text);
    },
    listen: async (listener) => {
      listeners.push(listener);
    },
    close: () =>
      inTurn(async () => {
        if (closed) return;
        closed = true;
        reader.close();
        // Prepared statements keep a closed connection alive until they are collected, so the log is emptied by hand; where
        // the disk is too full for that, the next opener finds the log and uses it.
        try {
          writer.exec("PRAGMA wal_checkpoint(TRUNCATE)");
        } catch (error) {
          if (!(failure(path, error) instanceof StoreFailure)) throw error;
        }
        writer.close();
      }),
  };
}

function sqlOf(connection: Database.Database, path: string): Sql {
  const prepared = new Map<string, Database.Statement>();
  const statement = (text: string): Database.Statement => {
    const known = prepared.get(text);
    if (known) return known;
    const made = connection.prepare(text);
    prepared.set(text, made);
    return made;
  };
  return {
    rows: async <Row>(text: string, values: readonly SqlValue[] = []) =>
      explained(path, () => (statement(text).all(bound(values)) as Row[]).map(withByteArrays)),
    change: async (text, values = []) => explained(path, () => statement(text).run(bound(values)).changes),
  };
}

/** The driver takes the whole memory behind a view, so bytes are handed over in an array of their own. */
const bound = (values: readonly SqlValue[]): SqlValue[] =>
  values.map((value) => (value instanceof Uint8Array ? Uint8Array.from(value) : value));

function withByteArrays<Row>(row: Row): Row {
  for (const [key, value] of Object.entries(row as object)) {
    if (value instanceof ArrayBuffer) (row as Record<string, unknown>)[key] = new Uint8Array(value);
  }
  return row;
}

async function transaction<Value>(
  connection: Database.Database,
  path: string,
  begin: string,
  work: () => Promise<Value>,
): Promise<Value> {
  explained(path, () => connection.exec(begin));
  try {
    const value = await work();
    explained(path, () => connection.exec("COMMIT"));
    return value;
  } catch (error) {
    // A full disk may have undone it already.
    if (connection.inTransaction) connection.exec("ROLLBACK");
    throw error;
  }
}

/** One connection knows one transaction at a time: each piece of work waits for the one before it. */
function turns(): <Value>(work: () => Promise<Value>) => Promise<Value> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const mine = last.then(work);
    last = mine.catch(() => undefined);
    return mine;
  };
}

function explained<Value>(path: string, work: () => Value): Value {
  try {
    return work();
  } catch (error) {
    throw failure(path, error);
  }
}

/** Puts a failing disk or file into words; anything else is our own mistake and stays as it is. */
function failure(path: string, error: unknown): unknown {
  const code = String((error as { code?: unknown }).code ?? "");
  const message = error instanceof Error ? error.message : String(error);
  const cause = { cause: error };
  if (code === "SQLITE_FULL" || code.startsWith("SQLITE_IOERR") || /disk I\/O error/.test(message)) {
    return new StoreFailure(
      "diskFull",
      `The disk has no room for this change to ${path}: nothing of it was kept, and all that was kept before is unharmed. Free some space and try again (${message}).`,
      cause,
    );
  }
  if (code === "SQLITE_NOTADB" || code.startsWith("SQLITE_CORRUPT")) {
    return new StoreFailure(
      "damaged",
      `${path} is not a whole store: restore the latest backup into an empty folder (${message}).`,
      cause,
    );
  }
  if (code.startsWith("SQLITE_CANTOPEN") || code === "SQLITE_READONLY") {
    return new StoreFailure(
      "unreachable",
      `${path} cannot be written: check that its folder exists and who may write there (${message}).`,
      cause,
    );
  }
  return error;
}
