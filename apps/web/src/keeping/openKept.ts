import type { Design } from "@tidewright/design";
import { sameJson, startHistory } from "@tidewright/design";
import { awaitPumpsOf } from "../catalogue/readKept.ts";
import {
  isHandBusy,
  layFirst,
  layTaken,
  presentHistory,
  say as sayOnBench,
  startBench,
  watchHistory,
} from "../state/bench.ts";
import { isOwnWork } from "../state/maker.ts";
import { makerKnown, presentMaker, signedOut } from "../state/session.ts";
import { words } from "../words/useWords.ts";
import { lookForAnothers } from "./anothersWork.ts";
import { onChange } from "./changes.ts";
import { type Claim, claimCopy, rememberCopy } from "./claim.ts";
import { designServer } from "./designServer.ts";
import { joinDesigns } from "./joinDesigns.ts";
import { type KeeperWorld, keep } from "./keeper.ts";
import { presentKeeping, tellKeeping } from "./keepingState.ts";
import type { Surroundings } from "./localCopies.ts";
import { type LocalCopies, type LocalCopy, localCopies } from "./localCopies.ts";
import { newId } from "./newId.ts";
import { type OutboxMeans, type Stop, startOutbox, type Theirs } from "./outbox.ts";
import { partsAt, partsChanged } from "./partsChanged.ts";

/** Why a design could not be opened. */
export type NotOpened = { readonly why: "unreachable" } | Stop;

/** Lays a kept design on the table and keeps it from then on: at once from this device where it was open before, else from
 *  the server.
 *  -> undefined once it lies there, or why it does not */
export async function openKept(designId: string): Promise<NotOpened | undefined> {
  const copies = await localCopies();
  const [known] = await Promise.all([within(copies.keysOf(designId), []), makerKnown()]);
  // What another has left here unsent is theirs: it stays as it is, and the design is opened as the server has it.
  const mine = known.filter(({ makers }) => isOwnWork(makers, presentMaker()));
  const unsentFirst = [...mine].sort((a, b) => Number(b.unsent) - Number(a.unsent)).map(({ key }) => key);
  const claim = await claimCopy(designId, unsentFirst);
  const copy = (await within(copies.read(claim.key), undefined)) ?? (await fetchCopy(designId, claim.key));
  if ("why" in copy) {
    claim.release();
    return copy;
  }
  await awaitPumpsOf(copy.history.present);
  layFirst(copy.history);
  startBench();
  const keeper = keep(copy, benchWorld(copies, claim.key));
  held = claim;
  // The last step of a slider waits a moment for the next one; a page that goes, or may be ended unseen, does not.
  addEventListener("pagehide", flushLast);
  document.addEventListener("visibilitychange", flush);
  tellKeeping({ keeper, durable: copies.durable, apart: undefined, theirs: undefined });
  return undefined;
}

/** How long this device may take to read what it holds before the server is asked instead [ms]. */
const readPatience = 4000;

function within<Value>(read: Promise<Value>, otherwise: Value): Promise<Value> {
  return Promise.race([read, new Promise<Value>((done) => setTimeout(() => done(otherwise), readPatience))]);
}

const flush = () => void presentKeeping().keeper?.written();

/** A page that goes takes along what stands in a field and was not confirmed: leaving the field confirms it. */
const flushLast = () => {
  if (document.activeElement instanceof HTMLInputElement) document.activeElement.blur();
  flush();
};

let held: Claim | undefined;

/** Ends the keeping of whatever is on the table; what waits stays on this device. */
export function closeKept(): void {
  const { keeper } = presentKeeping();
  keeper?.stop();
  // Another page may have the copy once everything is in it.
  const claim = held;
  held = undefined;
  void keeper?.written().finally(() => claim?.release());
  tellKeeping({ keeper: undefined, kept: undefined, apart: undefined, theirs: undefined, signingIn: false });
}

async function fetchCopy(designId: string, key: string): Promise<LocalCopy | NotOpened> {
  const opened = await designServer.open(designId);
  if (!opened.ok) {
    if (opened.event.kind === "unreachable") return { why: "unreachable" };
    if (opened.event.stop.why === "signIn") signedOut();
    return opened.event.stop;
  }
  const { head, latest } = opened;
  const surroundings: Surroundings = { head, job: undefined, siblings: [head] };
  return {
    key,
    designId,
    surroundings,
    outbox: startOutbox({ revision: latest.revision, document: latest.document, mark: latest.mark }),
    makers: [],
    history: startHistory(latest.document),
  };
}

/** What an outbox of designs needs of this page. */
export function designMeans(nameOf: () => string): OutboxMeans<Design> {
  return {
    newId,
    random: Math.random,
    same: sameJson,
    merge: joinDesigns,
    nameApart() {
      const { say, instant } = words();
      return say("keeping.apartName", { name: nameOf(), at: instant(new Date()) }).slice(0, 200);
    },
  };
}

function benchWorld(copies: LocalCopies, key: string): KeeperWorld {
  return {
    server: designServer,
    copies,
    means: designMeans(() => presentKeeping().kept?.surroundings.head.name ?? ""),
    table: { history: presentHistory, lay: layTaken, watch: watchHistory, busy: isHandBusy },
    maker: presentMaker,
    labelOf: ({ author }) => words().say("keeping.theirsStep", { author: authorWords(author) }),
    report(kept) {
      if (kept.outbox.stop?.why === "signIn" && presentKeeping().kept?.outbox.stop?.why !== "signIn") signedOut();
      // Another's work lies before somebody who has just signed in: they should know before they draw on.
      const fresh = kept.outbox.stop?.why === "another" && presentKeeping().kept?.outbox.stop?.why !== "another";
      tellKeeping({ kept });
      if (fresh) void lookForAnothers({ ask: true });
    },
    takenIn(theirs, before) {
      const text = theirsLine(theirs, before);
      tellKeeping({ theirs: text });
      sayOnBench(text);
    },
    setApart(from, parcel) {
      history.replaceState(null, "", `?design=${encodeURIComponent(parcel.designId)}`);
      rememberCopy(parcel.designId, key);
      tellKeeping({ apart: { from, parcel } });
    },
    onChange,
  };
}

/** Who changed what, in a line. */
function theirsLine(theirs: Theirs<Design>, before: Design): string {
  const { say } = words();
  const { names, more } = partsChanged(before, theirs.document);
  return say("keeping.theirs", {
    author: authorWords(theirs.author),
    parts: more ? say("keeping.andMore", { parts: names }) : names,
  });
}

/** Where two people were at odds, in words. */
export function conflictParts(design: Design, paths: readonly string[]): string {
  const { names, more } = partsAt(design, paths);
  return more ? words().say("keeping.andMore", { parts: names }) : names;
}

/** The name of whoever did something; on the shop's own machine nobody has one. */
export function authorWords(author: string): string {
  return author.trim() === "" ? words().say("keeping.somebody") : author;
}
