import { dirname, resolve } from "node:path";
import type { Plugin } from "vite";

const started = /new Worker\(\s*new URL\("(\.[^"]+\.worker\.ts)", import\.meta\.url\)/g;

/** Builds the workers together with the pages, so that what both compute with is one file, fetched and kept once. Left to
 *  itself the builder gives every worker a program of its own with everything in it; then a first visit fetches the engine
 *  three times. The development server needs none of this: it serves every module by itself. */
export const sharedWorkers: Plugin = {
  name: "shared-workers",
  apply: "build",
  // Before the builder's own treatment of workers sees them.
  enforce: "pre",
  transform: {
    filter: { code: "new Worker(" },
    handler(code, module) {
      const shared = code.replace(started, (_whole, path: string) => {
        const id = resolve(dirname(module), path);
        const file = this.emitFile({ type: "chunk", id, name: path.replace(/^.*\/|\.ts$/g, "") });
        return `new Worker(import.meta.ROLLUP_FILE_URL_${file}`;
      });
      return shared === code ? undefined : { code: shared, map: null };
    },
  },
};
