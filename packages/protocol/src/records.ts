import { z } from "zod";

/** Instants are UTC with milliseconds, as `Date.toISOString` writes them. */
export const instant = z.iso.datetime({ precision: 3 });

const versioned = { version: z.int().min(0), createdAt: instant, updatedAt: instant };
const id = z.string().min(1).max(100);
const line = z.string().max(200);
const prose = z.string().max(20_000);

/** What may be said of a customer; what is left out stays as it is, or is empty in a new one. */
export const customerFields = z.strictObject({
  name: line.min(1).optional(),
  contact: z.string().max(2000).optional(),
  notes: prose.optional(),
});
/** A customer of the shop. */
export const customer = z.object({ id, name: z.string(), contact: z.string(), notes: z.string(), ...versioned });

/** How far a job has come. */
export const jobStages = ["intake", "designing", "proposed", "accepted", "built", "closed"] as const;
/** What may be said of a job; what is left out stays as it is. */
export const jobFields = z.strictObject({
  name: line.min(1).optional(),
  customerId: id.nullable().optional(),
  stage: z.enum(jobStages).optional(),
  notes: prose.optional(),
});
/** One job of the shop: a customer's system with its designs and files. */
export const job = z.object({
  id,
  name: z.string(),
  customerId: id.nullable(),
  customerName: z.string().nullable(),
  stage: z.enum(jobStages),
  notes: z.string(),
  ...versioned,
});

/** A design or a variant of one, without its document; `revision` is the number of its latest revision. */
export const designHead = z.object({
  id,
  jobId: id,
  name: z.string(),
  revision: z.int().min(1),
  variantOf: z.object({ designId: id, revision: z.int().min(1) }).nullable(),
  createdAt: instant,
  createdBy: z.string(),
  updatedAt: instant,
});
/** One step of a design's history; `parent` is the revision it was made from, `name` what somebody called it. */
export const revisionEntry = z.object({
  designId: id,
  number: z.int().min(1),
  parent: z.int().min(1).nullable(),
  author: z.string(),
  at: instant,
  editId: z.string().nullable(),
  name: z.string().nullable(),
});
/** One step with its document: a design document, read with `readDesign`, which knows older versions. */
export const revision = revisionEntry.extend({ document: z.unknown() });
/** A design with its latest document. */
export const openedDesign = z.object({ head: designHead, latest: revision });

/** A design that names something, with the name of its job. */
export const designOfJob = z.object({ head: designHead, jobName: z.string() });

/** One row of the shop's own catalogue; `kind` such as "pump". */
export const catalogueRow = z.object({ kind: z.string(), id, data: z.unknown(), ...versioned });

/** What a file is kept for. */
export const fileKinds = ["photo", "chart", "logo", "paper", "intake"] as const;
/** A file without its bytes; `size` in bytes. */
export const fileEntry = z.object({
  id,
  jobId: id.nullable(),
  kind: z.enum(fileKinds),
  name: z.string(),
  contentType: z.string(),
  size: z.int().min(0),
  sha256: z.string(),
  author: z.string(),
  at: instant,
});

/** What the shop says of itself; `units` names a unit by dimension, `priceMultipliers` a factor by maker or kind. */
export const shopSettings = z.strictObject({
  name: line,
  address: z.string().max(1000),
  logoFileId: id.nullable(),
  currency: z.string().min(1).max(10),
  tariff: z.strictObject({ value: z.number().min(0), unit: z.string().max(20) }).nullable(),
  units: z.record(z.string().max(40), z.string().max(40)),
  priceMultipliers: z.record(z.string().max(200), z.number().positive().max(1000)),
});
/** Settings with the version that a change must name; 0 until somebody writes them. */
export const keptSettings = z.object({ settings: shopSettings, version: z.int().min(0) });

/** What an account may do: an owner everything, staff everything but accounts, settings and erasure, read-only look. */
export const accountRoles = ["owner", "staff", "readOnly"] as const;
/** Somebody who may sign in. */
export const account = z.object({
  id,
  name: z.string(),
  role: z.enum(accountRoles),
  disabled: z.boolean(),
  ...versioned,
});
/** A password: long rather than odd (NIST SP 800-63B, 5.1.1). */
export const password = z.string().min(10).max(200);

/** Who is asking: on this machine nobody signs in, elsewhere an account, or nobody yet. `firstOwnerWanted` while there
 *  is no account at all. */
export const session = z.object({
  who: z.enum(["thisMachine", "account", "nobody"]),
  /** Of the account, which keeps it when it is renamed. */
  accountId: id.nullable(),
  name: z.string().nullable(),
  role: z.enum(accountRoles).nullable(),
  firstOwnerWanted: z.boolean(),
});

/** What a link opens: a design to look at, or an intake to fill in. */
export const linkKinds = ["view", "intake"] as const;
/** A door for a customer: what it opens, until when; `revision` null shows the latest one. */
export const link = z.object({
  id,
  kind: z.enum(linkKinds),
  jobId: id.nullable(),
  designId: id.nullable(),
  revision: z.int().min(1).nullable(),
  createdAt: instant,
  createdBy: z.string(),
  expiresAt: instant,
  revokedAt: instant.nullable(),
});

/** One line of the audit trail; `about` names whom and what it tells of and what became of it, such as the name of an account
 *  and its new role: empty in lines of earlier programs and where a customer was erased. */
