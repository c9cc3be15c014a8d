import type { SignInWait } from "../records.ts";
import type { WaitsPart } from "../store.ts";
import type { Context } from "./context.ts";

/** Waits at the door, so that a restart does not forgive what was tried before it. */
export function waitsPart({ database }: Context): WaitsPart {
  return {
    list: () =>
      database.read.rows<SignInWait>(
        `SELECT key, failures, open_at AS "openAt", last_at AS "lastAt" FROM sign_in_waits ORDER BY last_at, key`,
      ),
    keep: (changes) =>
      database.write(async (sql) => {
        for (const [key, wait] of changes) {
          if (wait === undefined) await sql.change("DELETE FROM sign_in_waits WHERE key = ?", [key]);
          else
            await sql.change(
              `INSERT INTO sign_in_waits (key, failures, open_at, last_at) VALUES (?, ?, ?, ?)
                ON CONFLICT (key) DO UPDATE SET failures = excluded.failures, open_at = excluded.open_at, last_at = excluded.last_at`,
              [key, wait.failures, wait.openAt, wait.lastAt],
            );
        }
      }),
    removeBefore: (at) => database.write((sql) => sql.change("DELETE FROM sign_in_waits WHERE last_at < ?", [at])),
  };
}
