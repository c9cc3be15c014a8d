/** Child of the durability runs: adds revisions to a design without end, and says each once the store has kept it. */
import { openStore } from "../src/index.ts";
import { sayAtOnce } from "./sayAtOnce.ts";
import { trialDocument } from "./trialDocument.ts";

const [target = "", designId = ""] = process.argv.slice(2);
const started = performance.now();
const store = await openStore(target);
const head = await store.designs.find(designId);
if (!head) throw new Error(`no design ${designId}`);
sayAtOnce(`open ${performance.now() - started}`);
for (let revision = head.revision; ; revision++) {
  const by = { author: "editor", at: new Date().toISOString() };
  const before = performance.now();
  const outcome = await store.designs.append(designId, revision, trialDocument(revision + 1), by, {
    editId: `edit-${revision + 1}`,
  });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome));
  sayAtOnce(`kept ${outcome.value.number} ${performance.now() - before}`);
}
