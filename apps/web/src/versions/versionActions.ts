import type { RevisionEntry } from "@tidewright/protocol";
import { sayAgain } from "@tidewright/words";
import { presentDesign, say, takeOver } from "../state/bench.ts";
import { words } from "../words/useWords.ts";
import { readRevision } from "./readRevision.ts";
import { showVersions } from "./versionsState.ts";
import { versionTitle } from "./versionTitle.ts";

/** Lays a version over the drawing to look at, or takes it away again. */
export async function lookAt(entry: RevisionEntry, looked: boolean): Promise<void> {
  if (looked) {
    showVersions({ looking: undefined });
    return;
  }
  const read = await readRevision({ designId: entry.designId, revision: entry.number });
  if (read.ok) showVersions({ looking: { entry: { ...read.entry, name: entry.name }, design: read.design } });
  else say(words().say("keeping.versionFailed", { why: read.why }));
}

/** Makes the document of a version the present one, as a step that can be taken back like any other. */
export async function goBackTo(entry: RevisionEntry): Promise<void> {
  const read = await readRevision({ designId: entry.designId, revision: entry.number });
  if (!read.ok) {
    say(words().say("keeping.versionFailed", { why: read.why }));
    return;
  }
  const version = versionTitle(entry, words());
  const problem = takeOver(presentDesign(), read.design, words().say("keeping.versionBackStep", { version }));
  showVersions({ looking: undefined });
  say(problem === undefined ? words().say("keeping.versionBackDone", { version }) : sayAgain(problem.message, words()));
}
