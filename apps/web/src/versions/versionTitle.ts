import type { RevisionEntry } from "@tidewright/protocol";
import type { Words } from "@tidewright/words";

/** Returns what a version is called: its name, else its number. */
export function versionTitle({ name, number }: Pick<RevisionEntry, "name" | "number">, { say }: Words): string {
  return name ?? say("keeping.versionNumber", { number });
}
