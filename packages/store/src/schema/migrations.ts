import type { SqlDatabase } from "../sql/sqlDatabase.ts";

/** Steps from an empty database to today's, in order; a step that was ever shipped is never changed.
 *  One text for both databases: BYTES becomes each one's own word, instants and JSON are text, counters are integers. */
const steps: readonly (readonly string[])[] = [
  [
    `CREATE TABLE shop (
      id TEXT PRIMARY KEY CHECK (id = 'own'),
      settings TEXT NOT NULL,
      version INTEGER NOT NULL,
      updated_at TEXT NOT NULL,
      updated_by TEXT NOT NULL
    )`,
    `CREATE TABLE customers (
      id TEXT PRIMARY KEY,
      name TEXT NOT NULL,
      contact TEXT NOT NULL,
      notes TEXT NOT NULL,
      search_text TEXT NOT NULL,
      version INTEGER NOT NULL,
      created_at TEXT NOT NULL,
      updated_at TEXT NOT NULL
    )`,
    `CREATE TABLE jobs (
      id TEXT PRIMARY KEY,
      customer_id TEXT REFERENCES customers (id),
      name TEXT NOT NULL,
      stage TEXT NOT NULL,
      notes TEXT NOT NULL,
      search_text TEXT NOT NULL,
      version INTEGER NOT NULL,
      created_at TEXT NOT NULL,
      updated_at TEXT NOT NULL
    )`,
    "CREATE INDEX jobs_by_customer ON jobs (customer_id)",
    "CREATE INDEX jobs_by_time ON jobs (updated_at)",
    `CREATE TABLE designs (
      id TEXT PRIMARY KEY,
      job_id TEXT NOT NULL REFERENCES jobs (id),
      name TEXT NOT NULL,
      revision INTEGER NOT NULL,
      variant_of TEXT REFERENCES designs (id) DEFERRABLE INITIALLY DEFERRED,
      variant_of_revision INTEGER,
      created_at TEXT NOT NULL,
      created_by TEXT NOT NULL,
      updated_at TEXT NOT NULL
    )`,
    "CREATE INDEX designs_by_job ON designs (job_id)",
    `CREATE TABLE revisions (
      design_id TEXT NOT NULL REFERENCES designs (id),
      number INTEGER NOT NULL,
      parent INTEGER CHECK (parent < number),
      author TEXT NOT NULL,
      at TEXT NOT NULL,
      edit_id TEXT,
      document TEXT NOT NULL,
      PRIMARY KEY (design_id, number),
      UNIQUE (design_id, edit_id),
      FOREIGN KEY (design_id, parent) REFERENCES revisions (design_id, number)
    )`,
    `CREATE TABLE revision_names (
      design_id TEXT NOT NULL,
      number INTEGER NOT NULL,
      name TEXT NOT NULL,
      author TEXT NOT NULL,
      at TEXT NOT NULL,
      PRIMARY KEY (design_id, number),
      FOREIGN KEY (design_id, number) REFERENCES revisions (design_id, number)
    )`,
    `CREATE TABLE catalogue_rows (
      kind TEXT NOT NULL,
      id TEXT NOT NULL,
      data TEXT NOT NULL,
      version INTEGER NOT NULL,
      created_at TEXT NOT NULL,
      updated_at TEXT NOT NULL,
      PRIMARY KEY (kind, id)
    )`,
    `CREATE TABLE files (
      id TEXT PRIMARY KEY,
      job_id TEXT REFERENCES jobs (id),
      kind TEXT NOT NULL,
      name TEXT NOT NULL,
      content_type TEXT NOT NULL,
      size INTEGER NOT NULL,
      sha256 TEXT NOT NULL,
      author TEXT NOT NULL,
      at TEXT NOT NULL,
      bytes BYTES NOT NULL
    )`,
    "CREATE INDEX files_by_job ON files (job_id)",
    `CREATE TABLE audit (
      id TEXT PRIMARY KEY,
      at TEXT NOT NULL,
      author TEXT NOT NULL,
      action TEXT NOT NULL,
      subject_kind TEXT NOT NULL,
      subject_id TEXT NOT NULL,
      detail TEXT NOT NULL
    )`,
    "CREATE INDEX audit_by_subject ON audit (subject_kind, subject_id)",
  ],
  [
    `CREATE TABLE accounts (
      id TEXT PRIMARY KEY,
      name TEXT NOT NULL,
      name_key TEXT NOT NULL UNIQUE,
      role TEXT NOT NULL,
      password_hash TEXT NOT NULL,
      disabled INTEGER NOT NULL,
      version INTEGER NOT NULL,
      created_at TEXT NOT NULL,
      updated_at TEXT NOT NULL
    )`,
    `CREATE TABLE sessions (
      token_hash TEXT PRIMARY KEY,
      account_id TEXT NOT NULL REFERENCES accounts (id),
      created_at TEXT NOT NULL,
      expires_at TEXT NOT NULL
    )`,
    "CREATE INDEX sessions_by_account ON sessions (account_id)",
    `CREATE TABLE links (
      id TEXT PRIMARY KEY,
      token_hash TEXT NOT NULL UNIQUE,
      kind TEXT NOT NULL,
      job_id TEXT REFERENCES jobs (id),
      design_id TEXT REFERENCES designs (id),
      revision INTEGER,
      created_at TEXT NOT NULL,
      created_by TEXT NOT NULL,
      expires_at TEXT NOT NULL,
      revoked_at TEXT
    )`,
    "CREATE INDEX links_by_job ON links (job_id)",
  ],
  [
    `CREATE TABLE sign_in_waits (
      key TEXT PRIMARY KEY,
      failures INTEGER NOT NULL,
      open_at TEXT NOT NULL,
      last_at TEXT NOT NULL
    )`,
  ],
  // Of the draft that an intake link was given to, so that who sends it again is known.
  ["ALTER TABLE links ADD COLUMN draft_hash TEXT"],
  // Names of whom and what a line of the trail tells of, as JSON; emptied where a customer is erased.
  ["ALTER TABLE audit ADD COLUMN about TEXT NOT NULL DEFAULT ''"],
];

