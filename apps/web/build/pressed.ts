import { readdir, readFile, stat, writeFile } from "node:fs/promises";
import { join, resolve } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, constants } from "node:zlib";
import type { Plugin } from "vite";

const brotli = promisify(brotliCompress);
/** What shrinks when it is compressed; pictures and fonts are compressed already. */
const shrinks = /\.(?:js|css|html|svg|json|webmanifest)$/;
/** Below this the head of the answer weighs more [bytes]. */
const least = 512;

/** Leaves beside every file of the pages its most compressed form, which takes too long to be made while somebody waits; the
 *  server sends that one. */
export const pressed: Plugin = {
  name: "pressed",
  apply: "build",
  // After the service worker, which is a file too.
  enforce: "post",
  closeBundle: {
    order: "post",
    sequential: true,
    async handler() {
      const { root, build } = this.environment.config;
      const folder = resolve(root, build.outDir);
      for (const name of await readdir(folder, { recursive: true })) {
        const path = join(folder, name);
        if (!shrinks.test(name) || /(^|[/\\])\./.test(name) || (await stat(path)).size < least) continue;
        const bytes = await readFile(path);
        const small = await brotli(bytes, {
          params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.byteLength },
        });
        await writeFile(`${path}.br`, small);
      }
    },
  },
};
