/** Who did something and when; `at` is an ISO 8601 instant, given by the caller so that nothing here reads a clock. */
export interface By {
  readonly author: string;
  readonly at: string;
}

/** How often something was changed, from 1, and when last: what an ETag is made of. */
export interface Versioned {
  readonly version: number;
  readonly createdAt: string;
  readonly updatedAt: string;
}

/** A customer of the shop; `contact` and `notes` are free text. */
export interface Customer extends Versioned {
  readonly id: string;
  readonly name: string;
  readonly contact: string;
  readonly notes: string;
}

/** What may be said of a customer; what is left out stays as it is, or is empty in a new one. */
export interface CustomerFields {
  readonly name?: string;
  readonly contact?: string;
  readonly notes?: string;
}

/** How far a job has come. */
export const jobStages = ["intake", "designing", "proposed", "accepted", "built", "closed"] as const;
/** One of `jobStages`. */
export type JobStage = (typeof jobStages)[number];

/** One job of the shop: a customer's system with its designs and files. */
export interface Job extends Versioned {
  readonly id: string;
  readonly name: string;
  readonly customerId: string | null;
  readonly customerName: string | null;
  readonly stage: JobStage;
  readonly notes: string;
}

/** What may be said of a job; what is left out stays as it is. */
export interface JobFields {
  readonly name?: string;
  readonly customerId?: string | null;
  readonly stage?: JobStage;
  readonly notes?: string;
}

/** Which jobs to list: every word of `text` in the name or notes of the job or in its customer's name. */
export interface JobQuery {
  readonly text?: string;
  readonly stage?: JobStage;
  readonly customerId?: string;
  readonly limit?: number;
  readonly offset?: number;
}

/** A design or a variant of one, without its document; `revision` is the number of its latest revision. */
export interface DesignHead {
  readonly id: string;
  readonly jobId: string;
  readonly name: string;
  readonly revision: number;
  readonly variantOf: { readonly designId: string; readonly revision: number } | null;
  readonly createdAt: string;
  readonly createdBy: string;
  readonly updatedAt: string;
}

/** One step of a design's history; `parent` is the revision it was made from, `name` what somebody called it. */
export interface RevisionEntry {
  readonly designId: string;
  readonly number: number;
  readonly parent: number | null;
  readonly author: string;
  readonly at: string;
  readonly editId: string | null;
  readonly name: string | null;
}

/** One step with its document, as it was given: read it with `readDesign`, which knows older versions. */
export interface Revision extends RevisionEntry {
  readonly document: unknown;
}

/** A design with its latest document and the name of its job. */
export interface HoldingDesign {
  readonly head: DesignHead;
  readonly jobName: string;
  readonly document: unknown;
}

/** One row of the shop's own catalogue; `kind` such as "pump", `data` the row as JSON. */
export interface CatalogueRow extends Versioned {
  readonly kind: string;
  readonly id: string;
  readonly data: unknown;
}

/** What a file is kept for. Photos, papers and what a customer sent are personal; charts and logos are not. */
export const fileKinds = ["photo", "chart", "logo", "paper", "intake"] as const;
/** One of `fileKinds`. */
export type FileKind = (typeof fileKinds)[number];

/** A file without its bytes; `size` in bytes, `sha256` in hexadecimal. */
export interface FileEntry {
  readonly id: string;
  readonly jobId: string | null;
  readonly kind: FileKind;
  readonly name: string;
  readonly contentType: string;
  readonly size: number;
  readonly sha256: string;
  readonly author: string;
  readonly at: string;
}

/** A file with its bytes. */
export interface StoredFile extends FileEntry {
  readonly bytes: Uint8Array;
}

/** What the shop says of itself; `tariff` is the price of energy, `units` a unit by quantity, `priceMultipliers` a factor
 *  on list prices by maker or kind. */
export interface ShopSettings {
  readonly name: string;
  readonly address: string;
  readonly logoFileId: string | null;
  readonly currency: string;
  readonly tariff: { readonly value: number; readonly unit: string } | null;
  readonly units: Readonly<Record<string, string>>;
  readonly priceMultipliers: Readonly<Record<string, number>>;
}

/** Settings with the version that a change must name. */
export interface KeptSettings {
  readonly settings: ShopSettings;
  readonly version: number;
}

/** Whom and what a line of the audit trail tells of, and what became of it: never a secret.
 *  `name` of the subject, `was` before it was renamed; `role`, `password` and `access` of an account; `kind` of a link, a
 *  file or a row of the catalogue; `change` of such a row; `version` of a design; `fields` of a customer or job; `design`, `job`
 *  and `customerId` that it belongs to, of whose erasure the names go. */
export type AuditAbout = Readonly<
  Partial<
    Record<
      | "name"
      | "was"
      | "role"
      | "password"
      | "access"
      | "kind"
      | "change"
      | "version"
      | "fields"
      | "design"
      | "job"
      | "jobId"
      | "customerId",
      string
    >
  >
>;

/** One line of the audit trail. */
export interface AuditEntry {
  readonly id: string;
  readonly at: string;
  readonly author: string;
  readonly action: string;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly detail: string;
  readonly about: AuditAbout;
}

/** What an erasure took away, and what it kept without a name. */
export interface Erasure {
  readonly customerId: string;
  readonly fields: readonly string[];
  readonly jobsUnnamed: number;
  readonly revisionsChanged: number;
  readonly filesErased: number;
  readonly linksRemoved: number;
  readonly auditLinesCleared: number;
  readonly designsKept: number;
  readonly remark: string;
}

/** What an account may do: an owner everything, staff everything but accounts and settings, read-only nothing but look;
 *  the server holds them to it. */
export const accountRoles = ["owner", "staff", "readOnly"] as const;
/** One of `accountRoles`. */
export type AccountRole = (typeof accountRoles)[number];

/** Somebody who may sign in; the hash of the password is only in `AccountWithHash`. */
export interface Account extends Versioned {
  readonly id: string;
  readonly name: string;
  readonly role: AccountRole;
  readonly disabled: boolean;
}

/** An account with what a password is checked against, for signing in alone. */
export interface AccountWithHash extends Account {
  readonly passwordHash: string;
}

/** What is held against a name or a sender at the door: failures so far, the instant from which another attempt is let in,
 *  and that of the last attempt. */
export interface SignInWait {
  readonly key: string;
  readonly failures: number;
  readonly openAt: string;
  readonly lastAt: string;
}

/** What may be said of an account. */
export interface AccountFields {
  readonly name?: string;
  readonly role?: AccountRole;
  readonly passwordHash?: string;
  readonly disabled?: boolean;
}

/** What a link opens: a design to look at, or an intake to fill in. */
export const linkKinds = ["view", "intake"] as const;
/** One of `linkKinds`. */
export type LinkKind = (typeof linkKinds)[number];

/** A door for somebody without an account; `revision` null shows the latest one. */
export interface Link {
  readonly id: string;
  readonly kind: LinkKind;
  readonly jobId: string | null;
  readonly designId: string | null;
  readonly revision: number | null;
  readonly createdAt: string;
  readonly createdBy: string;
  readonly expiresAt: string;
  readonly revokedAt: string | null;
}
