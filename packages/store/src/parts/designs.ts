import { conflict, done, invalid, missing } from "../outcome.ts";
import type { DesignHead, Revision, RevisionEntry } from "../records.ts";
import type { Sql } from "../sql/sqlDatabase.ts";
import type { DesignsPart } from "../store.ts";
import { aboutJob, addAudit } from "./audit.ts";
import { byProblems, idProblems, jsonText, pageOf, textProblems } from "./checks.ts";
import type { Context } from "./context.ts";
import { containing } from "./searchText.ts";

interface HeadRow {
  id: string;
  jobId: string;
  name: string;
  revision: number;
  variantOf: string | null;
  variantOfRevision: number | null;
  createdAt: string;
  createdBy: string;
  updatedAt: string;
}

const headColumns = `id, job_id AS "jobId", name, revision, variant_of AS "variantOf",
  variant_of_revision AS "variantOfRevision", created_at AS "createdAt", created_by AS "createdBy", updated_at AS "updatedAt"`;

const entryColumns = `revisions.design_id AS "designId", revisions.number, parent, revisions.author, revisions.at,
  edit_id AS "editId", revision_names.name`;
const entrySource =
  "revisions LEFT JOIN revision_names ON revision_names.design_id = revisions.design_id AND revision_names.number = revisions.number";

