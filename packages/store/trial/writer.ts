/** Child of the kill trial: commits numbered writes without end and says each number once it is committed. */
import { writeSync } from "node:fs";
import { engines } from "./engines.ts";

const [engine = "", folder = "", first = "0", bytes = "4000"] = process.argv.slice(2);
const open = engines[engine];
if (open === undefined) throw new Error(`unknown database ${engine}: use one of ${Object.keys(engines).join(", ")}`);
const started = performance.now();
const database = await open(folder);
// Written past Node's buffers: what the parent has read was committed before it was said.
const say = (line: string): void => {
  let rest = Buffer.from(`${line}\n`);
  while (rest.length > 0) {
    try {
      rest = rest.subarray(writeSync(1, rest));
    } catch (error) {
      // A pipe whose reader is busy; the write is committed, only its word waits.
      if ((error as { code?: string }).code !== "EAGAIN") throw error;
    }
  }
};
say(`open ${performance.now() - started}`);
const payload = "x".repeat(Number(bytes));
for (let number = Number(first); ; number++) {
  const before = performance.now();
  await database.write(number, payload);
  say(`kept ${number} ${performance.now() - before}`);
}
