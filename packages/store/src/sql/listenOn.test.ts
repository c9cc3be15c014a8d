import { createServer, connect as dial, type Socket } from "node:net";
import pg from "pg";
import { afterEach, describe, expect, it } from "vitest";
import { openStore } from "../openStore.ts";
import type { StoreChange } from "../store.ts";
import { by, freshPlace, removePlaces } from "../testing/freshStore.ts";
import { listenOn } from "./listenOn.ts";

const endings: (() => Promise<void> | void)[] = [];
afterEach(async () => {
  while (endings.length > 0) await endings.pop()?.();
  await removePlaces();
});

const onServer = process.env["DATABASE_URL"] === undefined ? describe.skip : describe;

/** A connection of the test's own to a place. */
async function connectTo(place: string): Promise<pg.Client> {
  const client = new pg.Client({ connectionString: place });
  await client.connect();
  endings.push(() => client.end());
  return client;
}

/** Ends the connections on which somebody listens on this place's channel, and answers how many there were. PostgreSQL
 *  documentation, 9.27.2 (pg_terminate_backend) and 28.2.3 (pg_stat_activity). */
async function cutListeners(client: pg.Client): Promise<number> {
  const { rowCount } = await client.query(
    `SELECT pg_terminate_backend(pid) FROM pg_stat_activity
     WHERE query = 'LISTEN "tidewright_' || current_schema() || '"' AND pid <> pg_backend_pid()`,
  );
  return rowCount ?? 0;
}

onServer("a listening connection that is cut", () => {
  it("is made again, and says that something may have been missed before it tells of what comes then", async () => {
    const place = await freshPlace();
    const store = await openStore(place);
    endings.push(() => store.close());
    const seen: StoreChange[] = [];
    store.watch((change) => seen.push(change));
    const other = await connectTo(place);
    expect(await cutListeners(other)).toBe(1);
    await until(() => seen.length > 0);
    expect(seen).toEqual([{ kind: "missed" }]);
    await store.jobs.create({ id: "j", name: "J" }, by());
    await until(() => seen.length > 1);
    expect(seen).toEqual([{ kind: "missed" }, { kind: "job", id: "j", version: 1 }]);
  });

  it("says so once it can be made again, however long that takes", async () => {
    const place = await freshPlace();
    const line = await proxyTo(place);
    const heard: string[] = [];
    const stop = await listenOn(
      line.place,
      (text) => heard.push(text),
      () => heard.push("missed"),
      { pause: 20, signOfLife: 10_000, patience: 5000 },
    );
    endings.push(stop);
    const other = await connectTo(place);
    const tell = (word: string) => other.query("SELECT pg_notify('tidewright_' || current_schema(), $1)", [word]);
    const cut = line.cut();
    await tell("meanwhile");
    await until(() => cut.refused() > 2);
    expect(heard).toEqual([]);
    cut.mend();
    await until(() => heard.length > 0);
    await tell("after");
    await until(() => heard.length > 1);
    expect(heard).toEqual(["missed", "after"]);
  });

  it("is noticed where it breaks without a word, by the sign of life that does not come back", async () => {
    const place = await freshPlace();
    const line = await proxyTo(place);
    const heard: string[] = [];
    const stop = await listenOn(
      line.place,
      (text) => heard.push(text),
      () => heard.push("missed"),
      { pause: 20, signOfLife: 50, patience: 200 },
    );
    endings.push(stop);
    const other = await connectTo(place);
    const tell = (word: string) => other.query("SELECT pg_notify('tidewright_' || current_schema(), $1)", [word]);
    await tell("before");
    await until(() => heard.length === 1);
    line.freeze();
    await tell("meanwhile");
    await until(() => heard.length === 2);
    await tell("after");
    await until(() => heard.length === 3);
    expect(heard).toEqual(["before", "missed", "after"]);
  });

  it("stays where nothing is told for longer than a sign of life takes", async () => {
    const heard: string[] = [];
    const stop = await listenOn(
      await freshPlace(),
      (text) => heard.push(text),
      () => heard.push("missed"),
      { pause: 20, signOfLife: 10, patience: 1000 },
    );
    endings.push(stop);
    await new Promise((soon) => setTimeout(soon, 300));
    expect(heard).toEqual([]);
  });
});

/** A way to a place through a port of this test, whose open connections can be left hanging (nothing passes, nobody is told)
 *  or be cut, with new ones refused until it is mended. */
interface Line {
  readonly place: string;
  readonly freeze: () => void;
  readonly cut: () => { readonly refused: () => number; readonly mend: () => void };
}

async function proxyTo(place: string): Promise<Line> {
  const { hostname, port } = new URL(place);
  const pairs: [Socket, Socket][] = [];
  let isCut = false;
  let refused = 0;
  const server = createServer((near) => {
    if (isCut) {
      refused++;
      near.destroy();
      return;
    }
    const far = dial(Number(port || 5432), hostname);
    near.on("error", () => far.destroy()).on("close", () => far.destroy());
    far.on("error", () => near.destroy());
    near.pipe(far).pipe(near);
    pairs.push([near, far]);
  });
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  endings.push(async () => {
    for (const [near, far] of pairs) {
      near.destroy();
      far.destroy();
    }
    await new Promise((closed) => server.close(closed));
  });
  const address = server.address();
  const through = new URL(place);
  through.host = `127.0.0.1:${typeof address === "object" && address ? address.port : 0}`;
  return {
    place: through.href,
    freeze: () => {
      for (const [near, far] of pairs) {
        near.unpipe();
        far.unpipe();
        near.pause();
        far.pause();
      }
    },
    cut: () => {
      isCut = true;
      for (const [near] of pairs) near.destroy();
      return {
        refused: () => refused,
        mend: () => {
          isCut = false;
        },
      };
    },
  };
}

async function until(claim: () => boolean | Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 1000; tries++) {
    if (await claim()) return;
    await new Promise((soon) => setTimeout(soon, 5));
  }
  throw new Error("it did not come to pass");
}
