import { parse } from "@formatjs/icu-messageformat-parser";
import { type Plugin, runnerImport } from "vite";

/** The areas of the catalogue; what is put together out of them stays as it is. */
const areas = /\/packages\/words\/src\/(?:en|de)\/(?!(?:near|english|german)\.ts$)\w+\.ts$/;

/** Parses the texts of the screens while the pages are built: a page then needs no parser, which is larger than what its
 *  results add to the texts. */
export const parsedTexts: Plugin = {
  name: "parsed-texts",
  apply: "build",
  config: () => ({
    resolve: {
      alias: [
        {
          find: /^@formatjs\/icu-messageformat-parser$/,
          replacement: "@formatjs/icu-messageformat-parser/no-parser.js",
        },
      ],
    },
  }),
  load: {
    filter: { id: areas },
    async handler(id) {
      const { module } = await runnerImport<Record<string, Record<string, string>>>(id, { configFile: false });
      const code = Object.entries(module).map(([name, texts]) => {
        const parsed = Object.entries(texts).map(([key, text]) => [
          key,
          /['{]/.test(text) ? parse(text, { ignoreTag: true }) : text,
        ]);
        return `export const ${name} = ${JSON.stringify(Object.fromEntries(parsed))};`;
      });
      return { code: code.join("\n"), moduleType: "js" };
    },
  },
};
