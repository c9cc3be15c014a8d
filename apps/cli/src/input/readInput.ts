import { open } from "node:fs/promises";
import { badSource } from "./badInput.ts";

/** Largest input that is read [bytes]. */
const largestInput = 10_000_000;

/** How a source is called in messages: the file as it was typed, or the standard input. */
export function sourceName(file: string): string {
  return file === "-" ? "standard input" : file;
}

/** Returns the text of a file, or of the standard input for "-"; throws BadInput where there is none to be had. */
export async function readInput(file: string): Promise<string> {
  const bytes = file === "-" ? await collect(process.stdin, file) : await readFileBytes(file);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw badSource(sourceName(file), "the text is not UTF-8", "save the file as UTF-8; is it a text file at all?");
  }
}

async function readFileBytes(file: string): Promise<Buffer> {
  try {
    const handle = await open(file, "r");
    try {
      const found = await handle.stat();
      if (found.isDirectory()) throw badSource(file, "this is a folder, not a file", "name a file inside it");
      if (found.size > largestInput) throw tooLarge(file, found.size);
      return await collect(handle.createReadStream({ autoClose: false }), file);
    } finally {
      await handle.close();
    }
  } catch (error) {
    throw asBadInput(error, file);
  }
}

/** Pipes and devices do not know their size beforehand, so bytes are counted while they come. */
async function collect(stream: AsyncIterable<unknown>, file: string): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of stream) {
    const bytes = Buffer.from(chunk as Uint8Array);
    size += bytes.length;
    if (size > largestInput) throw tooLarge(file, size);
    chunks.push(bytes);
  }
  return Buffer.concat(chunks);
}

function tooLarge(file: string, size: number): Error {
  return badSource(
    sourceName(file),
    `the input is larger than ${largestInput / 1e6} MB`,
    "check that this is the right file; split several systems into a file each",
    size,
  );
}

function asBadInput(error: unknown, file: string): unknown {
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  if (code === "ENOENT" || code === "ENOTDIR") return badSource(file, "there is no such file", "check the name", file);
  if (code === "EISDIR") return badSource(file, "this is a folder, not a file", "name a file inside it");
  if (code === "EACCES" || code === "EPERM")
    return badSource(file, "the file may not be read", "change its permissions, or copy it");
  if (code === "ENAMETOOLONG" || code === "ELOOP" || code === "ERR_INVALID_ARG_VALUE")
    return badSource(file, "this cannot be the name of a file", "check the name");
  return error;
}
