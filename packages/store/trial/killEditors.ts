import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import { openStore, type Store } from "../src/index.ts";
import { randomFrom } from "./randomFrom.ts";
import { trialDocument } from "./trialDocument.ts";

/** What a run of kills found: acknowledged revisions, those missing or changed, and gaps in the history. */
export interface KillFigures {
  readonly rounds: number;
  readonly acknowledged: number;
  readonly kept: number;
  readonly lost: readonly number[];
  readonly historyGaps: readonly number[];
  readonly failures: readonly string[];
  readonly commitTimes: readonly number[];
  readonly openTimes: readonly number[];
}

const by = { author: "trial", at: "2026-01-01T00:00:00.000Z" };

/** Kills a process that adds revisions, as often as asked, each time at a random moment; after each kill opens the
 *  store and looks for every revision that was ever acknowledged, and at the end at each document.
 *  With `server` it is the database server that is killed, the editor with it, and then started again. */
export async function killEditors(
  target: string,
  rounds: number,
  seed: number,
  server?: { readonly kill: () => void; readonly start: () => void },
): Promise<KillFigures> {
  const random = randomFrom(seed);
  const designId = `trial-${seed}-${process.pid}`;
  const first = await openStore(target);
  await first.jobs.create({ id: designId, name: "Trial" }, by);
  await first.designs.create({ id: designId, jobId: designId, name: "Trial", document: trialDocument(1) }, by);
  await first.close();
  const acknowledged = new Set<number>([1]);
  const figures = { commitTimes: [] as number[], openTimes: [] as number[], failures: [] as string[] };
  let found: { lost: number[]; gaps: number[]; kept: number } = { lost: [], gaps: [], kept: 0 };
  for (let round = 0; round < rounds; round++) {
    // Every fourth dies counted from its start, perhaps while it opens.
    const life =
      round % 4 === 3
        ? await liveAndDie(target, designId, random() * 1500, "start", server?.kill)
        : await liveAndDie(target, designId, 20 + random() * 380, "open", server?.kill);
    server?.start();
    for (const number of life.acknowledged) acknowledged.add(number);
    figures.commitTimes.push(...life.commitTimes);
    figures.openTimes.push(...life.openTimes);
    if (life.failure !== "") figures.failures.push(`round ${round}: ${life.failure}`);
    const store = await openStore(target);
    found = await inspect(store, designId, acknowledged, round === rounds - 1);
    await store.close();
    if (found.lost.length + found.gaps.length + figures.failures.length > 0) break;
  }
  return {
    rounds,
    acknowledged: acknowledged.size,
    kept: found.kept,
    lost: found.lost,
    historyGaps: found.gaps,
    ...figures,
  };
}

async function inspect(
  store: Store,
  designId: string,
  acknowledged: ReadonlySet<number>,
  everyDocument: boolean,
): Promise<{ lost: number[]; gaps: number[]; kept: number }> {
  const head = await store.designs.find(designId);
  const history = await store.designs.history(designId, { limit: 1_000_000 });
  const numbers = new Set(history.map(({ number }) => number));
  const lost = [...acknowledged].filter((number) => !numbers.has(number));
  // Newest first, each made from the one before, and the head pointing at the newest.
  const gaps = history.flatMap(({ number, parent }, index) =>
    number === (head?.revision ?? 0) - index && parent === (number === 1 ? null : number - 1) ? [] : [number],
  );
  for (const { number } of everyDocument ? history : history.slice(0, 5)) {
    const revision = await store.designs.revision(designId, number);
    if (JSON.stringify(revision?.document) !== JSON.stringify(trialDocument(number))) lost.push(number);
  }
  return { lost, gaps, kept: history.length };
}

interface Life {
  readonly acknowledged: number[];
  readonly commitTimes: number[];
  readonly openTimes: number[];
  readonly failure: string;
}

function liveAndDie(
  target: string,
  designId: string,
  wait: number,
  from: "open" | "start",
  strike?: () => void,
): Promise<Life> {
  const editor = fileURLToPath(new URL("./editor.ts", import.meta.url));
  return new Promise((resolve) => {
    const child = spawn(
      process.execPath,
      ["--import", "tsx", "--conditions=source", editor, target, designId],
      // The test runner's own settings are not the editor's.
      { stdio: ["ignore", "pipe", "pipe"], env: { ...process.env, NODE_OPTIONS: "" } },
    );
    const life = { acknowledged: [] as number[], commitTimes: [] as number[], openTimes: [] as number[] };
    let pending = "";
    let problem = "";
    let struck = false;
    const kill = (): void => {
      struck = true;
      strike?.();
      child.kill("SIGKILL");
    };
    if (from === "start") setTimeout(kill, wait);
    child.stderr.on("data", (chunk: Buffer) => {
      problem += chunk.toString();
    });
    child.stdout.on("data", (chunk: Buffer) => {
      const lines = (pending + chunk.toString()).split("\n");
      pending = lines.pop() ?? "";
      for (const line of lines) {
        const [word, first, second] = line.split(" ");
        if (word === "open") {
          life.openTimes.push(Number(first));
          if (from === "open") setTimeout(kill, wait);
        } else {
          life.acknowledged.push(Number(first));
          life.commitTimes.push(Number(second));
        }
      }
    });
    child.on("close", () => resolve({ ...life, failure: struck ? "" : problem.slice(0, 1000) || "ended by itself" }));
  });
}
