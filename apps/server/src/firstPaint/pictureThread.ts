import { existsSync } from "node:fs";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { Worker } from "node:worker_threads";
import type { PumpRow } from "@tidewright/catalogue";
import type { Reader } from "@tidewright/protocol";

/** The built program that draws a page's first picture; pages in hidden folders are not served. */
const pictureFile = (web: string): string => resolve(join(web, ".server", "renderFirstPicture.js"));
/** A page waits no longer than this for its picture [ms]: the program itself would be there by then. */
const patience = 1500;

/** The screens are built apart, so their program is found by its path and not by its package. */
const program = (file: string): string => `
const { parentPort } = require("node:worker_threads");
const loaded = import(${JSON.stringify(pathToFileURL(file).href)});
parentPort.on("message", async ({ id, document, pumps, reader }) => {
  let picture;
  try { picture = await (await loaded).renderFirstPicture(document, pumps, reader); } catch {}
  parentPort.postMessage({ id, picture });
});`;

/** What draws first pictures beside the thread that answers. */
export interface PictureThread {
  /** Markup of a document's drawing, with the shop's own pumps, in the language and units of its reader; undefined where it
   *  cannot be drawn, or not soon enough. */
  draw(document: unknown, pumps: readonly PumpRow[], reader: Reader): Promise<string | undefined>;
  close(): Promise<void>;
}

/** Returns what draws first pictures, in a thread of its own.
 *  web folder of the built screens   -> PictureThread; it draws nothing where the screens were built without it */
export function pictureThread(web: string): PictureThread {
  let worker: Worker | undefined;
  let asked = 0;
  const waiting = new Map<number, (picture: string | undefined) => void>();
  const give = (id: number, picture: string | undefined) => {
    waiting.get(id)?.(picture);
    waiting.delete(id);
  };
  const start = (): Worker => {
    const started = new Worker(program(pictureFile(web)), { eval: true });
    started.unref();
    started.on("message", ({ id, picture }: { id: number; picture?: string }) => give(id, picture));
    // A thread that fails leaves the pages as they were built; the next one starts it anew.
    started.on("error", () => {
      worker = undefined;
      for (const id of [...waiting.keys()]) give(id, undefined);
    });
    return started;
  };
  // Loading the program takes longer than drawing with it, so it is there before the first page is asked for.
  if (existsSync(pictureFile(web))) worker = start();
  return {
    draw(document, pumps, reader) {
      if (!existsSync(pictureFile(web))) return Promise.resolve(undefined);
      worker ??= start();
      const id = ++asked;
      return new Promise((done) => {
        const limit = setTimeout(() => give(id, undefined), patience);
        limit.unref();
        waiting.set(id, (picture) => {
          clearTimeout(limit);
          done(picture);
        });
        worker?.postMessage({ id, document, pumps, reader });
      });
    },
    async close() {
      await worker?.terminate();
    },
  };
}
