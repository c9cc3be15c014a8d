import { closeSync, createWriteStream, existsSync, fsyncSync, openSync, renameSync, rmSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import type { ReadableStream as WebStream } from "node:stream/web";
import { routes } from "@tidewright/protocol";
import { openStore, StoreFailure } from "@tidewright/store";
import { BadInput } from "./badInput.ts";
import { type Running, readRunning } from "./runningFile.ts";

/** Writes everything that is kept into one new file: a running server is asked for it, else the store is opened here.
 *  file to make; data folder; database URL where there is one
 *  Throws: `BadInput` where the file is there or cannot be made, StoreFailure. */
export async function backupCommand(
  file: string,
  { data, database }: { readonly data: string; readonly database: string | undefined },
): Promise<void> {
  const target = resolve(file);
  if (existsSync(target)) {
    throw new BadInput(`${target} is there already: name a file that is not, so that no backup is lost.`);
  }
  if (!existsSync(dirname(target))) {
    throw new BadInput(`There is no folder ${dirname(target)}: make it, or name another file.`);
  }
  // A store that nobody made would be made here, and an empty backup taken for the shop's.
  if (database === undefined && !existsSync(data)) {
    throw new BadInput(`There is no data folder ${resolve(data)}: name it with --data.`);
  }
  const bytes = (await askRunning(data, target, database)) ?? (await openAndCopy(database ?? data, target));
  process.stdout.write(`${target} holds everything as of now, ${bytes} bytes.\n`);
}

async function openAndCopy(place: string, target: string): Promise<number> {
  const store = await openStore(place);
  try {
    return (await store.backup(target)).bytes;
  } finally {
    await store.close();
  }
}

/** Bytes that the running server sent, or undefined where none runs: a killed one leaves its address behind. */
async function askRunning(data: string, target: string, database: string | undefined): Promise<number | undefined> {
  const running = readRunning(data);
  // PostgreSQL takes any number of programs; the embedded store's one holder alone can copy it.
  if (running === undefined || database !== undefined) return undefined;
  const response = await ask(running);
  if (response === undefined) return undefined;
  // Another server has the port now.
  if (response.status === 401 || response.status === 403 || response.status === 404) return undefined;
  if (!response.ok || response.body === null) {
    const told = (await response.json().catch(() => undefined)) as { readonly detail?: string } | undefined;
    throw new BadInput(`The running server made no backup: ${told?.detail ?? `status ${response.status}`}`);
  }
  const unfinished = `${target}.unfinished`;
  try {
    const out = createWriteStream(unfinished, { mode: 0o600 });
    await pipeline(Readable.fromWeb(response.body as WebStream<Uint8Array>), out);
    const wanted = Number(response.headers.get("Content-Length"));
    if (out.bytesWritten !== wanted) throw new BadInput("The running server stopped before the backup was whole.");
    flush(unfinished);
    renameSync(unfinished, target);
    return wanted;
  } catch (error) {
    rmSync(unfinished, { force: true });
    if ((error as { readonly code?: unknown }).code === "ENOSPC") {
      throw new StoreFailure("diskFull", `The disk of ${dirname(target)} has no room for the backup: none was made.`);
    }
    throw error;
  }
}

async function ask({ address, secret }: Running): Promise<Response | undefined> {
  try {
    return await fetch(new URL(routes.backup.path, address), {
      method: routes.backup.method,
      headers: { "X-Tidewright": "1", "X-Tidewright-Local": secret },
    });
  } catch {
    return undefined;
  }
}

/** A backup that is told of shall outlive a power cut. */
function flush(path: string): void {
  const descriptor = openSync(path, "r+");
  try {
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}
