import { pumpRefs } from "@tidewright/design";
import { type IntakeInvitation, type Link, type SharedDesign, type SharedPump, sharedPump } from "@tidewright/protocol";
import { shopPumps } from "../routes/shopCatalogue.ts";
import { type Doors, instantOf } from "./doors.ts";
import { kept } from "./kept.ts";
import { notThere } from "./refusal.ts";

/** One sentence for every link that opens nothing: unknown, expired, revoked or of another kind are not to be told apart. */
export const noSuchLink = () => notThere("this link opens nothing; ask the shop for a new one");

/** How often the opening of one link is written down [ms]: a page that is left open asks again and again. */
const auditEvery = 60 * 60 * 1000;
const mostRemembered = 10_000;
const lastOpened = new WeakMap<Doors, Map<string, number>>();

/** Makes a link for a customer; its secret is told this once.
 *  doors; given what it opens and for how many days; author   -> link and secret
 *  Throws: `Refused` 404 for a design or revision that is not there. */
export async function createLink(
  doors: Doors,
  given:
    | {
        readonly kind: "view";
        readonly designId: string;
        readonly revision?: number | undefined;
        readonly days: number;
      }
    | { readonly kind: "intake"; readonly days: number },
  author: string,
): Promise<{ readonly link: Link; readonly token: string }> {
  const expiresAt = new Date(doors.now() + given.days * 86_400_000).toISOString();
  const opens =
    given.kind === "view" ? { designId: given.designId, revision: given.revision ?? null } : { designId: null };
  return kept(
    await doors.store.links.create({ kind: given.kind, expiresAt, ...opens }, { author, at: instantOf(doors) }),
  );
}

/** Returns what the bearer of a link sees: one design of one job, and whose shop it is. Nothing is read by an id that the
 *  bearer brings, so there is nothing to be reached by trying ids.
 *  doors; link that was found by its secret   -> SharedDesign; notes of the document stay in the shop
 *  Throws: `Refused` 404 where the design is gone. */
export async function sharedDesignOf(doors: Doors, link: Link): Promise<SharedDesign> {
  if (link.designId === null) throw noSuchLink();
  const head = await doors.store.designs.find(link.designId);
  const revision =
    link.revision === null
      ? await doors.store.designs.latest(link.designId)
      : await doors.store.designs.revision(link.designId, link.revision);
  const job = head && (await doors.store.jobs.find(head.jobId));
  if (!head || !revision || !job) throw noSuchLink();
  await noteOpening(doors, link);
  const { settings } = await doors.store.settings.read();
  return {
    shop: {
      name: settings.name,
      address: settings.address,
      hasLogo: settings.logoFileId !== null,
      currency: settings.currency,
    },
    // A job is often called by its customer's name, and a link is passed on.
    jobName: withoutName(job.name, job.customerName),
    designName: withoutName(head.name, job.customerName),
    revision: revision.number,
    at: revision.at,
    expiresAt: link.expiresAt,
    document: withoutNotes(revision.document, job.customerName),
    pumps: await pumpsOf(doors, revision.document),
  };
}

/** The shop's own pumps that a document names and no others: the bearer of a link learns nothing of what else a shop has.
 *  What the schema does not name, such as a price, is left out; a row that lacks what it names is left out as a whole, and
 *  the page reckons without that pump. */
async function pumpsOf(doors: Doors, document: unknown): Promise<SharedPump[]> {
  const named = new Set(pumpRefs(document).map(({ ref }) => ref));
  if (named.size === 0) return [];
  const own = await shopPumps(doors.store);
  return own.filter(({ id }) => named.has(id)).flatMap((pump) => sharedPump.safeParse(pump).data ?? []);
}

/** Returns who invites a customer to an intake.
 *  doors; link that was found by its secret; answered whether the draft that asks has come through it
 *  -> IntakeInvitation */
export async function invitationOf(doors: Doors, link: Link, answered: boolean): Promise<IntakeInvitation> {
  await noteOpening(doors, link);
  const { settings } = await doors.store.settings.read();
  return {
    shop: { name: settings.name, address: settings.address, hasLogo: settings.logoFileId !== null },
    expiresAt: link.expiresAt,
    answered,
  };
}

/** Returns a text without a customer's name, where it stands as whole words.
 *  text; name or null   -> text; "Design" where nothing else is left
 *  Example: withoutName("Aldous Penn, reef by the window", "Aldous Penn")  ->  "reef by the window" */
export function withoutName(text: string, name: string | null): string {
  const words = (name ?? "").split(/[\s,]+/).filter((word) => word.length >= 3);
  if (words.length === 0) return text;
  const pattern = words.map((word) => word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")).join("|");
  const bare = text
    .replace(new RegExp(`(?<![\\p{L}\\p{N}])(?:${pattern})(?![\\p{L}\\p{N}])(?:['’]s)?`, "giu"), "")
    .replace(/\s+/g, " ")
    .replace(/^[\s,:;–-]+|[\s,:;–-]+$/g, "");
  return bare === "" ? "Design" : bare;
}

function withoutNotes(value: unknown, name: string | null, depth = 0): unknown {
  if (Array.isArray(value)) return value.map((each) => withoutNotes(each, name, depth + 1));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key]) => key !== "notes" && key !== "note")
      .map(([key, each]) => [
        key,
        depth === 0 && key === "name" && typeof each === "string"
          ? withoutName(each, name)
          : withoutNotes(each, name, depth + 1),
      ]),
  );
}

async function noteOpening(doors: Doors, link: Link): Promise<void> {
  const opened = lastOpened.get(doors) ?? new Map<string, number>();
  lastOpened.set(doors, opened);
  const last = opened.get(link.id);
  if (last !== undefined && doors.now() - last < auditEvery) return;
  opened.delete(link.id);
  opened.set(link.id, doors.now());
  if (opened.size > mostRemembered) opened.delete(opened.keys().next().value!);
  const by = { author: "customer's link", at: instantOf(doors) };
  await doors.store.audit.add(by, "open", { kind: "link", id: link.id });
}
