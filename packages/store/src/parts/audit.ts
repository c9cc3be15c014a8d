import type { AuditEntry, By } from "../records.ts";
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
  detail = "",
): Promise<void> {
  await sql.change(
    "INSERT INTO audit (id, at, author, action, subject_kind, subject_id, detail) VALUES (?, ?, ?, ?, ?, ?, ?)",
    [context.newId(), by.at, by.author, action, subject[0], subject[1], detail],
  );
}

const columns = `id, at, author, action, subject_kind AS "subjectKind", subject_id AS "subjectId", detail`;

/** The audit trail: newest first. */
export function auditPart(context: Context): AuditPart {
  const { database } = context;
  return {
    add: (by, action, subject, detail) =>
      database.write((sql) => addAudit(context, sql, by, action, [subject.kind, subject.id], detail)),
    list: ({ subject, limit = 100, offset = 0 } = {}) =>
      subject
        ? database.read.rows<AuditEntry>(
            `SELECT ${columns} FROM audit WHERE subject_kind = ? AND subject_id = ? ORDER BY at DESC, id LIMIT ? OFFSET ?`,
            [subject.kind, subject.id, ...pageOf(limit, offset)],
          )
        : database.read.rows<AuditEntry>(`SELECT ${columns} FROM audit ORDER BY at DESC, id LIMIT ? OFFSET ?`, [
            ...pageOf(limit, offset),
          ]),
    removeBefore: (at) => database.write((sql) => sql.change("DELETE FROM audit WHERE at < ?", [at])),
  };
}
