import { tables } from "../schema/migrations.ts";
import type { Sql, SqlValue } from "../sql/sqlDatabase.ts";

/** Copies every row of every table of one store into an empty one, a few at a time, so that it need not fit into
 *  memory; both sides are inside a transaction. */
export async function copyRows(from: Sql, to: Sql): Promise<void> {
  for (const { name, columns, key } of tables) {
    const list = columns.join(", ");
    const insert = `INSERT INTO ${name} (${list}) VALUES (${columns.map(() => "?").join(", ")})`;
    const atOnce = columns.includes("bytes") ? 1 : 200;
    for (let offset = 0; ; offset += atOnce) {
      const rows = await from.rows<Record<string, SqlValue>>(
        `SELECT ${list} FROM ${name} ORDER BY ${key} LIMIT ? OFFSET ?`,
        [atOnce, offset],
      );
      for (const row of rows) {
        await to.change(
          insert,
          columns.map((column) => row[column] ?? null),
        );
      }
      if (rows.length < atOnce) break;
    }
  }
}
