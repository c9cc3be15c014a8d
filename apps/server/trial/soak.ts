/** Durability of the whole server at length: kill -9 under a stream of acknowledged edits over HTTP.
 *
 *  npm run soak -w @tidewright/server -- [ROUNDS] [built]
 *
 *  Over a new data folder, or over the PostgreSQL database that DATABASE_URL names. */
import { killServer } from "./killServer.ts";

const [rounds = "100", built] = process.argv.slice(2);
const database = process.env["DATABASE_URL"];
const quantile = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? Number.NaN;
const { commitTimes, startTimes, ...figures } = await killServer(Number(rounds), {
  database,
  built: built === "built",
});
console.log(
  JSON.stringify(
    {
      store: database === undefined ? "embedded" : "postgres",
      ...figures,
      commitMedianMs: quantile(commitTimes, 0.5),
      commitP99Ms: quantile(commitTimes, 0.99),
      startMedianMs: quantile(startTimes, 0.5),
      startSlowestMs: quantile(startTimes, 1),
    },
    undefined,
    2,
  ),
);
if (figures.wrong.length > 0) process.exitCode = 1;
