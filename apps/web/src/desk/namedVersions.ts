import { type RevisionEntry, routes } from "@tidewright/protocol";
import { type Answered, ask } from "../api/ask.ts";

const pageSize = 500;
/** Every step of an edit is a revision, so names lie far apart; ten thousand steps are looked through. */
const mostPages = 20;

/** Asks for one page of a design's history, newest first. */
type Page = (before: number | undefined) => Promise<Answered<{ readonly items: readonly RevisionEntry[] }>>;

/** Returns the versions of a design that somebody named, newest first.
 *  designId   page how a page is asked for   -> answer with the entries that have a name */
export async function namedVersions(
  designId: string,
  page: Page = (before) =>
    ask(routes.revisions, {
      params: { designId },
      query: { limit: pageSize, ...(before === undefined ? {} : { before }) },
    }),
): Promise<Answered<readonly RevisionEntry[]>> {
  const named: RevisionEntry[] = [];
  let before: number | undefined;
  for (let pages = 0; pages < mostPages; pages += 1) {
    const answer = await page(before);
    if (!answer.ok) return answer;
    const { items } = answer.value;
    named.push(...items.filter(({ name }) => name !== null));
    before = items.at(-1)?.number;
    if (items.length < pageSize || before === undefined || before <= 1) break;
  }
  return { ok: true, value: named, version: undefined };
}
