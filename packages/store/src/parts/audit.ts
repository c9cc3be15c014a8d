import type { AuditAbout, AuditEntry, By } from "../records.ts";
import type { Sql } from "../sql/sqlDatabase.ts";
import type { AuditPart } from "../store.ts";
import { pageOf } from "./checks.ts";
import type { Context } from "./context.ts";

/** Adds a line to the audit trail, inside the transaction of what it tells of. */
export async function addAudit(
  context: Context,
  sql: Sql,
  by: By,
  action: string,
  subject: readonly [kind: string, id: string],
  { detail = "", about }: { readonly detail?: string; readonly about?: AuditAbout } = {},
): Promise<void> {
  await sql.change(
    "INSERT INTO audit (id, at, author, action, subject_kind, subject_id, detail, about) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
    [
      context.newId(),
      by.at,
      by.author,
      action,
      subject[0],
      subject[1],
      detail,
      about === undefined ? "" : JSON.stringify(about),
    ],
  );
}

/** What a line tells of the job that something belongs to, and whose it is: by the ids an erasure finds it, also when the job
 *  is gone by then. */
export async function aboutJob(sql: Sql, jobId: string | null): Promise<AuditAbout> {
  if (jobId === null) return {};
  const [job] = await sql.rows<{ name: string; customerId: string | null }>(
    `SELECT name, customer_id AS "customerId" FROM jobs WHERE id = ?`,
    [jobId],
  );
  return { jobId, ...(job && { job: job.name, ...ofCustomer(job.customerId) }) };
}

/** What a line tells of a link: its kind, and the design and job that it shows. */
export async function aboutLink(sql: Sql, id: string): Promise<AuditAbout> {
  const [link] = await sql.rows<{ kind: string; jobId: string | null; design: string | null }>(
    `SELECT kind, links.job_id AS "jobId", designs.name AS design FROM links LEFT JOIN designs ON designs.id = design_id WHERE links.id = ?`,
    [id],
  );
  if (!link) return {};
  return {
    kind: link.kind,
    ...(link.design === null ? {} : { design: link.design }),
    ...(await aboutJob(sql, link.jobId)),
  };
}

/** Whose something is, where it is anybody's. */
export const ofCustomer = (customerId: string | null): AuditAbout => (customerId === null ? {} : { customerId });

const columns = `id, at, author, action, subject_kind AS "subjectKind", subject_id AS "subjectId", detail, about`;

type Row = Omit<AuditEntry, "about"> & { about: string };

const asEntry = ({ about, ...row }: Row): AuditEntry => ({
  ...row,
  about: about === "" ? {} : (JSON.parse(about) as AuditAbout),
});

/** The audit trail: newest first. */
export function auditPart(context: Context): AuditPart {
  const { database } = context;
  return {
    add: (by, action, subject, detail) =>
      database.write(async (sql) => {
        const about = subject.kind === "link" ? { about: await aboutLink(sql, subject.id) } : {};
        await addAudit(context, sql, by, action, [subject.kind, subject.id], {
          ...(detail === undefined ? {} : { detail }),
          ...about,
        });
      }),
    list: async ({ subject, limit = 100, offset = 0 } = {}) =>
      (subject
        ? await database.read.rows<Row>(
            `SELECT ${columns} FROM audit WHERE subject_kind = ? AND subject_id = ? ORDER BY at DESC, id LIMIT ? OFFSET ?`,
            [subject.kind, subject.id, ...pageOf(limit, offset)],
          )
        : await database.read.rows<Row>(`SELECT ${columns} FROM audit ORDER BY at DESC, id LIMIT ? OFFSET ?`, [
            ...pageOf(limit, offset),
          ])
      ).map(asEntry),
    removeBefore: (at) => database.write((sql) => sql.change("DELETE FROM audit WHERE at < ?", [at])),
  };
}
