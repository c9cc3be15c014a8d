import { namedInWords, readStart, type StartAnswers } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import type { IntakeAnswer, Link } from "@tidewright/protocol";
import { loadWords } from "@tidewright/words";
import type { MadeDesign, MakeDesign } from "../compute/firstDesignOn.ts";
import { noSuchLink } from "./customerLinks.ts";
import { type Doors, instantOf } from "./doors.ts";
import { kept } from "./kept.ts";
import { badInput, Refused, tooMany } from "./refusal.ts";

/** Who an intake is from, in the history: the customer's own name would have to be erased everywhere. */
const author = "customer's intake";
/** What is being taken in, by link. */
const underWay = new WeakMap<Doors, Map<string, UnderWay>>();
interface UnderWay {
  readonly draft: string | undefined;
  readonly done: Promise<void>;
}

/** Takes a customer's answers in: a customer, a job to review, a first design, and the answers as they were given; then
 *  the link closes. Ids come from the link, so that a submission cut short and sent again makes nothing twice.
 *  doors; open link that was found by its secret; answer as checked by the protocol; makeDesign; sender; draft its id,
 *  where the sender gave it one
 *  Throws: `Refused` 422 with every problem of the answers (the link stays open), 429, 404 where another draft has come
 *  through the link, 503 where too much is computed already (nothing is kept, and the link stays open).
 *  Valid: where no design can be made of sound answers the job is kept without one, and says so. */
export async function takeIntake(
  doors: Doors,
  link: Link,
  answer: IntakeAnswer,
  makeDesign: MakeDesign,
  sender: string,
  draft?: string,
): Promise<void> {
  const wait = doors.limits.intake.attempt(sender, doors.now());
  if (wait > 0) throw tooMany(wait, "too many answers came from this address");
  const started = readStart(answer.answers);
  if (!started.ok) throw badInput(started.problems.map((each) => ({ ...each, path: `/answers${each.path}` })));
  const busy = underWay.get(doors) ?? new Map<string, UnderWay>();
  underWay.set(doors, busy);
  for (let other = busy.get(link.id); other !== undefined; other = busy.get(link.id)) {
    // The same draft sent twice at once is taken once, and both are told the same.
    if (draft !== undefined && other.draft === draft) return other.done;
    // Another sender's: nothing of how it ends is told, but where it is refused the link is still open.
    if (
      await other.done.then(
        () => true,
        () => false,
      )
    )
      throw noSuchLink();
  }
  const done = keepIntake(doors, link, answer, started.answers, makeDesign, draft).finally(() => busy.delete(link.id));
  busy.set(link.id, { draft, done });
  return done;
}

async function keepIntake(
  doors: Doors,
  link: Link,
  answer: IntakeAnswer,
  answers: StartAnswers,
  makeDesign: MakeDesign,
  draft: string | undefined,
): Promise<void> {
  const by = { author, at: instantOf(doors) };
  const made = await designOf(answers, makeDesign);
  const { store } = doors;
  const id = link.id;
  // Names that stay are in the language in which the form was filled in.
  const { say } = await loadWords(answer.language ?? "en");
  // From here on something is kept: what another sender sends must not get mixed with it.
  const given = await store.links.giveTo(id, draft ?? null);
  if (given === "refused") throw noSuchLink();
  // Taken in while this was on its way, perhaps by another server of the same database.
  if (given === "answered") return;
  const person = { name: answer.name, contact: answer.contact, notes: answer.notes };
  const customer = keptOnce(await store.customers.create({ id, ...person }, by));
  const remark = "design" in made ? [] : [say("start.intake.noDesign", { why: made.why })];
  const job = keptOnce(
    await store.jobs.create(
      {
        id,
        name: answer.name,
        customerId: customer.id,
        stage: "intake",
        notes: [answer.notes, ...remark].filter((each) => each !== "").join("\n\n"),
      },
      by,
    ),
  );
  if ("design" in made) {
    keptOnce(
      await store.designs.create(
        { id, jobId: job.id, name: say("start.names.design"), document: namedInWords(made.design as Design, { say }) },
        by,
      ),
    );
  }
  if (!(await store.files.list(job.id)).some((each) => each.kind === "intake")) {
    const told = {
      answers,
      ...("design" in made ? { defaults: made.defaults, notes: made.notes } : {}),
    };
    const bytes = new TextEncoder().encode(JSON.stringify(told, undefined, 2));
    const file = {
      jobId: job.id,
      kind: "intake",
      name: say("start.intake.file"),
      contentType: "application/json",
    } as const;
    kept(await store.files.put({ ...file, bytes }, by));
  }
  kept(await store.links.revoke(link.id, by));
}

/** What is kept under an id, be it from a first try that was cut short. */
function keptOnce<Value>(outcome: Parameters<typeof kept<Value, Value>>[0]): Value {
  return !outcome.ok && outcome.reason === "conflict" ? outcome.current : kept(outcome);
}

async function designOf(answers: StartAnswers, makeDesign: MakeDesign): Promise<MadeDesign> {
  try {
    return await makeDesign(answers);
  } catch (error) {
    // The customer may send it again in a moment, and a design is better than none.
    if (error instanceof Refused) throw error;
    // A fault of ours must not cost the customer what they wrote; the job tells of it.
    return { why: error instanceof Error ? error.message : String(error) };
  }
}
