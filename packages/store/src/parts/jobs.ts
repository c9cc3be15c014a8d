import { type Problem, shown } from "@tidewright/design";
import { conflict, done, invalid, missing } from "../outcome.ts";
import { type Job, type JobFields, jobStages } from "../records.ts";
import type { Sql, SqlValue } from "../sql/sqlDatabase.ts";
import type { JobsPart } from "../store.ts";
import { addAudit, ofCustomer } from "./audit.ts";
import { byProblems, idProblems, pageOf, textProblems } from "./checks.ts";
import type { Context } from "./context.ts";
import { findCustomer } from "./customers.ts";
import { searchPatterns, searchText } from "./searchText.ts";

const columns = `jobs.id, jobs.name, customer_id AS "customerId", customers.name AS "customerName", stage, jobs.notes,
  jobs.version, jobs.created_at AS "createdAt", jobs.updated_at AS "updatedAt"`;
const source = "jobs LEFT JOIN customers ON customers.id = jobs.customer_id";

/** Jobs: one customer's system each, found by any word of its name, its notes or its customer. */
export function jobsPart(context: Context): JobsPart {
  const { database, limits } = context;
  const problemsOf = async (sql: Sql, fields: JobFields): Promise<Problem[]> => {
    const problems = [
      ...(fields.name === undefined ? [] : textProblems("/name", fields.name, limits.nameLength)),
      ...(fields.notes === undefined ? [] : textProblems("/notes", fields.notes, limits.notesLength, { empty: true })),
    ];
    if (fields.stage !== undefined && !jobStages.includes(fields.stage)) {
      problems.push({
        path: "/stage",
        message: `${shown(fields.stage)} is no stage of a job`,
        value: fields.stage,
        fix: `write one of ${jobStages.join(", ")}`,
      });
    }
    const { customerId } = fields;
    if (typeof customerId === "string" && !(await findCustomer(sql, customerId))) {
      problems.push({
        path: "/customerId",
        message: `there is no customer ${shown(customerId)}`,
        value: customerId,
        fix: "name a customer that is kept, or null",
      });
    }
    return problems;
  };
  return {
    create: async (fields, by) => {
      const id = fields.id ?? context.newId();
      const outcome = await database.write(async (sql) => {
        const problems = [...(await problemsOf(sql, fields)), ...idProblems("/id", id), ...byProblems(by)];
        if (problems.length > 0) return invalid(problems);
        const known = await findJob(sql, id);
        if (known) return conflict(known);
        const { name, customerId = null, stage = "intake", notes = "" } = fields;
        await sql.change(
          "INSERT INTO jobs (id, customer_id, name, stage, notes, search_text, version, created_at, updated_at) VALUES (?, ?, ?, ?, ?, ?, 1, ?, ?)",
          [id, customerId, name, stage, notes, searchText(name, notes), by.at, by.at],
        );
        await addAudit(context, sql, by, "create", ["job", id], { about: { name, ...ofCustomer(customerId) } });
        return done((await findJob(sql, id))!);
      });
      if (outcome.ok) context.announce({ kind: "job", id, version: 1 });
      return outcome;
    },
    find: (id) => findJob(database.read, id),
    search: async ({ text = "", stage, customerId, limit = 100, offset = 0 } = {}) => {
      const values: SqlValue[] = [];
      const conditions = ["1 = 1"];
      for (const pattern of searchPatterns(text)) {
        conditions.push("(jobs.search_text LIKE ? ESCAPE '\\' OR customers.search_text LIKE ? ESCAPE '\\')");
        values.push(pattern, pattern);
      }
      if (stage !== undefined) {
        conditions.push("stage = ?");
        values.push(stage);
      }
      if (customerId !== undefined) {
        conditions.push("customer_id = ?");
        values.push(customerId);
      }
      const where = conditions.join(" AND ");
      const [counted] = await database.read.rows<{ total: number }>(
        `SELECT CAST(COUNT(*) AS INTEGER) AS total FROM ${source} WHERE ${where}`,
        values,
      );
      const items = await database.read.rows<Job>(
        `SELECT ${columns} FROM ${source} WHERE ${where} ORDER BY jobs.updated_at DESC, jobs.id LIMIT ? OFFSET ?`,
        [...values, ...pageOf(limit, offset)],
      );
      return { items, total: counted?.total ?? 0 };
    },
    update: async (id, expectedVersion, fields, by) => {
      const outcome = await database.write(async (sql) => {
        const known = await findJob(sql, id);
        if (!known) return missing("job", id);
        const problems = [...(await problemsOf(sql, fields)), ...byProblems(by)];
        if (problems.length > 0) return invalid(problems);
        const next = { ...known, ...fields };
        const changed = await sql.change(
          "UPDATE jobs SET customer_id = ?, name = ?, stage = ?, notes = ?, search_text = ?, version = version + 1, updated_at = ? WHERE id = ? AND version = ?",
          [
            next.customerId,
            next.name,
            next.stage,
            next.notes,
            searchText(next.name, next.notes),
            by.at,
            id,
            expectedVersion,
          ],
        );
        if (changed === 0) return conflict((await findJob(sql, id)) ?? known);
        await addAudit(context, sql, by, "update", ["job", id], {
          about: {
            name: next.name,
            ...(next.name === known.name ? {} : { was: known.name }),
            fields: Object.keys(fields).join(", "),
            ...ofCustomer(next.customerId),
          },
        });
        return done((await findJob(sql, id))!);
      });
      if (outcome.ok) context.announce({ kind: "job", id, version: outcome.value.version });
      return outcome;
    },
    remove: async (id, expectedVersion, by) => {
      const outcome = await database.write(async (sql) => {
        const known = await findJob(sql, id);
        if (!known) return missing("job", id);
        if (known.version !== expectedVersion) return conflict(known);
        const designsOfJob = "(SELECT id FROM designs WHERE job_id = ?)";
        // A variant in another job outlives what it was made from.
        await sql.change(
          `UPDATE designs SET variant_of = NULL, variant_of_revision = NULL WHERE job_id <> ? AND variant_of IN ${designsOfJob}`,
          [id, id],
        );
        await sql.change(`DELETE FROM links WHERE job_id = ? OR design_id IN ${designsOfJob}`, [id, id]);
        await sql.change(`DELETE FROM revision_names WHERE design_id IN ${designsOfJob}`, [id]);
        await sql.change(`UPDATE revisions SET parent = NULL WHERE design_id IN ${designsOfJob}`, [id]);
        await sql.change(`DELETE FROM revisions WHERE design_id IN ${designsOfJob}`, [id]);
        await sql.change("DELETE FROM designs WHERE job_id = ?", [id]);
        await sql.change("DELETE FROM files WHERE job_id = ?", [id]);
        await sql.change("DELETE FROM jobs WHERE id = ?", [id]);
        await addAudit(context, sql, by, "remove", ["job", id], {
          about: { name: known.name, ...ofCustomer(known.customerId) },
        });
        return done(known);
      });
      if (outcome.ok) context.announce({ kind: "job", id, version: expectedVersion + 1 });
      return outcome;
    },
  };
}

async function findJob(sql: Sql, id: string): Promise<Job | undefined> {
  return (await sql.rows<Job>(`SELECT ${columns} FROM ${source} WHERE jobs.id = ?`, [id]))[0];
}
