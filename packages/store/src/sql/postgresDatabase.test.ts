import pg from "pg";
import { afterEach, describe, expect, it } from "vitest";
import { freshPlace, removePlaces } from "../testing/freshStore.ts";
import { openPostgres } from "./postgresDatabase.ts";

afterEach(removePlaces);

describe.runIf(process.env["DATABASE_URL"] !== undefined)("a PostgreSQL server that goes away", () => {
  it("in the middle of a transaction fails that one alone, and the next finds it again", async () => {
    const place = await freshPlace();
    const database = openPostgres(place);
    try {
      const cut = database.write(async (sql) => {
        const [own] = await sql.rows<{ pid: number }>("SELECT pg_backend_pid() AS pid");
        const other = new pg.Client({ connectionString: place });
        await other.connect();
        await other.query("SELECT pg_terminate_backend($1)", [own!.pid]);
        await other.end();
        // Nothing is asked while the connection breaks, so nobody but the connection itself hears of it.
        await new Promise((done) => setTimeout(done, 200));
        return sql.rows("SELECT 1");
      });
      await expect(cut).rejects.toMatchObject({ code: "unreachable" });
      expect(await database.write((sql) => sql.rows("SELECT 1 AS one"))).toEqual([{ one: 1 }]);
    } finally {
      await database.close();
    }
  });
});
