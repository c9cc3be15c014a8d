import { routes } from "@tidewright/protocol";
import { ask } from "../api/ask.ts";
import { sourceOfDraft } from "../desk/recordSources.ts";
import { sendLeft } from "../desk/sendLeft.ts";
import { draftKey } from "../desk/typedDrafts.ts";
import { saveJson } from "../document/files.ts";
import { isOwnWork } from "../state/maker.ts";
import { presentMaker } from "../state/session.ts";
import { words } from "../words/useWords.ts";
import type { AnothersItem } from "./anothersWork.ts";
import { claimKey } from "./claim.ts";
import { presentKeeping } from "./keepingState.ts";
import { type LocalCopy, localCopies } from "./localCopies.ts";
import { newId } from "./newId.ts";
import { reasonOf } from "./reasonOf.ts";
import { sendOne } from "./sendWaiting.ts";

type DesignItem = Extract<AnothersItem, { readonly kind: "design" }>;
type TypedItem = Extract<AnothersItem, { readonly kind: "typed" }>;

/** What came of it: done, with where it is now; or not, with why, and nothing is changed. */
export type Decided =
  | { readonly done: true; readonly designId?: string }
  | { readonly done: false; readonly why: string };

const done: Decided = { done: true };
const not = (why: string): Decided => ({ done: false, why });

/** Sends another's work under the name of whoever is here now. */
export async function sendAsMine(item: AnothersItem): Promise<Decided> {
  return item.kind === "design" ? sendDesign(item) : sendTyped(item);
}

async function sendDesign(item: DesignItem): Promise<Decided> {
  const { kept, keeper } = presentKeeping();
  if (kept?.key === item.key && keeper !== undefined) {
    keeper.adopt();
    await keeper.written();
    return done;
  }
  return withCopy(item.key, async (copy) => {
    const copies = await localCopies();
    const mine: LocalCopy = { ...copy, makers: [presentMaker()] };
    await copies.write(mine);
    await sendOne(mine, copies);
    const after = await copies.read(item.key);
    // Where the server is out of reach it goes out later, as what it is by now: the work of whoever said so.
    return after === undefined || isOwnWork(after.makers, presentMaker())
      ? done
      : not(words().say("keeping.anothersBusy"));
  });
}

async function sendTyped(item: TypedItem): Promise<Decided> {
  const source = sourceOfDraft(item);
  if (source === undefined) return not(words().say("keeping.anothersSettings"));
  const me = presentMaker();
  const sent = await sendLeft([item.key], () => source, localStorage, me);
  const waiting = localStorage.getItem(item.key);
  if (sent > 0 || waiting === null) return done;
  const own = draftKey(source.key, me);
  // What of one's own waits there must not be written over.
  if (localStorage.getItem(own) !== null) return not(words().say("keeping.anothersBoth"));
  localStorage.setItem(own, waiting);
  localStorage.removeItem(item.key);
  return done;
}

/** Ids of variants that were asked for: asked again after silence, the same one is meant. */
const variants = new Map<string, string>();

/** Makes a variant of another's work, in the name of whoever is here now; the design itself stays as it is. */
export async function setApartAsMine(item: DesignItem): Promise<Decided> {
  const { kept, keeper } = presentKeeping();
  const here = kept?.key === item.key ? kept : undefined;
  if (here !== undefined) {
    const made = await makeVariant(item, here.outbox);
    // Left as it stands on the disk it would be told of again.
    if (made.done) {
      keeper?.stop();
      await keeper?.written();
      await (await localCopies()).drop(item.key);
    }
    return made;
  }
  return withCopy(item.key, async (copy) => {
    const made = await makeVariant(item, copy.outbox);
    if (made.done) await (await localCopies()).drop(item.key);
    return made;
  });
}

async function makeVariant(item: DesignItem, { acknowledged, present }: LocalCopy["outbox"]): Promise<Decided> {
  const id = variants.get(item.key) ?? newId();
  variants.set(item.key, id);
  const { say, instant } = words();
  const { head } = item.surroundings;
  const answer = await ask(routes.createVariant, {
    params: { designId: item.designId },
    body: {
      id,
      name: say("keeping.apartName", { name: head.name, at: instant(new Date()) }).slice(0, 200),
      revision: acknowledged.revision,
      document: present,
    },
  });
  // An answer that was lost on the way: the variant of this very id is there already.
  const known = !answer.ok && answer.reason === "refused" && answer.problem.status === 412;
  return answer.ok || known ? { done: true, designId: id } : not(reasonOf(answer));
}

/** Hands another's work out as a file; it stays where it waits. */
export async function saveAnothers(item: AnothersItem): Promise<Decided> {
  if (item.kind === "typed") {
    saveJson(item.pending, String(item.base["name"] ?? item.record));
    return done;
  }
  const { kept } = presentKeeping();
  const outbox = kept?.key === item.key ? kept.outbox : (await (await localCopies()).read(item.key))?.outbox;
  if (outbox === undefined) return not(words().say("keeping.anothersGone"));
  saveJson(outbox.present, outbox.present.name);
  return done;
}

async function withCopy(key: string, work: (copy: LocalCopy) => Promise<Decided>): Promise<Decided> {
  const claim = await claimKey(key, 0);
  if (claim === undefined) return not(words().say("keeping.anothersBusy"));
  try {
    const copy = await (await localCopies()).read(key);
    return copy === undefined ? not(words().say("keeping.anothersGone")) : await work(copy);
  } finally {
    claim.release();
  }
}
