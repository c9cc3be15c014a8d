import { demoCatalogue } from "@tidewright/catalogue";
import { afterEach, describe, expect, it } from "vitest";
import { freshSchema, removeSchemas } from "../testing/freshSchema.ts";
import { endServed, exampleText, ifMatch, servedShop } from "../testing/servedShop.ts";

afterEach(async () => {
  await endServed();
  await removeSchemas();
});

const url = process.env["DATABASE_URL"];

describe.runIf(url !== undefined)("a server that could not hear of another's changes", () => {
  it("reads the shop's pumps anew, and asks its screens to read anew, once it hears again", async () => {
    const { place, client } = await freshSchema(url!);
    const shop = await servedShop({ place, remembers: false });
    const job = (await (await shop.ask("POST", "api/jobs", { name: "Reef" })).json()) as { id: string };
    const text = exampleText("first-tank-110.json").replaceAll('"brayne-k18"', '"house-pump"');
    const keep = async () =>
      (await shop.ask("POST", `api/jobs/${job.id}/designs`, { name: "First", document: JSON.parse(text) })).status;
    const given = demoCatalogue.pumps.find(({ id }) => id === "brayne-k18");
    const put = await shop.ask("PUT", "api/catalogue/pump/other-pump", { data: given }, ifMatch(0));
    expect(put.status).toBe(200);
    // The shop's pumps are known to the server from here on, and this one is not among them.
    expect(await keep()).toBe(422);

    const stop = new AbortController();
    const stream = await fetch(new URL("api/events", shop.address), { signal: stop.signal });
    let heard = "";
    const listening = (async () => {
      const decoder = new TextDecoder();
      for await (const part of stream.body as unknown as AsyncIterable<Uint8Array>) heard += decoder.decode(part);
    })().catch(() => undefined);

    // What another server would do while this one's connection is gone: PostgreSQL documentation, 9.27.2.
    await client.query("UPDATE catalogue_rows SET id = 'house-pump' WHERE id = 'other-pump'");
    const cut = await client.query(
      `SELECT pg_terminate_backend(pid) FROM pg_stat_activity
       WHERE query = 'LISTEN "tidewright_' || current_schema() || '"' AND pid <> pg_backend_pid()`,
    );
    expect(cut.rowCount).toBe(1);
    for (let tries = 0; !heard.includes("event: refetch") && tries < 1000; tries++) {
      await new Promise((soon) => setTimeout(soon, 5));
    }
    expect(heard).toContain("event: refetch\ndata: {}\n\n");
    expect(await keep()).toBe(201);
    stop.abort();
    await listening;
  });
});
