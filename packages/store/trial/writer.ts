/** Child of the kill trial: commits numbered writes without end and says each number once it is committed. */
import { engines } from "./engines.ts";
import { sayAtOnce } from "./sayAtOnce.ts";

const [engine = "", folder = "", first = "0", bytes = "4000"] = process.argv.slice(2);
const open = engines[engine];
if (open === undefined) throw new Error(`unknown database ${engine}: use one of ${Object.keys(engines).join(", ")}`);
const started = performance.now();
const database = await open(folder);
sayAtOnce(`open ${performance.now() - started}`);
const payload = "x".repeat(Number(bytes));
for (let number = Number(first); ; number++) {
  const before = performance.now();
  await database.write(number, payload);
  sayAtOnce(`kept ${number} ${performance.now() - before}`);
}
