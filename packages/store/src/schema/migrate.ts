import type { SqlDatabase } from "../sql/sqlDatabase.ts";
import { StoreFailure } from "../storeFailure.ts";
import { migrationStep, schemaVersion } from "./migrations.ts";

/** Brings a database to this program's schema in one transaction; refuses one that a newer program has written. */
export async function migrate(database: SqlDatabase, where: string): Promise<void> {
  await database.write(async (sql) => {
    // Servers that start together on one database wait for each other here.
    if (database.dialect === "postgres") await sql.rows("SELECT pg_advisory_xact_lock(7437843)");
    await sql.change("CREATE TABLE IF NOT EXISTS tidewright_store (version INTEGER NOT NULL)");
    const [found] = await sql.rows<{ version: number }>("SELECT version FROM tidewright_store");
    const version = found?.version ?? 0;
    if (version > schemaVersion) {
      throw new StoreFailure(
        "newer",
        `${where} was written by a newer program (schema ${version}, this program knows ${schemaVersion}): update the program, or restore a backup made with this one.`,
      );
    }
    if (version === schemaVersion) return;
    for (let step = version + 1; step <= schemaVersion; step++) {
      for (const statement of migrationStep(step, database.dialect)) await sql.change(statement);
    }
    await sql.change("DELETE FROM tidewright_store");
    await sql.change("INSERT INTO tidewright_store (version) VALUES (?)", [schemaVersion]);
  });
}
