import { Worker } from "node:worker_threads";

// The work keeps the main thread busy, so the clock on the screen runs in a thread of its own and writes to the
// terminal directly. Nothing is shown before a second has passed.
const clock = `
const { writeSync } = require("node:fs");
const { workerData } = require("node:worker_threads");
const start = Date.now();
setInterval(() => {
  const seconds = Math.floor((Date.now() - start) / 1000);
  if (seconds >= 1) writeSync(2, "\\r" + workerData + " (" + seconds + " s)\\u001b[K");
}, 250);
`;

/** Runs work and meanwhile tells a person at the terminal what goes on, once it has taken a second. */
export async function withProgress<Result>(what: string, work: () => Result | Promise<Result>): Promise<Result> {
  if (process.stderr.isTTY !== true) return work();
  const worker = new Worker(clock, { eval: true, workerData: what });
  worker.unref();
  try {
    return await work();
  } finally {
    await worker.terminate();
    process.stderr.write("\r\u001b[K");
  }
}
