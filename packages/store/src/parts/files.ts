import { createHash } from "node:crypto";
import { shown } from "@tidewright/design";
import { done, invalid, missing } from "../outcome.ts";
import { type AuditAbout, type FileEntry, fileKinds, type StoredFile } from "../records.ts";
import type { Sql } from "../sql/sqlDatabase.ts";
import type { FilesPart } from "../store.ts";
import { aboutJob, addAudit } from "./audit.ts";
import { byProblems, idProblems, textProblems } from "./checks.ts";
import type { Context } from "./context.ts";

const columns = `id, job_id AS "jobId", kind, name, content_type AS "contentType", size, sha256, author, at`;

/** Files with their bytes, within a size; whether the bytes are what the content type says is for the caller to check. */
export function filesPart(context: Context): FilesPart {
  const { database, limits } = context;
  return {
    put: async ({ id = context.newId(), jobId = null, kind, name, contentType, bytes }, by) => {
      const problems = [...textProblems("/name", name, limits.nameLength), ...idProblems("/id", id), ...byProblems(by)];
      if (!fileKinds.includes(kind)) {
        problems.push({
          path: "/kind",
          message: `${shown(kind)} is no kind of file`,
          value: kind,
          fix: `write one of ${fileKinds.join(", ")}`,
        });
      }
      if (typeof contentType !== "string" || !/^[a-z0-9!#$&^_.+-]{1,60}\/[a-z0-9!#$&^_.+-]{1,60}$/.test(contentType)) {
        problems.push({
          path: "/contentType",
          message: `${shown(contentType)} is no media type`,
          value: contentType,
          fix: "write one like image/png, without parameters",
        });
      }
      if (bytes.byteLength === 0 || bytes.byteLength > limits.fileBytes) {
        problems.push({
          path: "/bytes",
          message: bytes.byteLength === 0 ? "the file is empty" : `the file has ${bytes.byteLength} bytes`,
          value: bytes.byteLength,
          fix: `give a file of 1 to ${limits.fileBytes} bytes`,
        });
      }
      if (problems.length > 0) return invalid(problems);
      const entry: FileEntry = {
        id,
        jobId,
        kind,
        name,
        contentType,
        size: bytes.byteLength,
        sha256: createHash("sha256").update(bytes).digest("hex"),
        author: by.author,
        at: by.at,
      };
      const outcome = await database.write(async (sql) => {
        if (jobId !== null && (await sql.rows("SELECT id FROM jobs WHERE id = ?", [jobId])).length === 0) {
          return missing("job", jobId);
        }
        const kept = await sql.change(
          "INSERT INTO files (id, job_id, kind, name, content_type, size, sha256, author, at, bytes) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (id) DO NOTHING",
          [id, jobId, kind, name, contentType, entry.size, entry.sha256, by.author, by.at, bytes],
        );
        if (kept === 0) {
          return invalid([{ path: "/id", message: "is taken by another file", value: id, fix: "leave the id out" }]);
        }
        await addAudit(context, sql, by, "put", ["file", id], { about: await aboutFile(sql, entry) });
        return done(entry);
      });
      if (outcome.ok) context.announce({ kind: "file", id, jobId });
      return outcome;
    },
    get: async (id) => {
      const [file] = await database.read.rows<StoredFile>(`SELECT ${columns}, bytes FROM files WHERE id = ?`, [id]);
      return file;
    },
    list: (jobId) =>
      jobId === null
        ? database.read.rows<FileEntry>(`SELECT ${columns} FROM files WHERE job_id IS NULL ORDER BY at, id`)
        : database.read.rows<FileEntry>(`SELECT ${columns} FROM files WHERE job_id = ? ORDER BY at, id`, [jobId]),
    remove: async (id, by) => {
      const outcome = await database.write(async (sql) => {
        const [entry] = await sql.rows<FileEntry>(`SELECT ${columns} FROM files WHERE id = ?`, [id]);
        if (!entry) return missing("file", id);
        await sql.change("DELETE FROM files WHERE id = ?", [id]);
        await addAudit(context, sql, by, "remove", ["file", id], { about: await aboutFile(sql, entry) });
        return done(entry);
      });
      if (outcome.ok) context.announce({ kind: "file", id, jobId: outcome.value.jobId });
      return outcome;
    },
  };
}

const aboutFile = async (sql: Sql, { name, kind, jobId }: FileEntry): Promise<AuditAbout> => ({
  name,
  kind,
  ...(await aboutJob(sql, jobId)),
});
