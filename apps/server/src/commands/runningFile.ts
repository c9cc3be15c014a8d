import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";

const running = z.object({ address: z.string(), secret: z.string() });

/** Where a running server is reached from this machine, and the secret that its own commands show. */
export type Running = z.infer<typeof running>;

const pathIn = (folder: string): string => join(folder, "running.json");

/** Writes where a server is reached into its data folder, for its owner's eyes alone. */
export function writeRunning(folder: string, told: Running): void {
  rmSync(pathIn(folder), { force: true });
  writeFileSync(pathIn(folder), JSON.stringify(told), { mode: 0o600 });
}

/** Returns where the server of a data folder was last reached, or undefined; a killed server leaves its file behind. */
export function readRunning(folder: string): Running | undefined {
  try {
    return running.parse(JSON.parse(readFileSync(pathIn(folder), "utf8")));
  } catch {
    return undefined;
  }
}

/** Takes the file away at the end of a server. */
export function removeRunning(folder: string): void {
  rmSync(pathIn(folder), { force: true });
}
