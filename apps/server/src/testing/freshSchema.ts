import pg from "pg";

const endings: (() => Promise<void>)[] = [];
let count = 0;

/** A schema of its own in the PostgreSQL database that DATABASE_URL names, and a connection to it beside the server's. */
export interface FreshSchema {
  /** URL by which a store is opened there. */
  readonly place: string;
  readonly client: pg.Client;
}

/** Makes an empty schema, gone after the test.
 *  url of a PostgreSQL database   -> FreshSchema */
export async function freshSchema(url: string): Promise<FreshSchema> {
  const schema = `served_${process.pid}_${++count}_${Date.now()}`;
  const place = `${url}${url.includes("?") ? "&" : "?"}options=-csearch_path%3D${schema}`;
  const client = new pg.Client({ connectionString: place });
  await client.connect();
  await client.query(`CREATE SCHEMA ${schema}`);
  endings.push(async () => {
    await client.query(`DROP SCHEMA ${schema} CASCADE`);
    await client.end();
  });
  return { place, client };
}

/** Takes away every schema of a test; to be called after each, once its servers have ended. */
export async function removeSchemas(): Promise<void> {
  while (endings.length > 0) await endings.pop()?.();
}
