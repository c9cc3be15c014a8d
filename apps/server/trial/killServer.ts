import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import type { DesignHead, Job } from "@tidewright/protocol";
import { type ServerStart, type StartedServer, startServer } from "../../../tools/startServer.ts";
import { askServer, Client } from "./client.ts";
import { inspectDocuments, inspectHistory, streamTells } from "./inspect.ts";

/** What a run of kills found. `wrong` names everything lost, changed, out of order or unheard. */
export interface KillFigures {
  readonly rounds: number;
  /** Kills while the server was starting, among all. */
  readonly killedInStart: number;
  readonly acknowledged: number;
  readonly wrong: readonly string[];
  readonly commitTimes: readonly number[];
  readonly startTimes: readonly number[];
}

/** What the server that is killed is started with. */
export type Over = Pick<ServerStart, "database" | "built">;

/** Kills the real server as often as asked, each time at a random moment of a stream of edits that six clients send over
 *  HTTP to three designs, two to each; every fourth time again while it starts. After each kill a new server has to open
 *  what is kept, show every acknowledged edit of the round with its exact document and the whole history without a gap,
 *  and tell of changes; at the end every document is looked at.
 *  rounds number of kills   over a PostgreSQL by its URL, or undefined for a new folder; built or from sources
 *  -> KillFigures */
export async function killServer(rounds: number, over: Over = {}): Promise<KillFigures> {
  const data = mkdtempSync(join(tmpdir(), "tidewright-kills-"));
  const wrong: string[] = [];
  const startTimes: number[] = [];
  let killedInStart = 0;
  let server: StartedServer | undefined;
  const start = async (): Promise<string> => {
    const started = performance.now();
    server = await startServer({ data, ...over });
    startTimes.push(performance.now() - started);
    return server.address;
  };
  try {
    let address = await start();
    const { job, clients } = await setUp(address);
    const designs = [...new Set(clients.map(({ designId }) => designId))];
    const seen = new Map(clients.map((client) => [client, 0]));
    for (let round = 1; round <= rounds && wrong.length === 0; round++) {
      await writeAndDie(address, server!, clients);
      if (round % 4 === 0) {
        await dieInStart(data, over);
        killedInStart += 1;
      }
      address = await start();
      for (const client of clients) {
        const fresh = client.acknowledged.slice(seen.get(client));
        seen.set(client, client.acknowledged.length);
        wrong.push(...(await inspectDocuments(address, fresh)));
      }
      for (const designId of designs) {
        const acknowledged = clients.flatMap((each) => (each.designId === designId ? each.acknowledged : []));
        wrong.push(...(await inspectHistory(address, designId, acknowledged)));
      }
      const made = crypto.randomUUID();
      const tells = await streamTells(address, made, () =>
        askServer(address, "POST", "api/jobs", { id: made, name: `Round ${round} of ${job.name}` }),
      );
      if (!tells) wrong.push(`round ${round}: the stream of events told nothing`);
      await askServer(address, "DELETE", `api/jobs/${made}`, undefined, 1).catch(() => undefined);
    }
    for (const client of clients) wrong.push(...(await inspectDocuments(address, client.acknowledged)));
    return {
      rounds: startTimes.length - 1,
      killedInStart,
      acknowledged: clients.reduce((sum, client) => sum + client.acknowledged.length, 0),
      wrong,
      commitTimes: clients.flatMap(({ commitTimes }) => commitTimes),
      startTimes,
    };
  } finally {
    await server?.kill();
    rmSync(data, { recursive: true, force: true });
  }
}

async function setUp(address: string): Promise<{ job: Job; clients: Client[] }> {
  const example = readFileSync(new URL("../../../examples/first-tank-110.json", import.meta.url), "utf8");
  const document = JSON.parse(example) as Record<string, unknown>;
  const job = await askServer<Job>(address, "POST", "api/jobs", { name: "Trial" });
  const clients: Client[] = [];
  for (const name of ["One", "Two", "Three"]) {
    const { id } = await askServer<DesignHead>(address, "POST", `api/jobs/${job.id}/designs`, { name, document });
    for (const place of ["counter", "workshop"]) clients.push(new Client(`${name}, ${place}`, id, document));
  }
  return { job, clients };
}

/** Lets all clients write, and kills the server a random while after the first acknowledgement. */
async function writeAndDie(address: string, server: StartedServer, clients: readonly Client[]): Promise<void> {
  let killing: Promise<void> | undefined;
  const first = (): void => {
    killing ??= pause(Math.random() * 1000).then(() => server.kill());
  };
  const writings = await Promise.allSettled(clients.map((client) => client.write(address, first)));
  await killing;
  for (const writing of writings) if (writing.status === "rejected") throw writing.reason;
  if (killing === undefined) throw new Error("the server went before it acknowledged anything");
}

/** Starts a server and kills it a random while later, perhaps in the midst of opening what is kept. */
async function dieInStart(data: string, over: Over): Promise<void> {
  const started = startServer({
    data,
    ...over,
    born: (child) => {
      setTimeout(() => child.kill("SIGKILL"), 300 + Math.random() * 2000);
    },
  });
  const server = await started.catch(() => undefined);
  if (server === undefined || server.child.signalCode !== null) return;
  await new Promise((done) => server.child.once("exit", done));
}
