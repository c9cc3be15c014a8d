/** Durability at length: kill -9 under a stream of acknowledged revisions.
 *
 *  npm run soak -w @tidewright/store -- [ROUNDS] [SEED]
 *
 *  An embedded store in a new folder, or the PostgreSQL database that DATABASE_URL names. With SOAK_KILL and SOAK_START,
 *  two shell commands, the server itself is killed in each round and started again. */
import { execSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { killEditors } from "./killEditors.ts";

const [rounds = "100", seed = "1"] = process.argv.slice(2);
const url = process.env["DATABASE_URL"];
const [kill, start] = [process.env["SOAK_KILL"], process.env["SOAK_START"]];
const server =
  kill !== undefined && start !== undefined
    ? { kill: () => void execSync(kill), start: () => void execSync(start, { stdio: "ignore" }) }
    : undefined;
const folder = mkdtempSync(join(tmpdir(), "tidewright-soak-"));
const quantile = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? Number.NaN;
try {
  const { commitTimes, openTimes, ...figures } = await killEditors(url ?? folder, Number(rounds), Number(seed), server);
  console.log(
    JSON.stringify(
      {
        store: url === undefined ? "embedded" : "postgres",
        killed: server ? "server and editor" : "editor",
        seed: Number(seed),
        ...figures,
        commitMedianMs: quantile(commitTimes, 0.5),
        commitP99Ms: quantile(commitTimes, 0.99),
        openMedianMs: quantile(openTimes, 0.5),
        openSlowestMs: quantile(openTimes, 1),
      },
      undefined,
      2,
    ),
  );
  if (figures.lost.length + figures.historyGaps.length + figures.failures.length > 0) process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