/** The version of the schema this program writes. */
export const schemaVersion = steps.length;

/** The statements of one step in the words of a database; steps count from 1. */
export function migrationStep(number: number, dialect: SqlDatabase["dialect"]): readonly string[] {
  const bytes = dialect === "postgres" ? "BYTEA" : "BLOB";
  return (steps[number - 1] ?? []).map((statement) => statement.replaceAll("BYTES", bytes));
}

/** Every table that a copy takes along, with its columns, parents before children: the order in which it can be filled. */
export const tables: readonly { readonly name: string; readonly columns: readonly string[]; readonly key: string }[] = [
  { name: "shop", key: "id", columns: ["id", "settings", "version", "updated_at", "updated_by"] },
  {
    name: "customers",
    key: "id",
    columns: ["id", "name", "contact", "notes", "search_text", "version", "created_at", "updated_at"],
  },
  {
    name: "jobs",
    key: "id",
    columns: ["id", "customer_id", "name", "stage", "notes", "search_text", "version", "created_at", "updated_at"],
  },
  {
    name: "designs",
    key: "id",
    columns: [
      "id",
      "job_id",
      "name",
      "revision",
      "variant_of",
      "variant_of_revision",
      "created_at",
      "created_by",
      "updated_at",
    ],
  },
  {
    name: "revisions",
    key: "design_id, number",
    columns: ["design_id", "number", "parent", "author", "at", "edit_id", "document"],
  },
  { name: "revision_names", key: "design_id, number", columns: ["design_id", "number", "name", "author", "at"] },
  {
    name: "catalogue_rows",
    key: "kind, id",
    columns: ["kind", "id", "data", "version", "created_at", "updated_at"],
  },
  {
    name: "files",
    key: "id",
    columns: ["id", "job_id", "kind", "name", "content_type", "size", "sha256", "author", "at", "bytes"],
  },
  {
    name: "audit",
    key: "id",
    columns: ["id", "at", "author", "action", "subject_kind", "subject_id", "detail", "about"],
  },
  {
    name: "accounts",
    key: "id",
    columns: ["id", "name", "name_key", "role", "password_hash", "disabled", "version", "created_at", "updated_at"],
  },
  // Sessions and waits are not copied: who restores a backup signs in again.
  {
    name: "links",
    key: "id",
    columns: [
      "id",
      "token_hash",
      "kind",
      "job_id",
      "design_id",
      "revision",
      "created_at",
      "created_by",
      "expires_at",
      "revoked_at",
      "draft_hash",
    ],
  },
];
