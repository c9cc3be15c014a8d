import { isDeepStrictEqual } from "node:util";
import type { Revision, RevisionEntry } from "@tidewright/protocol";
import { type Acknowledged, askServer } from "./client.ts";

/** Returns the whole history of a design, oldest first, as the server tells it in pages. */
async function wholeHistory(address: string, designId: string): Promise<RevisionEntry[]> {
  const all: RevisionEntry[] = [];
  for (let before: number | undefined; ; before = all.at(-1)!.number) {
    const query = `limit=500${before === undefined ? "" : `&before=${before}`}`;
    const page = await askServer<{ items: RevisionEntry[] }>(
      address,
      "GET",
      `api/designs/${designId}/revisions?${query}`,
    );
    all.push(...page.items);
    if (page.items.length < 500) return all.reverse();
  }
}

/** Returns what is wrong with a design: gaps of its history, parents that are not there, edits kept twice, and
 *  acknowledged edits that are missing. */
export async function inspectHistory(
  address: string,
  designId: string,
  acknowledged: readonly Acknowledged[],
): Promise<string[]> {
  const history = await wholeHistory(address, designId);
  const { head } = await askServer<{ head: { revision: number } }>(address, "GET", `api/designs/${designId}`);
  const wrong: string[] = [];
  if (head.revision !== history.length) wrong.push(`${designId}: head at ${head.revision} of ${history.length}`);
  const edits = new Map<string, number>();
  history.forEach(({ number, parent, editId }, index) => {
    if (number !== index + 1) wrong.push(`${designId}: revision ${number} in place ${index + 1}`);
    if (parent !== (index === 0 ? null : index)) wrong.push(`${designId}: parent of ${number} is ${parent}`);
    if (editId === null) return;
    if (edits.has(editId)) wrong.push(`${designId}: edit ${editId} is kept twice`);
    edits.set(editId, number);
  });
  for (const { number, editId } of acknowledged)
    if (edits.get(editId) !== number) wrong.push(`${designId}: acknowledged revision ${number} (${editId}) is lost`);
  return wrong;
}

/** Returns what is wrong with the documents of acknowledged revisions. */
export async function inspectDocuments(address: string, acknowledged: readonly Acknowledged[]): Promise<string[]> {
  const wrong: string[] = [];
  for (const { designId, number, document } of acknowledged) {
    const kept = await askServer<Revision>(address, "GET", `api/designs/${designId}/revisions/${number}`);
    if (!isDeepStrictEqual(kept.document, document)) wrong.push(`${designId}: document of ${number} has changed`);
  }
  return wrong;
}

/** Whether the event stream tells of a change that is made while it is listened to. */
export async function streamTells(address: string, subject: string, change: () => Promise<unknown>): Promise<boolean> {
  const ended = new AbortController();
  const timer = setTimeout(() => ended.abort(), 20_000);
  try {
    const response = await fetch(new URL("api/events", address), { signal: ended.signal });
    const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader();
    let heard = (await reader.read()).value ?? "";
    await change();
    while (!heard.includes(subject)) {
      const { value, done } = await reader.read();
      if (done) return false;
      heard += value;
    }
    return true;
  } catch {
    return false;
  } finally {
    clearTimeout(timer);
    ended.abort();
  }
}