export const auditEntry = z.object({
  id,
  at: instant,
  author: z.string(),
  action: z.string(),
  subjectKind: z.string(),
  subjectId: z.string(),
  detail: z.string(),
  about: z.record(z.string(), z.string()),
});

/** What an erasure took away, and what it kept without a name. */
export const erasure = z.object({
  customerId: id,
  fields: z.array(z.string()),
  jobsUnnamed: z.int(),
  revisionsChanged: z.int(),
  filesErased: z.int(),
  linksRemoved: z.int(),
  auditLinesCleared: z.int(),
  designsKept: z.int(),
  remark: z.string(),
});

/** One of the shop's own pumps as a customer's page needs it to draw and reckon: what a maker prints of a pump. What the
 *  shop pays, notes about it and where its figures are from stay in the shop; nothing of the page depends on them. */
export const sharedPump = z.object({
  id,
  maker: z.string(),
  model: z.string(),
  placements: z.array(z.string()),
  control: z.string(),
  controller: z.object({ included: z.boolean() }).optional(),
  minimumSpeed: z.number(),
  curves: z.array(
    z.object({
      speedRatio: z.number(),
      points: z.array(z.object({ flow: z.number(), head: z.number() })),
      power: z.array(z.object({ flow: z.number(), power: z.number() })).optional(),
    }),
  ),
  ratedPower: z.number(),
  powerFactor: z.number(),
  inletBore: z.number(),
  outletBore: z.number(),
  connection: z.object({ inlet: z.string(), outlet: z.string() }).optional(),
  voltage: z.number(),
  frequency: z.number(),
  soundLevel: z.number(),
  warrantyMonths: z.number(),
  maximumTemperature: z.number().optional(),
  externalCooling: z.string().optional(),
  selfPriming: z.boolean().optional(),
  bestEfficiencyFlow: z.number().optional(),
  chart: z.string().optional(),
});

/** What a customer sees through a share link: the shop, the job's name and one design with those of the shop's own pumps that
 *  it names; no other customer's data. */
export const sharedDesign = z.object({
  shop: z.object({ name: z.string(), address: z.string(), hasLogo: z.boolean(), currency: z.string() }),
  jobName: z.string(),
  designName: z.string(),
  revision: z.int().min(1),
  at: instant,
  expiresAt: instant,
  document: z.unknown(),
  pumps: z.array(sharedPump),
});

/** What a customer who opens an intake link is told; `answered` where the draft named beside the link has come through it. */
export const intakeInvitation = z.object({
  shop: z.object({ name: z.string(), address: z.string(), hasLogo: z.boolean() }),
  expiresAt: instant,
  answered: z.boolean(),
});
/** What a customer sends: how to reach them, what they say, and the answers of the guided start (advice's `readStart`); what is
 *  made of them is named in their `language`, English where they name none. */
export const intakeAnswer = z.strictObject({
  name: line.min(1),
  contact: z.string().min(1).max(2000),
  notes: z.string().max(5000),
  language: z.enum(["en", "de"]).optional(),
  answers: z.unknown(),
});

/** Something that is kept now and was not before, as the event stream tells it. */
export const storeChange = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("customer"), id, version: z.int() }),
  z.object({ kind: z.literal("job"), id, version: z.int() }),
  z.object({ kind: z.literal("file"), id, jobId: id.nullable() }),
  z.object({ kind: z.literal("catalogue"), row: z.string(), id }),
  z.object({ kind: z.literal("design"), id, jobId: id, revision: z.int() }),
  z.object({ kind: z.literal("settings"), version: z.int() }),
  z.object({ kind: z.literal("account"), id }),
  z.object({ kind: z.literal("link"), id, jobId: id.nullable() }),
  z.object({ kind: z.literal("erasure"), customerId: id }),
]);

/** A problem of an input: where, what, and the fix. */
export const problem = z.object({
  path: z.string(),
  message: z.string(),
  value: z.unknown().optional(),
  fix: z.string(),
});
/** Why a request was not done (RFC 9457). `current` is what somebody else left, where that is why. */
export const problemDetails = z.object({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.string(),
  problems: z.array(problem).optional(),
  current: z.unknown().optional(),
});

export type Customer = z.infer<typeof customer>;
export type CustomerFields = z.infer<typeof customerFields>;
export type Job = z.infer<typeof job>;
export type JobFields = z.infer<typeof jobFields>;
export type JobStage = (typeof jobStages)[number];
export type DesignHead = z.infer<typeof designHead>;
export type RevisionEntry = z.infer<typeof revisionEntry>;
export type Revision = z.infer<typeof revision>;
export type CatalogueRow = z.infer<typeof catalogueRow>;
export type FileKind = (typeof fileKinds)[number];
export type FileEntry = z.infer<typeof fileEntry>;
export type ShopSettings = z.infer<typeof shopSettings>;
export type KeptSettings = z.infer<typeof keptSettings>;
export type AccountRole = (typeof accountRoles)[number];
export type Account = z.infer<typeof account>;
export type Session = z.infer<typeof session>;
export type Link = z.infer<typeof link>;
export type AuditEntry = z.infer<typeof auditEntry>;
export type Erasure = z.infer<typeof erasure>;
export type SharedPump = z.infer<typeof sharedPump>;
export type SharedDesign = z.infer<typeof sharedDesign>;
export type IntakeInvitation = z.infer<typeof intakeInvitation>;
export type IntakeAnswer = z.infer<typeof intakeAnswer>;
export type StoreChange = z.infer<typeof storeChange>;
export type ProblemDetails = z.infer<typeof problemDetails>;
