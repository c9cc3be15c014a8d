import { checkKeptDesign, type Design } from "@tidewright/design";
import { type DesignHead, type Job, type Revision, revision, routes } from "@tidewright/protocol";
import { type Answered, ask } from "../api/ask.ts";
import { currentCatalogue } from "../catalogue/currentCatalogue.ts";
import { problemWords } from "../words/problemWords.ts";
import { exactWords, refusedTitle } from "../words/refusedWords.ts";
import { words } from "../words/useWords.ts";
import type { ApartParcel, OutboxEvent, RevisionParcel, Stop, Theirs } from "./outbox.ts";

/** A design as the server has it, or why not. */
export type Opened =
  | { readonly ok: true; readonly head: DesignHead; readonly latest: Theirs<Design> }
  | { readonly ok: false; readonly event: Extract<OutboxEvent<Design>, { kind: "unreachable" | "stopped" }> };

/** What a keeper asks of the server. */
export interface DesignServer {
  append(designId: string, parcel: RevisionParcel<Design>): Promise<OutboxEvent<Design>>;
  setApart(designId: string, parcel: ApartParcel<Design>): Promise<OutboxEvent<Design>>;
  open(designId: string): Promise<Opened>;
  surroundings(head: DesignHead): Promise<{ readonly job?: Job; readonly siblings?: readonly DesignHead[] }>;
}

/** The server of this page, asked over HTTP. */
export const designServer: DesignServer = {
  async append(designId, parcel) {
    const answer = await ask(routes.appendRevision, {
      params: { designId },
      ifMatch: parcel.base,
      body: {
        document: parcel.document,
        editId: parcel.editId,
        ...(parcel.madeFrom === undefined ? {} : { madeFrom: parcel.madeFrom }),
      },
    });
    if (answer.ok) return { kind: "accepted", revision: answer.value.number, mark: markOf(answer.value) };
    if (answer.reason === "refused" && answer.problem.status === 412) {
      const current = revision.safeParse(answer.problem.current);
      const opened = current.success ? undefined : await designServer.open(designId);
      if (opened?.ok === false) return opened.event;
      const event = current.success ? theirsEvent(current.data) : ({ kind: "theirs", theirs: opened!.latest } as const);
      return event.kind === "theirs" ? sameLine(designId, parcel, event) : event;
    }
    return failed(answer);
  },
  async setApart(designId, parcel) {
    const answer = await ask(routes.createVariant, {
      params: { designId },
      body: { id: parcel.designId, name: parcel.name, revision: parcel.base, document: parcel.document },
    });
    // An answer that was lost on the way: the variant of this very id is there already.
    const known = !answer.ok && answer.reason === "refused" && answer.problem.status === 412;
    if (answer.ok) return { kind: "accepted", revision: 1, mark: answer.value.createdAt };
    return known ? { kind: "accepted", revision: 1 } : failed(answer);
  },
  async open(designId) {
    const answer = await ask(routes.design, { params: { designId } });
    if (!answer.ok) return { ok: false, event: failed(answer) };
    const event = theirsEvent(answer.value.latest);
    return event.kind === "theirs" ? { ok: true, head: answer.value.head, latest: event.theirs } : { ok: false, event };
  },
  async surroundings({ jobId }) {
    const [job, siblings] = await Promise.all([
      ask(routes.job, { params: { jobId } }),
      ask(routes.designsOfJob, { params: { jobId } }),
    ]);
    return {
      ...(job.ok ? { job: job.value } : {}),
      ...(siblings.ok ? { siblings: siblings.value.items } : {}),
    };
  },
};

/** Tells a revision from another of the same number: the edit it came from, or its instant where it came from none. */
const markOf = ({ editId, at }: Pick<Revision, "editId" | "at">): string => editId ?? at;

type TheirsEvent = Extract<OutboxEvent<Design>, { kind: "theirs" }>;

/** Says of what somebody else left whether it was made from what a parcel was made from, or whether that is lost to the
 *  server, as after a backup was put back. */
async function sameLine(
  designId: string,
  { base, madeFrom }: RevisionParcel<Design>,
  event: TheirsEvent,
): Promise<OutboxEvent<Design>> {
  const { theirs } = event;
  if (madeFrom === undefined || theirs.revision < base) return event;
  if (theirs.revision === base) return { ...event, parted: theirs.mark !== madeFrom };
  const answer = await ask(routes.revision, { params: { designId, number: String(base) } });
  if (answer.ok) return { ...event, parted: markOf(answer.value) !== madeFrom };
  // Not knowing is no ground for joining: the whole is asked again.
  return answer.reason === "refused" && answer.problem.status === 404 ? { ...event, parted: true } : failed(answer);
}

type Failure = Extract<OutboxEvent<Design>, { kind: "unreachable" | "stopped" }>;

/** What was read is brought up to the document's present version; what this page cannot read stops it rather than harms. */
function theirsEvent(read: Revision): TheirsEvent | Failure {
  // A pump that this page has not heard of comes in yet, and one that is gone is told of as a finding; neither stops anything.
  const reading = checkKeptDesign(read.document, currentCatalogue());
  if (reading.ok)
    return {
      kind: "theirs",
      theirs: {
        revision: read.number,
        mark: markOf(read),
        document: reading.design,
        author: read.author,
        editId: read.editId,
      },
    };
  const [first] = reading.problems;
  const { problem, fix } = problemWords(first ?? { message: "", fix: "" });
  return stopped({ why: "refused", title: `${first?.path ?? ""}: ${problem}`, detail: fix });
}

function failed(answer: Extract<Answered<unknown>, { ok: false }>): Failure {
  if (answer.reason === "unreachable") return { kind: "unreachable" };
  const { status } = answer.problem;
  const title = refusedTitle(answer.problem, words());
  if (status === 401) return stopped({ why: "signIn" });
  if (status === 403) return stopped({ why: "notAllowed" });
  if (status === 404) return stopped({ why: "gone" });
  // Too many at once, a full disk, a fault of the server's: it may be well again later.
  if (status === 429 || status >= 500) return { kind: "unreachable", retryAfter: 15_000, trouble: title };
  return stopped({ why: "refused", title, detail: exactWords(answer.problem, words(), title) });
}

const stopped = (stop: Stop): Failure => ({ kind: "stopped", stop });
