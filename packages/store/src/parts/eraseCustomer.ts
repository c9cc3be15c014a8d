import { done, invalid, missing, type Outcome } from "../outcome.ts";
import type { By, Erasure } from "../records.ts";
import type { Sql } from "../sql/sqlDatabase.ts";
import { addAudit } from "./audit.ts";
import { byProblems } from "./checks.ts";
import type { Context } from "./context.ts";
import { findCustomer } from "./customers.ts";
import { erasedDocument, personalWords } from "./erasedDocument.ts";
import { containing } from "./searchText.ts";

/** Takes a customer's personal data out of the store and says what was taken; the designs stay, without a name.
 *  Gone: the customer, the names and notes of their jobs, the name and notes of every revision of their designs, what
 *  the customer's name or contact says anywhere in those documents, the names of versions and variants, their photos,
 *  papers and intakes, the links into their jobs, and the details of audit lines about them. */
export async function eraseCustomer(context: Context, customerId: string, by: By): Promise<Outcome<Erasure>> {
  const problems = byProblems(by);
  if (problems.length > 0) return invalid(problems);
  const outcome = await context.database.write(async (sql) => {
    const customer = await findCustomer(sql, customerId);
    if (!customer) return missing("customer", customerId);
    const jobs = (await sql.rows<{ id: string }>("SELECT id FROM jobs WHERE customer_id = ?", [customerId])).map(
      ({ id }) => id,
    );
    const words = personalWords(customer.name, customer.contact);
    const counts = { revisionsChanged: 0, filesErased: 0, linksRemoved: 0, auditLinesCleared: 0, designsKept: 0 };
    for (const jobId of jobs) {
      const designs = await sql.rows<{ id: string }>("SELECT id FROM designs WHERE job_id = ?", [jobId]);
      counts.linksRemoved += await sql.change(
        "DELETE FROM links WHERE job_id = ? OR design_id IN (SELECT id FROM designs WHERE job_id = ?)",
        [jobId, jobId],
      );
      // An intake's job bears the id of its link: nobody shall be told any more that it was answered.
      await sql.change("UPDATE links SET draft_hash = NULL WHERE id = ?", [jobId]);
      counts.designsKept += designs.length;
      for (const { id } of designs) {
        const changed = await eraseRevisions(sql, id, words);
        counts.revisionsChanged += changed;
        if (changed > 0) await addErased(sql, id, by);
        counts.auditLinesCleared += await clearAudit(sql, "design", id);
      }
      await sql.change("UPDATE designs SET name = 'Design' WHERE job_id = ?", [jobId]);
      const personal = await sql.rows<{ id: string }>("SELECT id FROM files WHERE job_id = ? AND kind <> 'chart'", [
        jobId,
      ]);
      for (const { id } of personal) {
        await sql.change("DELETE FROM files WHERE id = ?", [id]);
        counts.auditLinesCleared += await clearAudit(sql, "file", id);
      }
      counts.filesErased += personal.length;
      await sql.change("UPDATE files SET name = 'chart', author = '' WHERE job_id = ?", [jobId]);
      await sql.change(
        "UPDATE jobs SET customer_id = NULL, name = 'Erased customer', notes = '', search_text = 'erased customer', version = version + 1, updated_at = ? WHERE id = ?",
        [by.at, jobId],
      );
    }
    // A job that was removed before, or was another customer's by then, left lines with names.
    const told = await sql.rows<{ id: string }>(
      "SELECT DISTINCT subject_id AS id FROM audit WHERE subject_kind = 'job' AND about LIKE ? ESCAPE '\\'",
      [pair("customerId", customerId)],
    );
    for (const jobId of new Set([...jobs, ...told.map(({ id }) => id)])) {
      counts.auditLinesCleared += await clearAudit(sql, "job", jobId);
      counts.auditLinesCleared += await clearAbout(sql, pair("jobId", jobId));
    }
    counts.auditLinesCleared += await clearAbout(sql, pair("customerId", customerId));
    counts.auditLinesCleared += await clearAudit(sql, "customer", customerId);
    // What the customer did in person stays in the history, without the name.
    await sql.change("UPDATE revisions SET author = '' WHERE author = ?", [customer.name]);
    await sql.change("UPDATE designs SET created_by = '' WHERE created_by = ?", [customer.name]);
    await sql.change("UPDATE audit SET author = '' WHERE author = ?", [customer.name]);
    await sql.change("DELETE FROM customers WHERE id = ?", [customerId]);
    await addAudit(context, sql, by, "erase", ["customer", customerId]);
    return done({
      customerId,
      fields: ["name", "contact", "notes"],
      jobsUnnamed: jobs.length,
      ...counts,
      remark:
        "Backups made before this still hold the data: delete them, or erase again after restoring one. Text about the customer that does not hold the name or contact as written here is not found.",
    } satisfies Erasure);
  });
  if (!outcome.ok) return outcome;
  await context.database.scrub();
  context.announce({ kind: "erasure", customerId });
  return outcome;
}

async function eraseRevisions(sql: Sql, designId: string, words: readonly string[]): Promise<number> {
  await sql.change("UPDATE revision_names SET name = 'Version', author = '' WHERE design_id = ?", [designId]);
  const numbers = await sql.rows<{ number: number }>("SELECT number FROM revisions WHERE design_id = ?", [designId]);
  let changed = 0;
  // One at a time: a long history need not fit into memory.
  for (const { number } of numbers) {
    const where = [designId, number];
    const [row] = await sql.rows<{ document: string }>(
      "SELECT document FROM revisions WHERE design_id = ? AND number = ?",
      where,
    );
    if (!row) continue;
    const erased = JSON.stringify(erasedDocument(JSON.parse(row.document), words));
    if (erased === row.document) continue;
    await sql.change("UPDATE revisions SET document = ? WHERE design_id = ? AND number = ?", [erased, ...where]);
    changed++;
  }
  return changed;
}

/** One more revision, the same as the latest: whoever was away with an edit of what is erased now must not bring it back
 *  as the next one, but is told that somebody was first. */
async function addErased(sql: Sql, designId: string, by: By): Promise<void> {
  await sql.change(
    "INSERT INTO revisions (design_id, number, parent, author, at, document) SELECT id, revisions.number + 1, revisions.number, ?, ?, document FROM designs JOIN revisions ON design_id = id AND number = revision WHERE id = ?",
    [by.author, by.at, designId],
  );
  await sql.change("UPDATE designs SET revision = revision + 1 WHERE id = ?", [designId]);
}

function clearAudit(sql: Sql, kind: string, id: string): Promise<number> {
  return sql.change(
    "UPDATE audit SET detail = '', about = '' WHERE subject_kind = ? AND subject_id = ? AND (detail <> '' OR about <> '')",
    [kind, id],
  );
}

function clearAbout(sql: Sql, pattern: string): Promise<number> {
  return sql.change("UPDATE audit SET detail = '', about = '' WHERE about LIKE ? ESCAPE '\\'", [pattern]);
}

/** Pattern of lines that tell of something by its id. */
const pair = (key: string, id: string): string => containing(`"${key}":${JSON.stringify(id)}`);
