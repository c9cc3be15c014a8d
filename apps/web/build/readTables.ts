import { type Plugin, runnerImport } from "vite";

const rows = /\/packages\/catalogue\/src\/demo\/demoPumps\.ts$/;

/** Reads the table of demonstration pumps while the pages are built and ships the rows, so that a first visit fetches
 *  neither the reader of tables nor the time it takes. */
export const readTables: Plugin = {
  name: "read-tables",
  apply: "build",
  load: {
    filter: { id: rows },
    async handler(id) {
      const { module } = await runnerImport<{ demoPumps: readonly object[] }>(id, {
        configFile: false,
        resolve: { conditions: ["source"] },
      });
      return { code: `export const demoPumps = ${JSON.stringify(module.demoPumps)};`, moduleType: "js" };
    },
  },
};
