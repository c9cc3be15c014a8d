import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../../../../", import.meta.url));
const main = fileURLToPath(new URL("../main.ts", import.meta.url));

/** Returns what a real process of the command line says and ends with; the sources run, no build is needed. */
export function runCli(args: readonly string[], input = "", env: Readonly<Record<string, string>> = {}) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ["--conditions=source", "--import", "tsx", main, ...args],
    { cwd: root, input, encoding: "utf8", env: { ...process.env, ...env }, maxBuffer: 50_000_000 },
  );
  return { code: status, stdout, stderr };
}

/** Returns the path of an example, from the root of the repository, where the processes run. */
export function example(name: string): string {
  return `examples/${name}`;
}
