import type { Outcome } from "./outcome.ts";
import type {
  Account,
  AccountFields,
  AccountRole,
  AccountWithHash,
  AuditEntry,
  By,
  CatalogueRow,
  Customer,
  CustomerFields,
  DesignHead,
  Erasure,
  FileEntry,
  FileKind,
  HoldingDesign,
  Job,
  JobFields,
  JobQuery,
  KeptSettings,
  Link,
  LinkKind,
  Revision,
  RevisionEntry,
  ShopSettings,
  SignInWait,
  StoredFile,
} from "./records.ts";

/** A page of a list, with how many there are in all. */
export interface Page<Item> {
  readonly items: readonly Item[];
  readonly total: number;
}

/** Something that is kept now and was not before; told after it is on the disk. `missed` stands for any number of changes
 *  that could not be told, such as those of other servers while the connection was lost: what is remembered of the store
 *  has to be read anew. */
export type StoreChange =
  | { readonly kind: "customer"; readonly id: string; readonly version: number }
  | { readonly kind: "job"; readonly id: string; readonly version: number }
  | { readonly kind: "file"; readonly id: string; readonly jobId: string | null }
  | { readonly kind: "catalogue"; readonly row: string; readonly id: string }
  | { readonly kind: "design"; readonly id: string; readonly jobId: string; readonly revision: number }
  | { readonly kind: "settings"; readonly version: number }
  | { readonly kind: "account"; readonly id: string }
  | { readonly kind: "link"; readonly id: string; readonly jobId: string | null }
  | { readonly kind: "erasure"; readonly customerId: string }
  | { readonly kind: "missed" };

/** Customers of the shop. `create` with an id that is taken answers a conflict; `update` names the version it saw. */
export interface CustomersPart {
  create(
    fields: CustomerFields & { readonly name: string; readonly id?: string },
    by: By,
  ): Promise<Outcome<Customer, Customer>>;
  find(id: string): Promise<Customer | undefined>;
  search(query?: {
    readonly text?: string;
    readonly limit?: number;
    readonly offset?: number;
  }): Promise<Page<Customer>>;
  /** Customers of whom nothing was changed since an instant, nor of their jobs: candidates for erasure. */
  unusedSince(at: string): Promise<readonly Customer[]>;
  update(id: string, expectedVersion: number, fields: CustomerFields, by: By): Promise<Outcome<Customer, Customer>>;
}

/** Jobs of the shop, latest first. `remove` takes designs, revisions and files with it. */
export interface JobsPart {
  create(fields: JobFields & { readonly name: string; readonly id?: string }, by: By): Promise<Outcome<Job, Job>>;
  find(id: string): Promise<Job | undefined>;
  search(query?: JobQuery): Promise<Page<Job>>;
  update(id: string, expectedVersion: number, fields: JobFields, by: By): Promise<Outcome<Job, Job>>;
  remove(id: string, expectedVersion: number, by: By): Promise<Outcome<Job, Job>>;
}

/** What an edit may say of itself: `editId` makes sending it twice harmless; `parent` is the revision it was made from,
 *  where that is not the latest (an undo); `madeFrom` is the edit that the expected revision came from, or its instant where
 *  it came from none: after a backup was put back, another revision may bear the same number. */
export interface AppendOptions {
  readonly editId?: string | null;
  readonly parent?: number;
  readonly madeFrom?: string;
}

/** Designs and variants. A revision is never changed, only added; the later of two writers gets what the first one
 *  left, and keeps its own work with `duplicate({ document })`. */
export interface DesignsPart {
  create(
    design: { readonly id?: string; readonly jobId: string; readonly name: string; readonly document: unknown },
    by: By,
  ): Promise<Outcome<DesignHead, DesignHead>>;
  find(id: string): Promise<DesignHead | undefined>;
  ofJob(jobId: string): Promise<readonly DesignHead[]>;
  append(
    designId: string,
    expectedRevision: number,
    document: unknown,
    by: By,
    options?: AppendOptions,
  ): Promise<Outcome<RevisionEntry, Revision>>;
  latest(designId: string): Promise<Revision | undefined>;
  revision(designId: string, number: number): Promise<Revision | undefined>;
  /** Newest first, without documents; `before` a number pages on. */
  history(
    designId: string,
    page?: { readonly limit?: number; readonly before?: number },
  ): Promise<readonly RevisionEntry[]>;
  /** Every design whose latest document has a text somewhere in its JSON, those changed last first; the embedded database
   *  does not tell large letters from small ones and may find a few more. */
  holding(json: string, limit: number): Promise<readonly HoldingDesign[]>;
  nameVersion(designId: string, number: number, name: string, by: By): Promise<Outcome<RevisionEntry>>;
  /** A variant of a revision (the latest unless one is named), with its document or the one given. */
  duplicate(
    designId: string,
    variant: {
      readonly id?: string;
      readonly name: string;
      readonly revision?: number;
      readonly document?: unknown;
      readonly jobId?: string;
    },
    by: By,
  ): Promise<Outcome<DesignHead, DesignHead>>;
}

/** The shop's own catalogue rows. `put` with version 0 adds a row. */
export interface CataloguePart {
  list(kind: string): Promise<readonly CatalogueRow[]>;
  find(kind: string, id: string): Promise<CatalogueRow | undefined>;
  put(
    kind: string,
    id: string,
    expectedVersion: number,
    data: unknown,
    by: By,
  ): Promise<Outcome<CatalogueRow, CatalogueRow>>;
  remove(kind: string, id: string, expectedVersion: number, by: By): Promise<Outcome<CatalogueRow, CatalogueRow>>;
}