/** Designs and their variants, each a line of revisions to which only something can be added. */
export function designsPart(context: Context): DesignsPart {
  const { database, limits } = context;

  const insertDesign = async (sql: Sql, head: DesignHead, document: string): Promise<void> => {
    await sql.change(
      "INSERT INTO designs (id, job_id, name, revision, variant_of, variant_of_revision, created_at, created_by, updated_at) VALUES (?, ?, ?, 1, ?, ?, ?, ?, ?)",
      [
        head.id,
        head.jobId,
        head.name,
        head.variantOf?.designId ?? null,
        head.variantOf?.revision ?? null,
        head.createdAt,
        head.createdBy,
        head.createdAt,
      ],
    );
    await sql.change(
      "INSERT INTO revisions (design_id, number, parent, author, at, edit_id, document) VALUES (?, 1, NULL, ?, ?, NULL, ?)",
      [head.id, head.createdBy, head.createdAt, document],
    );
    await sql.change("UPDATE jobs SET updated_at = ? WHERE id = ?", [head.createdAt, head.jobId]);
  };

  return {
    create: async ({ id = context.newId(), jobId, name, document }, by) => {
      const json = jsonText("/document", document, limits.documentBytes);
      const problems = [
        ...("problem" in json ? [json.problem] : []),
        ...textProblems("/name", name, limits.nameLength),
        ...idProblems("/id", id),
        ...byProblems(by),
      ];
      if ("problem" in json || problems.length > 0) return invalid(problems);
      const outcome = await database.write(async (sql) => {
        if ((await sql.rows("SELECT id FROM jobs WHERE id = ?", [jobId])).length === 0) return missing("job", jobId);
        const known = await findHead(sql, id);
        if (known) return conflict(known);
        const head = newHead({ id, jobId, name, variantOf: null }, by);
        await insertDesign(sql, head, json.text);
        await addAudit(context, sql, by, "create", ["design", id], {
          about: { name, ...(await aboutJob(sql, jobId)) },
        });
        return done(head);
      });
      if (outcome.ok) context.announce({ kind: "design", id, jobId, revision: 1 });
      return outcome;
    },

    find: (id) => findHead(database.read, id),

    ofJob: async (jobId) =>
      (
        await database.read.rows<HeadRow>(
          `SELECT ${headColumns} FROM designs WHERE job_id = ? ORDER BY created_at, id`,
          [jobId],
        )
      ).map(asHead),

    holding: async (json, limit) =>
      (
        await database.read.rows<HeadRow & { jobName: string; document: string }>(
          `SELECT head.*, jobs.name AS "jobName", revisions.document FROM (SELECT ${headColumns} FROM designs) AS head
            JOIN jobs ON jobs.id = head."jobId"
            JOIN revisions ON revisions.design_id = head.id AND revisions.number = head.revision
            WHERE revisions.document LIKE ? ESCAPE '\\' ORDER BY head."updatedAt" DESC, head.id LIMIT ?`,
          [containing(json), pageOf(limit, 0, 10_000)[0]],
        )
      ).map(({ jobName, document, ...head }) => ({
        head: asHead(head),
        jobName,
        document: JSON.parse(document) as unknown,
      })),

    append: async (designId, expectedRevision, document, by, { editId = null, parent, madeFrom } = {}) => {
      const json = jsonText("/document", document, limits.documentBytes);
      const from = parent ?? expectedRevision;
      const problems = [
        ...("problem" in json ? [json.problem] : []),
        ...(editId === null ? [] : idProblems("/editId", editId)),
        ...byProblems(by),
      ];
      if (!(Number.isInteger(expectedRevision) && expectedRevision >= 1)) {
        problems.push({
          path: "/expectedRevision",
          message: "must be the number of a revision",
          value: expectedRevision,
          fix: "write the number of the revision that was edited",
        });
      } else if (!(Number.isInteger(from) && from >= 1 && from <= expectedRevision)) {
        problems.push({
          path: "/parent",
          message: "must be a revision of this design, no later than the one expected",
          value: from,
          fix: `write a whole number from 1 to ${expectedRevision}`,
        });
      }
      if ("problem" in json || problems.length > 0) return invalid(problems);
      const outcome = await database.write(async (sql) => {
        const head = await findHead(sql, designId);
        if (!head) return missing("design", designId);
        // A writer whose answer was lost on the way asks again with the same edit: it is told what was kept.
        const repeated = async () => (editId === null ? undefined : findEdit(sql, designId, editId));
        const kept = await repeated();
        if (kept) return done({ entry: kept, jobId: head.jobId, isNew: false });
        if (madeFrom !== undefined && head.revision === expectedRevision) {
          const latest = (await findLatest(sql, designId))!;
          if ((latest.editId ?? latest.at) !== madeFrom) return conflict(latest);
        }
        // Counting up under the condition is the whole of the race: of two writers one changes no row.
        const changed = await sql.change(
          "UPDATE designs SET revision = revision + 1, updated_at = ? WHERE id = ? AND revision = ?",
          [by.at, designId, expectedRevision],
        );
        if (changed === 0) {
          const keptMeanwhile = await repeated();
          if (keptMeanwhile) return done({ entry: keptMeanwhile, jobId: head.jobId, isNew: false });
          return conflict((await findLatest(sql, designId))!);
        }
        const number = expectedRevision + 1;
        await sql.change(
          "INSERT INTO revisions (design_id, number, parent, author, at, edit_id, document) VALUES (?, ?, ?, ?, ?, ?, ?)",
          [designId, number, from, by.author, by.at, editId, json.text],
        );
        await sql.change("UPDATE jobs SET updated_at = ? WHERE id = ?", [by.at, head.jobId]);
        const entry = { designId, number, parent: from, author: by.author, at: by.at, editId, name: null };
        return done({ entry, jobId: head.jobId, isNew: true });
      });
      if (!outcome.ok) return outcome;
      const { entry, jobId, isNew } = outcome.value;
      if (isNew) context.announce({ kind: "design", id: designId, jobId, revision: entry.number });
      return done(entry);
    },

    revision: async (designId, number) => findRevision(database.read, designId, number),

    latest: (designId) => findLatest(database.read, designId),

    history: (designId, { limit = 10_000, before = 2_147_483_647 } = {}) =>
      database.read.rows<RevisionEntry>(
        `SELECT ${entryColumns} FROM ${entrySource} WHERE revisions.design_id = ? AND revisions.number < ? ORDER BY revisions.number DESC LIMIT ?`,
        [designId, before, pageOf(limit, 0, 1_000_000)[0]],
      ),

    nameVersion: async (designId, number, name, by) => {
      const problems = [...textProblems("/name", name, limits.nameLength), ...byProblems(by)];
      if (problems.length > 0) return invalid(problems);
      const outcome = await database.write(async (sql) => {
        const found = await findRevision(sql, designId, number);
        if (!found) return missing("revision", `${designId}/${number}`);
        await sql.change(
          "INSERT INTO revision_names (design_id, number, name, author, at) VALUES (?, ?, ?, ?, ?) ON CONFLICT (design_id, number) DO UPDATE SET name = excluded.name, author = excluded.author, at = excluded.at",
          [designId, number, name, by.author, by.at],
        );
        const head = await findHead(sql, designId);
        await addAudit(context, sql, by, "nameVersion", ["design", designId], {
          about: { name: head?.name ?? "", version: `${number}`, ...(await aboutJob(sql, head?.jobId ?? null)) },
        });
        const { document: _, ...entry } = found;
        return done({ entry: { ...entry, name }, jobId: head?.jobId ?? "" });
      });
      if (!outcome.ok) return outcome;
      context.announce({ kind: "design", id: designId, jobId: outcome.value.jobId, revision: number });
      return done(outcome.value.entry);
    },

    duplicate: async (designId, { id = context.newId(), name, revision, document, jobId }, by) => {
      const given = document === undefined ? undefined : jsonText("/document", document, limits.documentBytes);
      const problems = [
        ...(given && "problem" in given ? [given.problem] : []),
        ...textProblems("/name", name, limits.nameLength),
        ...idProblems("/id", id),
        ...byProblems(by),
      ];
      if ((given && "problem" in given) || problems.length > 0) return invalid(problems);
      const outcome = await database.write(async (sql) => {
        const original = await findHead(sql, designId);
        if (!original) return missing("design", designId);
        const number = revision ?? original.revision;
        const [source] = await sql.rows<{ document: string }>(
          "SELECT document FROM revisions WHERE design_id = ? AND number = ?",
          [designId, number],
        );
        if (!source) return missing("revision", `${designId}/${number}`);
        const known = await findHead(sql, id);
        if (known) return conflict(known);
        const targetJob = jobId ?? original.jobId;
        if ((await sql.rows("SELECT id FROM jobs WHERE id = ?", [targetJob])).length === 0) {
          return missing("job", targetJob);
        }
        const head = newHead({ id, jobId: targetJob, name, variantOf: { designId, revision: number } }, by);
        await insertDesign(sql, head, given?.text ?? source.document);
        await addAudit(context, sql, by, "duplicate", ["design", id], {
          detail: `${designId}/${number}`,
          about: { name, was: original.name, version: `${number}`, ...(await aboutJob(sql, targetJob)) },
        });
        return done(head);
      });
      if (outcome.ok) context.announce({ kind: "design", id, jobId: outcome.value.jobId, revision: 1 });
      return outcome;
    },
  };
}

