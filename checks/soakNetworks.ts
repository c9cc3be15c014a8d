import { solveNetwork } from "@tidewright/engine";
import { judge } from "./random/judge.ts";
import { randomNetwork } from "./random/randomNetwork.ts";

/** npm run soak -w checks [count] [start]: solves random networks and names those whose answer does not hold. */
const count = Number(process.argv[2] ?? 100_000);
const start = Number(process.argv[3] ?? 0);
let failed = 0;
let unreachable = 0;
/** Not solved within the steps allowed, and said so: no false answer, but worth a look. */
let unsolved = 0;
let steps = 0;
let worst = 0;
for (let i = start; i < start + count; i++) {
  const model = randomNetwork(i);
  const answer = solveNetwork(model);
  const wrong = judge(model, answer);
  steps += answer.iterations;
  if (answer.status === "unreachable") unreachable++;
  else if (answer.status === "converged") worst = Math.max(worst, answer.residual);
  if (wrong.length === 0) continue;
  if (answer.status === "limit" || answer.status === "stalled") {
    unsolved++;
    process.stdout.write(`network ${i}: ${wrong[0]}\n`);
    continue;
  }
  failed++;
  if (failed <= 20) process.stdout.write(`network ${i}: ${wrong.slice(0, 3).join("; ")}\n`);
}
process.stdout.write(
  `${count} networks from ${start}: ${failed} wrong, ${unsolved} unsolved and said so, ${unreachable} with a demand out of reach, ` +
    `${(steps / count).toFixed(1)} steps each, worst residual ${worst.toExponential(1)}\n`,
);
process.exitCode = failed > 0 ? 1 : 0;
