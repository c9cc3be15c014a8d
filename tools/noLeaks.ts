import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { isMain, keptFiles, repositoryRoot } from "./repository.ts";

// Patterns are put together from pieces, so that this file does not find itself.
const rootFolders = ["home", "work", "root", "tmp", "Users"].join("|");
const machinePath = new RegExp(`(?:^|[\\s"'\`(=:,\\[<>|]|file://)(/(?:${rootFolders})/[\\w.-]+)`, "g");
const registryHost = new RegExp(
  [
    `https?://${"registry"}[.][\\w.-]+`,
    `\\b${"registry"}[.](?:npm|yarn|npmmirror)[\\w.-]*`,
    `\\bdeb[.]${"debian"}[.]org`,
    `\\b(?:ftp|security)[.][\\w.]*${"debian"}[.]org`,
    `\\b${"pypi"}[.]org|\\bfiles[.]${"pythonhosted"}[.]org`,
  ].join("|"),
  "gi",
);

/** Lists what a text gives away of the machine it was written on, as "line: what". */
export function leaks(text: string): string[] {
  return text.split("\n").flatMap((line, i) => {
    const paths = [...line.matchAll(machinePath)].map((match) => `path ${match[1]}`);
    const hosts = [...line.matchAll(registryHost)].map((match) => `registry host ${match[0]}`);
    return [...paths, ...hosts].map((what) => `${i + 1}: ${what}`);
  });
}

/** Lists the packages of a lockfile that are tied to an address instead of to the registry in use. */
export function tiedPackages(lockfile: string): string[] {
  const { packages } = JSON.parse(lockfile) as { packages: Record<string, { resolved?: string }> };
  return Object.entries(packages)
    .filter(([, entry]) => entry.resolved !== undefined && /^(https?|git)/.test(entry.resolved))
    .map(([name, entry]) => `${name} resolved ${entry.resolved}`);
}

/** Lists every leak in the files git keeps, as "path:line: what". */
export function leaksOfRepository(): string[] {
  const found = keptFiles().flatMap((path) => {
    const full = join(repositoryRoot, path);
    // A file may be deleted but not yet staged.
    if (!statSync(full, { throwIfNoEntry: false })?.isFile()) return [];
    const bytes = readFileSync(full);
    if (bytes.includes(0)) return [];
    return leaks(bytes.toString("utf8")).map((leak) => `${path}:${leak}`);
  });
  const tied = tiedPackages(readFileSync(join(repositoryRoot, "package-lock.json"), "utf8"));
  return [...found, ...tied.map((line) => `package-lock.json: ${line}`)];
}

if (isMain(import.meta.url)) {
  const found = leaksOfRepository();
  for (const line of found) console.error(line);
  process.exitCode = found.length > 0 ? 1 : 0;
}
