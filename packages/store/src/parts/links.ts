import { type Problem, shown } from "@tidewright/design";
import { done, invalid, missing } from "../outcome.ts";
import { type Link, linkKinds } from "../records.ts";
import type { LinksPart } from "../store.ts";
import { aboutLink, addAudit } from "./audit.ts";
import { byProblems, instantProblems } from "./checks.ts";
import type { Context } from "./context.ts";
import { newToken, tokenHash } from "./tokens.ts";

const columns = `id, kind, job_id AS "jobId", design_id AS "designId", revision, created_at AS "createdAt",
  created_by AS "createdBy", expires_at AS "expiresAt", revoked_at AS "revokedAt"`;

/** Stands for an answer whose sender gave it no id: no hash of anything. */
const noDraft = "none";

/** Links for customers, each known by the hash of its token. */
export function linksPart(context: Context): LinksPart {
  const { database } = context;
  return {
    create: async ({ kind, jobId = null, designId = null, revision = null, expiresAt }, by) => {
      const problems: Problem[] = [...instantProblems("/expiresAt", expiresAt), ...byProblems(by)];
      if (!linkKinds.includes(kind)) {
        problems.push({
          path: "/kind",
          message: `${shown(kind)} is no kind of link`,
          value: kind,
          fix: `write one of ${linkKinds.join(", ")}`,
        });
      }
      if (kind === "view" && designId === null) {
        problems.push({ path: "/designId", message: "is missing", fix: "name the design that the link shows" });
      }
      if (problems.length > 0) return invalid(problems);
      const outcome = await database.write(async (sql) => {
        let ofJob = jobId;
        if (designId !== null) {
          const [design] = await sql.rows<{ jobId: string; revision: number }>(
            `SELECT job_id AS "jobId", revision FROM designs WHERE id = ?`,
            [designId],
          );
          if (!design) return missing("design", designId);
          if (revision !== null && !(Number.isInteger(revision) && revision >= 1 && revision <= design.revision)) {
            return missing("revision", `${designId}/${revision}`);
          }
          ofJob = design.jobId;
        } else if (ofJob !== null && (await sql.rows("SELECT id FROM jobs WHERE id = ?", [ofJob])).length === 0) {
          return missing("job", ofJob);
        }
        const token = newToken();
        const link: Link = {
          id: context.newId(),
          kind,
          jobId: ofJob,
          designId,
          revision,
          createdAt: by.at,
          createdBy: by.author,
          expiresAt,
          revokedAt: null,
        };
        await sql.change(
          "INSERT INTO links (id, token_hash, kind, job_id, design_id, revision, created_at, created_by, expires_at, revoked_at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, NULL)",
          [link.id, tokenHash(token), kind, ofJob, designId, revision, by.at, by.author, expiresAt],
        );
        await addAudit(context, sql, by, "create", ["link", link.id], { about: await aboutLink(sql, link.id) });
        return done({ link, token });
      });
      if (outcome.ok) context.announce({ kind: "link", id: outcome.value.link.id, jobId: outcome.value.link.jobId });
      return outcome;
    },
    find: async (token, at) => {
      const [link] = await database.read.rows<Link>(
        `SELECT ${columns} FROM links WHERE token_hash = ? AND expires_at > ? AND revoked_at IS NULL`,
        [tokenHash(token), at],
      );
      return link;
    },
    findAnswered: async (token, draft, at) => {
      const [link] = await database.read.rows<Link>(
        `SELECT ${columns} FROM links WHERE token_hash = ? AND draft_hash = ? AND expires_at > ? AND revoked_at IS NOT NULL`,
        [tokenHash(token), tokenHash(draft), at],
      );
      return link;
    },
    giveTo: (id, draft) =>
      database.write(async (sql) => {
        const hash = draft === null ? noDraft : tokenHash(draft);
        // One condition decides between two drafts, also where several servers share a database.
        const given = await sql.change(
          "UPDATE links SET draft_hash = ? WHERE id = ? AND revoked_at IS NULL AND (draft_hash IS NULL OR draft_hash = ?)",
          [hash, id, hash],
        );
        if (given > 0) return "given";
        const own = await sql.rows("SELECT id FROM links WHERE id = ? AND draft_hash = ?", [id, hash]);
        return draft !== null && own.length > 0 ? "answered" : "refused";
      }),
    list: (jobId) =>
      jobId === null
        ? database.read.rows<Link>(`SELECT ${columns} FROM links WHERE job_id IS NULL ORDER BY created_at, id`)
        : database.read.rows<Link>(`SELECT ${columns} FROM links WHERE job_id = ? ORDER BY created_at, id`, [jobId]),
    revoke: async (id, by) => {
      const problems = byProblems(by);
      if (problems.length > 0) return invalid(problems);
      const outcome = await database.write(async (sql) => {
        // A link revoked twice keeps the instant of the first time.
        await sql.change("UPDATE links SET revoked_at = ? WHERE id = ? AND revoked_at IS NULL", [by.at, id]);
        const [link] = await sql.rows<Link>(`SELECT ${columns} FROM links WHERE id = ?`, [id]);
        if (!link) return missing("link", id);
        await addAudit(context, sql, by, "revoke", ["link", id], { about: await aboutLink(sql, id) });
        return done(link);
      });
      if (outcome.ok) context.announce({ kind: "link", id, jobId: outcome.value.jobId });
      return outcome;
    },
    removeExpired: (at) => database.write((sql) => sql.change("DELETE FROM links WHERE expires_at <= ?", [at])),
  };
}
