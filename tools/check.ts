import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { addCounts, closingLine, type TestCounts, testCounts } from "./closingLine.ts";
import { repositoryRoot } from "./repository.ts";
import { scratchPostgres } from "./scratchPostgres.ts";

// Everything a change must pass, cheapest first. Without --all the tests, which take longest, run only when the
// cheaper steps pass; with it (npm test, CI) everything runs, so one run shows everything that is wrong.

const all = process.argv.includes("--all") || process.env.CI !== undefined;
const results = join(repositoryRoot, "test-results");
const report = join(results, "vitest.json");

const steps: readonly { readonly name: string; readonly script: string; readonly says: string }[] = [
  { name: "lint", script: "lint", says: "format and lint" },
  { name: "purity", script: "purity", says: "no clock, chance or surroundings in engine and units" },
  { name: "leaks", script: "leaks", says: "no machine path or registry host" },
  { name: "types", script: "types", says: "types of packages, apps and tests" },
  { name: "imports", script: "imports", says: "who may import whom" },
  { name: "unused", script: "unused", says: "no unused files, exports and packages" },
  { name: "docs:check", script: "docs:check", says: "reference pages are current" },
];

/** The screens as they are shipped, built once for all browser tests; each builds them for itself where they are not named. */
const screens = { script: "build:web", folder: join(repositoryRoot, "apps", "web", "dist") } as const;

const lines: string[] = [];
let failures = 0;

function run(name: string, says: string, args: readonly string[], surroundings: NodeJS.ProcessEnv = {}): boolean {
  console.log(`\n== ${name}: ${says}`);
  const start = Date.now();
  const { status } = spawnSync("npm", ["run", "--silent", ...args], {
    cwd: repositoryRoot,
    env: { ...process.env, ...surroundings },
    stdio: ["ignore", "inherit", "inherit"],
    shell: process.platform === "win32",
  });
  const seconds = ((Date.now() - start) / 1000).toFixed(1);
  lines.push(`${status === 0 ? "ok  " : "FAIL"}  ${name.padEnd(14)}${seconds.padStart(6)} s  ${says}`);
  if (status !== 0) failures += 1;
  return status === 0;
}

for (const step of steps) run(step.name, step.says, [step.script]);

rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });
let counts: TestCounts = { passed: 0, failed: 0, skipped: 0 };
if (failures === 0 || all) {
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  const built = run("screens", "the pages as they are shipped", [screens.script]);
  const surroundings = built ? { TIDEWRIGHT_WEB: screens.folder } : {};
  run("tests", "unit, property and reference tests, doc examples", ["tests", "--", ...reporters], surroundings);
  if (existsSync(report)) counts = testCounts(JSON.parse(readFileSync(report, "utf8")));
  counts = addCounts(counts, await onPostgres());
  if (counts.passed + counts.failed === 0) {
    failures += 1;
    lines.push("FAIL  no test ran");
  }
} else lines.push("      tests not run: mend the steps above first, or run npm run tests");

/** Runs once more, over a server that is started for it, what keeps its work in PostgreSQL where there is one. */
async function onPostgres(): Promise<TestCounts> {
  const none = { passed: 0, failed: 0, skipped: 0 };
  // That none can be started says nothing of what is checked here: it is told, and the embedded database stands alone.
  const server = await scratchPostgres().catch((error: Error) => error.message);
  if (server === undefined || typeof server === "string") {
    lines.push(`      postgres not run: ${server ?? "there is no PostgreSQL here"}`);
    return none;
  }
  const of = ["packages/store", "apps/server/src/routes/missedChanges.test.ts", "apps/server/trial"];
  const written = join(results, "postgres.json");
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${written}`];
  run("postgres", "the store and the server on PostgreSQL", ["tests", "--", ...of, ...reporters], {
    DATABASE_URL: server.url,
  });
  server.stop();
  return existsSync(written) ? testCounts(JSON.parse(readFileSync(written, "utf8"))) : none;
}

const line = closingLine(counts);
writeFileSync(join(results, "closing-line.txt"), `${line}\n`);
console.log(`\n${lines.join("\n")}\n`);
if (failures > 0) console.log("The check failed; the steps marked FAIL say why above.");
console.log(line);
process.exitCode = failures > 0 || counts.failed > 0 ? 1 : 0;
