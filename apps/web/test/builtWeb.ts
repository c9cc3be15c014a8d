import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "vite";

const root = fileURLToPath(new URL("..", import.meta.url));

/** The web app as it will be shipped, in a folder of its own. */
export interface BuiltWeb {
  readonly folder: string;
  remove(): Promise<void>;
}

/** Builds the web app; where TIDEWRIGHT_WEB names a folder that holds it already, that one is taken and left alone. */
export async function buildWeb(): Promise<BuiltWeb> {
  const given = process.env["TIDEWRIGHT_WEB"];
  if (given) return { folder: given, remove: async () => {} };
  const folder = await mkdtemp(join(tmpdir(), "tidewright-web-"));
  await asShipped(async () => {
    await build({ root, logLevel: "error", build: { outDir: folder, emptyOutDir: true } });
    // The server's part of the pages: what it draws before their program arrives.
    const configFile = join(root, "vite.firstPicture.config.ts");
    await build({ root, configFile, logLevel: "error", build: { outDir: join(folder, ".server"), emptyOutDir: true } });
  });
  return { folder, remove: () => rm(folder, { recursive: true, force: true }) };
}

/** A test's own surroundings would make a page for developers: without what works offline, and slower. */
async function asShipped(work: () => Promise<void>): Promise<void> {
  const { NODE_ENV: before } = process.env;
  process.env["NODE_ENV"] = "production";
  try {
    await work();
  } finally {
    process.env["NODE_ENV"] = before;
  }
}
