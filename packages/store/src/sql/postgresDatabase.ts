import pg from "pg";
import type { StoreChange } from "../store.ts";
import { StoreFailure } from "../storeFailure.ts";
import { listenOn } from "./listenOn.ts";
import type { Sql, SqlDatabase, SqlValue } from "./sqlDatabase.ts";

/** What every listener takes for changes that were not told. */
const missedText = JSON.stringify({ kind: "missed" } satisfies StoreChange);

/** Opens a PostgreSQL database by its URL; several programs may share it. */
export function openPostgres(url: string): SqlDatabase {
  const pool = new pg.Pool({ connectionString: url, max: 10 });
  // A broken idle connection is replaced by the pool; without a listener it would end the program.
  pool.on("error", () => undefined);

  const inTransaction = async <Value>(begin: string, work: (sql: Sql) => Promise<Value>): Promise<Value> => {
    const client = await pool.connect().catch((error: unknown) => {
      throw failure(error);
    });
    let broken: Error | undefined;
    // The pool listens to idle connections only: without a listener of our own a server that goes away in the middle of a
    // transaction would end the program. The query under way, or the next one, fails with it.
    const lost = (error: Error): void => {
      broken = error;
    };
    client.on("error", lost);
    try {
      await client.query(begin);
      const value = await work(sqlOf((text, values) => client.query(text, values)));
      await client.query("COMMIT");
      return value;
    } catch (error) {
      await client.query("ROLLBACK").catch(lost);
      throw failure(error);
    } finally {
      client.off("error", lost);
      client.release(broken);
    }
  };

  let stopListening: () => Promise<void> = async () => undefined;
  let closed = false;
  let owing: NodeJS.Timeout | undefined;
  const notify = (text: string) => pool.query("SELECT pg_notify('tidewright_' || current_schema(), $1)", [text]);
  const broadcast = (text: string): void => {
    notify(text).catch(oweWord);
  };
  /** The change is kept, but nobody was told: everybody is, as soon as that can be said, to read anew. */
  const oweWord = (): void => {
    if (closed || owing !== undefined) return;
    owing = setTimeout(() => {
      owing = undefined;
      notify(missedText).catch(oweWord);
    }, 1000);
  };

  return {
    dialect: "postgres",
    read: sqlOf((text, values) => pool.query(text, values)),
    // Whatever the server's default is, an acknowledged change is on its disk.
    write: (work) => inTransaction("BEGIN; SET LOCAL synchronous_commit = on", work),
    snapshot: (work) => inTransaction("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY", work),
    copyInto: async () => false,
    // Old versions of rows go with the server's own vacuum.
    scrub: async () => undefined,
    broadcast,
    listen: async (listener, missed) => {
      stopListening = await listenOn(url, listener, missed).catch((error: unknown) => {
        throw failure(error);
      });
    },
    close: async () => {
      closed = true;
      clearTimeout(owing);
      await stopListening();
      await pool.end();
    },
  };
}

type Query = (text: string, values: unknown[]) => Promise<pg.QueryResult>;

function sqlOf(query: Query): Sql {
  const ask = async (text: string, values: readonly SqlValue[]): Promise<pg.QueryResult> => {
    try {
      return await query(numbered(text), values.map(asParameter));
    } catch (error) {
      throw failure(error);
    }
  };
  return {
    rows: async <Row>(text: string, values: readonly SqlValue[] = []) => (await ask(text, values)).rows as Row[],
    change: async (text, values = []) => (await ask(text, values)).rowCount ?? 0,
  };
}

function asParameter(value: SqlValue): unknown {
  if (value instanceof Uint8Array) return Buffer.from(value.buffer, value.byteOffset, value.byteLength);
  // What the server could not even compare is compared as something that is never kept: an id with a zero character, a
  // version beyond every counter.
  if (typeof value === "string") return value.replaceAll("\0", "\uFFFD");
  if (typeof value === "number") return Number.isInteger(value) && Math.abs(value) < 2 ** 31 ? value : -1;
  return value;
}

/** The statements of this package hold no question mark but those that stand for values. */
function numbered(text: string): string {
  let count = 0;
  return text.replaceAll("?", () => `$${++count}`);
}

/** Puts a failing server into words; anything else is our own mistake and stays as it is. */
function failure(error: unknown): unknown {
  if (error instanceof StoreFailure) return error;
  const code = String((error as { code?: unknown }).code ?? "");
  const message = error instanceof Error ? error.message : String(error);
  // SQLSTATE classes: PostgreSQL documentation, Appendix A.
  if (code === "53100") {
    return new StoreFailure(
      "diskFull",
      `The database server's disk is full: nothing of this change was kept. Free some space there and try again (${message}).`,
      { cause: error },
    );
  }
  if (
    /^(08|57P|ECONN|ENOTFOUND|EPIPE|ETIMEDOUT|3D000|28)/.test(code) ||
    /Connection terminated|not queryable|timeout/.test(message)
  ) {
    return new StoreFailure(
      "unreachable",
      `The database server does not answer: check DATABASE_URL and that the server runs (${message}).`,
      { cause: error },
    );
  }
  return error;
}
