import { isDeepStrictEqual } from "node:util";
import type { DesignHead, Revision, RevisionEntry } from "@tidewright/protocol";
import { type CellChange, cellChanges, cellsOf } from "./cells.ts";
import type { TrialEditor } from "./editor.ts";

/** Asks the server over a whole line. */
export type Ask = <Value>(path: string) => Promise<Value>;

/** Every revision of a job's designs with its document, by design. */
export type Kept = ReadonlyMap<string, { readonly head: DesignHead; readonly revisions: readonly Revision[] }>;

/** Reads everything that the server keeps of a job. */
export async function readKept(ask: Ask, jobId: string): Promise<Kept> {
  const kept = new Map<string, { head: DesignHead; revisions: Revision[] }>();
  for (const head of (await ask<{ items: DesignHead[] }>(`api/jobs/${jobId}/designs`)).items) {
    const entries: RevisionEntry[] = [];
    for (;;) {
      const before = entries.length === 0 ? "" : `&before=${entries.at(-1)!.number}`;
      const { items } = await ask<{ items: RevisionEntry[] }>(`api/designs/${head.id}/revisions?limit=500${before}`);
      entries.push(...items);
      if (items.length < 500) break;
    }
    const revisions: Revision[] = [];
    for (const { number } of entries.reverse())
      revisions.push(await ask<Revision>(`api/designs/${head.id}/revisions/${number}`));
    kept.set(head.id, { head, revisions });
  }
  return kept;
}

/** Returns all that is wrong with what is kept of one job, given those who worked on it:
 *  - a history with gaps, or an edit in it twice;
 *  - an acknowledged edit that is not there as it was sent;
 *  - a value that somebody made and that is in no revision, unless its maker replaced it before it was sent;
 *  - a value replaced by somebody who had not seen it. */
export function judge(kept: Kept, editors: readonly TrialEditor[]): string[] {
  const wrong: string[] = [];
  const everMade = new Set<string>();
  for (const [designId, { head, revisions }] of kept) {
    const seen = new Set<string>();
    if (head.revision !== revisions.length) wrong.push(`${designId}: head ${head.revision} of ${revisions.length}`);
    revisions.forEach((revision, index) => {
      const { number, parent, editId, document } = revision;
      if (number !== index + 1 || parent !== (index === 0 ? null : index)) wrong.push(`${designId}: gap at ${number}`);
      if (editId !== null && seen.has(editId)) wrong.push(`${designId}: edit ${editId} is kept twice`);
      if (editId !== null) seen.add(editId);
      for (const [cell, value] of cellsOf(document as object)) everMade.add(`${cell}=${value}`);
      const from =
        index > 0
          ? revisions[index - 1]
          : head.variantOf && kept.get(head.variantOf.designId)?.revisions[head.variantOf.revision - 1];
      // The first revision of the trial's own design is nobody's edit.
      if (!from) return;
      const author = editors.find(({ sent }) => sent.has(editId ?? designId));
      if (author === undefined) wrong.push(`${designId}: nobody made revision ${number}`);
      else
        for (const change of cellChanges(from.document as object, document as object))
          if (!meant(author.made, change))
            wrong.push(`${designId}: revision ${number} replaced ${JSON.stringify(change)} unseen`);
    });
  }
  editors.forEach((editor, index) => {
    for (const { designId, revision, editId, document } of editor.acknowledged) {
      const there = kept.get(designId)?.revisions[revision - 1];
      if (!there || there.editId !== (editId ?? null) || !isDeepStrictEqual(there.document, document))
        wrong.push(`${designId}: revision ${revision}, acknowledged to editor ${index}, is not there as it was sent`);
    }
    editor.made.forEach(({ cell, now }, place) => {
      if (now === undefined || everMade.has(`${cell}=${now}`)) return;
      const replaced = editor.made.slice(place + 1).some((later) => later.cell === cell && later.was === now);
      if (!replaced) wrong.push(`editor ${index}: ${cell} = ${now} is nowhere`);
    });
  });
  return wrong;
}

/** Whether a change between two revisions is what its author's hand did, in one step or several: each began with what the
 *  step before left. */
function meant(made: readonly CellChange[], { cell, was, now }: CellChange): boolean {
  const steps = made.filter((each) => each.cell === cell);
  const reached = new Set([was]);
  for (let grown = -1; grown !== reached.size; ) {
    grown = reached.size;
    for (const step of steps) if (reached.has(step.was)) reached.add(step.now);
  }
  return reached.has(now) && steps.length > 0;
}
