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

  it("between a change and the word of it lets that word go out late, as something missed", async () => {
    const place = await freshPlace();
    const database = openPostgres(place);
    const other = openPostgres(place);
    try {
      const heard: string[] = [];
      await other.listen(
        (text) => heard.push(text),
        () => undefined,
      );
      // Fails as a broken connection does: a word of more than 8000 bytes is refused (PostgreSQL documentation, NOTIFY).
      database.broadcast("x".repeat(9000));
      for (let tries = 0; heard.length === 0 && tries < 400; tries++) {
        await new Promise((soon) => setTimeout(soon, 10));
      }
      expect(heard).toEqual(['{"kind":"missed"}']);
    } finally {
      await database.close();
      await other.close();
    }
  });
});
