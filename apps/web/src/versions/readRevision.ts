import type { Design } from "@tidewright/design";
import { type DesignHead, type RevisionEntry, routes } from "@tidewright/protocol";
import { ask } from "../api/ask.ts";
import { readKept } from "../catalogue/readKept.ts";
import { reasonOf } from "../keeping/reasonOf.ts";
import type { RevisionName } from "../state/address.ts";

/** One version with its document as this page reads it, or why it cannot be shown. */
export type RevisionRead =
  | { readonly ok: true; readonly entry: RevisionEntry; readonly design: Design }
  | { readonly ok: false; readonly why: string; readonly signIn: boolean };

/** Reads one version of a design, or its latest, and brings its document up to the present. */
export async function readRevision({ designId, revision }: RevisionName): Promise<RevisionRead> {
  const answer =
    revision === "latest"
      ? await latest(designId)
      : await ask(routes.revision, { params: { designId, number: String(revision) } });
  if (!answer.ok)
    return {
      ok: false,
      why: reasonOf(answer),
      signIn: answer.reason === "refused" && answer.problem.status === 401,
    };
  const { document, ...entry } = answer.value;
  const reading = await readKept(document);
  if (reading.ok) return { ok: true, entry, design: reading.design };
  const [first] = reading.problems;
  return { ok: false, why: `${first?.path ?? ""}: ${first?.message ?? ""}`, signIn: false };
}

async function latest(designId: string) {
  const answer = await ask(routes.design, { params: { designId } });
  return answer.ok ? { ...answer, value: answer.value.latest } : answer;
}

/** Reads the head of a design; undefined where it cannot be had. */
export async function readHead(designId: string): Promise<DesignHead | undefined> {
  const answer = await ask(routes.design, { params: { designId } });
  return answer.ok ? answer.value.head : undefined;
}
