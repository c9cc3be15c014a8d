import { createReadStream, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { routes } from "@tidewright/protocol";
import type { App } from "../app.ts";
import { mount } from "../http/mount.ts";

const start = "tidewright-backup-";

/** Hands out everything as of now in one file, while edits go on.
 *  app; folder of this server alone to write it into first, where there is room for a second copy; the system's own where
 *  none is given   -> nothing */
export function mountBackup(app: App, folder?: string): void {
  if (folder !== undefined) {
    for (const name of readdirSync(folder)) {
      // Left by a server that was killed while it sent one.
      if (name.startsWith(start)) rmSync(join(folder, name), { recursive: true, force: true });
    }
  }
  mount(app, routes.backup, async ({ by }) => {
    const place = mkdtempSync(join(folder ?? tmpdir(), start));
    const away = (): void => rmSync(place, { recursive: true, force: true });
    try {
      const path = join(place, "backup");
      const { bytes } = await app.store.backup(path);
      await app.store.audit.add(by, "backup", { kind: "store", id: "all" }, `${bytes} bytes`);
      const file = createReadStream(path);
      file.once("close", away);
      const name = `tidewright-${by.at.slice(0, 10)}.backup`;
      return new Response(Readable.toWeb(file) as ReadableStream<Uint8Array>, {
        headers: {
          "Content-Type": "application/octet-stream",
          "Content-Length": String(bytes),
          "Content-Disposition": `attachment; filename="${name}"`,
        },
      });
    } catch (error) {
      away();
      throw error;
    }
  });
}
