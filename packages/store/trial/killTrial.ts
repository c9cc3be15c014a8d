/** Kills a process that commits a stream of writes, at random moments, and looks for every write it had acknowledged.
 *
 *  npx tsx --conditions=source packages/store/trial/killTrial.ts pglite 100
 *  npx tsx --conditions=source packages/store/trial/killTrial.ts libsql 100
 *
 *  The first needs PGlite in a folder of its own: npm install --prefix FOLDER @electric-sql/pglite@0.5.16, with
 *  TRIAL_MODULES=FOLDER in the environment. */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { engines } from "./engines.ts";
import { randomFrom } from "./randomFrom.ts";

const [engine = "libsql", rounds = "100", seed = "1"] = process.argv.slice(2);
const open = engines[engine];
if (open === undefined) throw new Error(`unknown database ${engine}: use one of ${Object.keys(engines).join(", ")}`);
const writer = fileURLToPath(new URL("./writer.ts", import.meta.url));

interface Life {
  readonly acknowledged: number[];
  readonly commitTimes: number[];
  readonly openTime: number | undefined;
  readonly problem: string;
  /** Whether it ended by itself, which it never should. */
  readonly failed: boolean;
}

/** Starts a writer and kills it a while [ms] after it opened, or after its start: then perhaps in the midst of opening. */
function liveAndDie(folder: string, first: number, wait: number, from: "open" | "start" = "open"): Promise<Life> {
  return new Promise((resolve) => {
    const child: ChildProcess = spawn(
      process.execPath,
      ["--import", "tsx", "--conditions=source", writer, engine, folder, String(first)],
      { stdio: ["ignore", "pipe", "pipe"] },
    );
    const acknowledged: number[] = [];
    const commitTimes: number[] = [];
    let openTime: number | undefined;
    let pending = "";
    let problem = "";
    if (from === "start") setTimeout(() => child.kill("SIGKILL"), wait);
    child.stderr?.on("data", (chunk: Buffer) => {
      problem += chunk.toString();
    });
    child.stdout?.on("data", (chunk: Buffer) => {
      const lines = (pending + chunk.toString()).split("\n");
      pending = lines.pop() ?? "";
      for (const line of lines) {
        const [word, ...numbers] = line.split(" ");
        if (word === "open") {
          openTime = Number(numbers[0]);
          if (from === "open") setTimeout(() => child.kill("SIGKILL"), wait);
        } else {
          acknowledged.push(Number(numbers[0]));
          commitTimes.push(Number(numbers[1]));
        }
      }
    });
    child.on("close", (_, signal) =>
      resolve({ acknowledged, commitTimes, openTime, problem, failed: signal !== "SIGKILL" }),
    );
  });
}

function bytesUnder(folder: string): number {
  return readdirSync(folder, { recursive: true, withFileTypes: true }).reduce(
    (sum, entry) => sum + (entry.isFile() ? statSync(join(entry.parentPath, entry.name)).size : 0),
    0,
  );
}

const quantile = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? Number.NaN;

/** Two writers at once on one folder: what becomes of the second, and whether the folder opens whole afterwards. */
async function twoOpeners(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), `trial-two-${engine}-`));
  await (await open!(folder)).close();
  const [one, two] = await Promise.all([liveAndDie(folder, 0, 5000), liveAndDie(folder, 1_000_000, 5000)]);
  const told = `first kept ${one.acknowledged.length}, second kept ${two.acknowledged.length}`;
  const refusal = [one.problem, two.problem].map((text) => text.match(/\b\w*Error: .{0,120}/)?.[0] ?? "");
  try {
    const database = await open!(folder);
    const found = new Set((await database.readAll()).map((row) => row.number));
    await database.close();
    const lost = [...one.acknowledged, ...two.acknowledged].filter((number) => !found.has(number));
    return `${told}; lost ${lost.length}; opens afterwards; errors: ${JSON.stringify(refusal)}`;
  } catch (error) {
    return `${told}; does NOT open afterwards: ${String(error).slice(0, 200)}; errors: ${JSON.stringify(refusal)}`;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const random = randomFrom(Number(seed));
const folder = mkdtempSync(join(tmpdir(), `trial-${engine}-`));
const known = new Set<number>();
const commits: number[] = [];
const opens: number[] = [];
let lost = 0;
let unopened = 0;
let next = 0;
for (let round = 0; round < Number(rounds); round++) {
  const life =
    round % 4 === 3
      ? await liveAndDie(folder, next, random() * 3000, "start")
      : await liveAndDie(folder, next, 20 + random() * 480);
  for (const number of life.acknowledged) known.add(number);
  commits.push(...life.commitTimes);
  if (life.openTime !== undefined && round > 0) opens.push(life.openTime);
  if (life.failed) {
    unopened++;
    console.log(`round ${round}: did not open: ${life.problem.slice(0, 400)}`);
    break;
  }
  next = (life.acknowledged.at(-1) ?? next) + 2;
  // Looked at from a process that did not write: the next writer's start is the reopening after the kill.
  const database = await open(folder);
  const rows = await database.readAll();
  const found = new Map(rows.map((row) => [row.number, row.length]));
  lost = [...known].filter((number) => found.get(number) !== 4000).length;
  next = Math.max(next, (rows.at(-1)?.number ?? -1) + 1);
  await database.close();
  if (lost > 0) console.log(`round ${round}: ${lost} acknowledged writes are missing`);
}
console.log(
  JSON.stringify({
    engine,
    rounds: Number(rounds),
    seed: Number(seed),
    acknowledged: known.size,
    lost,
    unopened,
    commitMedianMs: quantile(commits, 0.5),
    commitP99Ms: quantile(commits, 0.99),
    openMedianMs: quantile(opens, 0.5),
    openMaxMs: quantile(opens, 1),
    bytesOnDisk: bytesUnder(folder),
    bytesWritten: known.size * 4000,
  }),
);
rmSync(folder, { recursive: true, force: true });
console.log(`two openers: ${await twoOpeners()}`);
