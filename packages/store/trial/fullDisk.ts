/** Fills a small disk through a store until it is full, then looks whether everything acknowledged is there.
 *
 *  mount -t tmpfs -o size=8m tmpfs FOLDER
 *  npx tsx --conditions=source packages/store/trial/fullDisk.ts FOLDER/data
 *
 *  A limit on the size of files (ulimit -f) does as well. */
import { rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { openStore } from "../src/index.ts";
import { trialDocument } from "./trialDocument.ts";

const folder = process.argv[2];
if (folder === undefined) throw new Error("name a folder on a small disk");
// A file size limit sends this signal, which would end the program before the database can answer.
process.on("SIGXFSZ", () => undefined);
const by = { author: "trial", at: "2026-01-01T00:00:00.000Z" };
const ballast = join(dirname(folder), "ballast");
try {
  writeFileSync(ballast, Buffer.alloc(1_000_000));
} catch (error) {
  console.log(`no ballast: ${String(error)}`);
}
const store = await openStore(folder);
await store.jobs.create({ id: "j", name: "J" }, by);
await store.designs.create({ id: "d", jobId: "j", name: "D", document: trialDocument(1) }, by);
let revision = 1;
const refusals = new Map<string, number>();
for (let attempt = 0; attempt < 5000 && [...refusals.values()].reduce((a, b) => a + b, 0) < 50; attempt++) {
  try {
    const outcome = await store.designs.append("d", revision, trialDocument(revision + 1), by);
    if (outcome.ok) revision = outcome.value.number;
  } catch (error) {
    const told = `${(error as { code?: string }).code}: ${(error as Error).message}`;
    refusals.set(told, (refusals.get(told) ?? 0) + 1);
  }
}
const backup = await store.backup(join(dirname(folder), "backup.db")).then(
  ({ bytes }) => `backup of ${bytes} bytes`,
  (error: Error) => `backup refused: ${(error as { code?: string }).code}: ${error.message}`,
);
const seenWhileFull = (await store.designs.history("d", { limit: 1_000_000 })).length;
await store.close();
const again = await openStore(folder).catch((error: Error) => error);
const openedWhileFull = again instanceof Error ? again.message : "opens while the disk is full";
if (!(again instanceof Error)) await again.close();
rmSync(ballast, { force: true });
const roomier = await openStore(folder);
const history = await roomier.designs.history("d", { limit: 1_000_000 });
let wrong = 0;
for (const { number } of history) {
  const kept = await roomier.designs.revision("d", number);
  if (JSON.stringify(kept?.document) !== JSON.stringify(trialDocument(number))) wrong++;
}
const more = await roomier.designs.append("d", revision, trialDocument(revision + 1), by).then(
  ({ ok }) => (ok ? "goes on with more room" : "CONFLICT"),
  (error: Error) => `cannot go on: ${error.message}`,
);
await roomier.close();
console.log(
  JSON.stringify(
    {
      acknowledged: revision,
      kept: history.length,
      seenWhileFull,
      wrong,
      refusals: [...refusals],
      backup,
      openedWhileFull,
      more,
    },
    undefined,
    2,
  ),
);
if (history.length !== revision || wrong > 0) process.exitCode = 1;
