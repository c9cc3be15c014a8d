import type { FileEntry, FileKind } from "@tidewright/protocol";
import type { By, Store } from "@tidewright/store";
import { kept } from "../doors/kept.ts";
import { badInput, notThere } from "../doors/refusal.ts";
import { mostBytes } from "./allowedTypes.ts";
import { judgeFile, tooLarge } from "./judgeFile.ts";
import { readBytes } from "./readBytes.ts";

const typeOfStatus = { 413: "too-large", 415: "media-type", 422: "bad-document" } as const;

/** Keeps an uploaded file once it is known what it is.
 *  store; jobId of the job it belongs to, null for the shop; kind and name as sent; request with its bytes; by   -> FileEntry
 *  Throws: `Refused` 404 without that job, 413 as soon as too many bytes came, 415 for what is not wanted, 422.
 *  Source: `judgeFile`. */
export async function keepFile(
  store: Store,
  jobId: string | null,
  { kind, name }: { readonly kind: FileKind; readonly name: string },
  request: Request,
  by: By,
): Promise<FileEntry> {
  if (jobId !== null && !(await store.jobs.find(jobId))) throw notThere(`There is no job "${jobId}".`);
  const length = request.headers.get("Content-Length") ?? undefined;
  const reading = await readBytes(request.body, length, mostBytes(kind));
  const judged = reading.ok ? await judgeFile(kind, name, reading.bytes) : tooLarge(kind, name);
  if (!judged.ok) throw badInput([judged.problem], judged.status, typeOfStatus[judged.status]);
  return kept(
    await store.files.put({ jobId, kind, name: judged.name, contentType: judged.contentType, bytes: judged.bytes }, by),
  );
}