/** Files with their bytes; `list(null)` names those of no job, such as the logo. */
export interface FilesPart {
  put(
    file: {
      readonly id?: string;
      readonly jobId?: string | null;
      readonly kind: FileKind;
      readonly name: string;
      readonly contentType: string;
      readonly bytes: Uint8Array;
    },
    by: By,
  ): Promise<Outcome<FileEntry>>;
  get(id: string): Promise<StoredFile | undefined>;
  list(jobId: string | null): Promise<readonly FileEntry[]>;
  remove(id: string, by: By): Promise<Outcome<FileEntry>>;
}

/** The settings of the shop; version 0 until somebody writes them. */
export interface SettingsPart {
  read(): Promise<KeptSettings>;
  write(expectedVersion: number, settings: ShopSettings, by: By): Promise<Outcome<KeptSettings, KeptSettings>>;
}

/** Who did what. Changes to the other parts add their own lines; revisions are their own trail. */
export interface AuditPart {
  add(by: By, action: string, subject: { readonly kind: string; readonly id: string }, detail?: string): Promise<void>;
  /** Newest first. */
  list(query?: {
    readonly subject?: { readonly kind: string; readonly id: string };
    readonly limit?: number;
    readonly offset?: number;
  }): Promise<readonly AuditEntry[]>;
  /** Forgets lines from before an instant; answers how many. */
  removeBefore(at: string): Promise<number>;
}

/** Who may sign in. Passwords come hashed; names are told apart without capitals or accents. At least one owner who is
 *  not disabled stays. `create` with `onlyFirst` is refused once there is an account. */
export interface AccountsPart {
  create(
    fields: {
      readonly id?: string;
      readonly name: string;
      readonly role: AccountRole;
      readonly passwordHash: string;
      readonly onlyFirst?: boolean;
    },
    by: By,
  ): Promise<Outcome<Account>>;
  list(): Promise<readonly Account[]>;
  find(id: string): Promise<Account | undefined>;
  findByName(name: string): Promise<AccountWithHash | undefined>;
  /** A new password, another role or disabling ends the account's sessions. */
  update(id: string, expectedVersion: number, fields: AccountFields, by: By): Promise<Outcome<Account, Account>>;
}

/** Who is signed in. Tokens are 256 random bits, of which only a hash is kept. */
export interface SessionsPart {
  open(accountId: string, expiresAt: string, by: By): Promise<Outcome<{ readonly token: string }>>;
  /** The account of a session that is open at this instant. */
  find(token: string, at: string): Promise<Account | undefined>;
  /** Lets an open session last until an instant, but no longer after it was opened than some seconds. */
  extend(token: string, until: string, mostSeconds: number): Promise<void>;
  close(token: string): Promise<void>;
  /** Forgets what expired before this instant. */
  removeExpired(at: string): Promise<number>;
}

/** What is held against names and senders at the door, by a key that says nothing secret. */
export interface WaitsPart {
  /** The one that was touched longest ago first. */
  list(): Promise<readonly SignInWait[]>;
  /** Keeps waits by their keys, or forgets those without one. */
  keep(changes: ReadonlyMap<string, Omit<SignInWait, "key"> | undefined>): Promise<void>;
  /** Forgets what was last touched before this instant; answers how many. */
  removeBefore(at: string): Promise<number>;
}

/** Doors for customers. Tokens are 256 random bits, told once; only a hash is kept. */
export interface LinksPart {
  create(
    link: {
      readonly kind: LinkKind;
      readonly jobId?: string | null;
      readonly designId?: string | null;
      readonly revision?: number | null;
      readonly expiresAt: string;
    },
    by: By,
  ): Promise<Outcome<{ readonly link: Link; readonly token: string }>>;
  /** The link of a token, unless it is expired at this instant or revoked. */
  find(token: string, at: string): Promise<Link | undefined>;
  /** The link of a token that is closed and was given to this draft, unless it is expired at this instant. */
  findAnswered(token: string, draft: string, at: string): Promise<Link | undefined>;
  /** Gives an open link to one draft of an answer, of whose id only a hash is kept: "given", also where the draft has it
   *  already; "answered" where the link is closed and was this draft's; "refused" where it is another's, or closed. */
  giveTo(id: string, draft: string | null): Promise<"given" | "answered" | "refused">;
  list(jobId: string | null): Promise<readonly Link[]>;
  revoke(id: string, by: By): Promise<Outcome<Link>>;
  /** Forgets links that expired before this instant; answers how many. */
  removeExpired(at: string): Promise<number>;
}

/** Everything a shop keeps. A change is answered once it is on the disk. What a user got wrong is data in the answer;
 *  a `StoreFailure` is thrown for a full disk, a lost server or a broken file. */
export interface Store {
  readonly customers: CustomersPart;
  readonly jobs: JobsPart;
  readonly designs: DesignsPart;
  readonly catalogue: CataloguePart;
  readonly files: FilesPart;
  readonly settings: SettingsPart;
  readonly audit: AuditPart;
  readonly accounts: AccountsPart;
  readonly sessions: SessionsPart;
  readonly links: LinksPart;
  readonly waits: WaitsPart;
  /** Takes a customer's personal data away for good, and says what was taken. */
  eraseCustomer(customerId: string, by: By): Promise<Outcome<Erasure>>;
  /** Writes everything, as of one moment, into one new file, while edits go on. Answers its size in bytes. */
  backup(path: string): Promise<{ readonly bytes: number }>;
  /** Tells of every change from now on, also of those that other servers make on the same PostgreSQL database; the answer
   *  stops it. A listener must not throw. What happens while the connection is lost is told as `missed` once it is back. */
  watch(listener: (change: StoreChange) => void): () => void;
  close(): Promise<void>;
}
