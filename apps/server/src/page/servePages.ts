import { existsSync } from "node:fs";
import { serveStatic } from "@hono/node-server/serve-static";
import type { App } from "../app.ts";

/** Serves the built screens.
 *  app; folder of the built screens; paths out of it are not served */
export function servePages(app: App, folder: string): void {
  if (!existsSync(folder)) return;
  app.hono.get(
    "*",
    serveStatic({
      root: folder,
      precompressed: true,
      onFound: (path, context) => {
        // Names of built parts bear a hash of their content; everything else may change under its name.
        const forEver = /\/assets\/[^/]+-[\w-]{8,}\.\w+$/.test(path);
        context.header("Cache-Control", forEver ? "public, max-age=31536000, immutable" : "no-cache");
      },
    }),
  );
}