const newHead = (
  named: Pick<DesignHead, "id" | "jobId" | "name" | "variantOf">,
  by: { readonly author: string; readonly at: string },
): DesignHead => ({ ...named, revision: 1, createdAt: by.at, createdBy: by.author, updatedAt: by.at });

const asHead = ({ variantOf, variantOfRevision, ...row }: HeadRow): DesignHead => ({
  ...row,
  variantOf:
    variantOf === null || variantOfRevision === null ? null : { designId: variantOf, revision: variantOfRevision },
});

async function findHead(sql: Sql, id: string): Promise<DesignHead | undefined> {
  const [row] = await sql.rows<HeadRow>(`SELECT ${headColumns} FROM designs WHERE id = ?`, [id]);
  return row && asHead(row);
}

type RevisionRow = RevisionEntry & { document: string };

async function findEdit(sql: Sql, designId: string, editId: string): Promise<RevisionEntry | undefined> {
  const [row] = await sql.rows<RevisionEntry>(
    `SELECT ${entryColumns} FROM ${entrySource} WHERE revisions.design_id = ? AND edit_id = ?`,
    [designId, editId],
  );
  return row;
}

async function findRevision(sql: Sql, designId: string, number: number): Promise<Revision | undefined> {
  return readRevision(
    await sql.rows<RevisionRow>(
      `SELECT ${entryColumns}, document FROM ${entrySource} WHERE revisions.design_id = ? AND revisions.number = ?`,
      [designId, number],
    ),
  );
}

async function findLatest(sql: Sql, designId: string): Promise<Revision | undefined> {
  return readRevision(
    await sql.rows<RevisionRow>(
      `SELECT ${entryColumns}, document FROM ${entrySource} WHERE revisions.design_id = ? ORDER BY revisions.number DESC LIMIT 1`,
      [designId],
    ),
  );
}

function readRevision([row]: RevisionRow[]): Revision | undefined {
  return row && { ...row, document: JSON.parse(row.document) as unknown };
}
