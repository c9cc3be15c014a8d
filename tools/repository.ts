import { execFileSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

/** The folder that holds package.json of the whole repository. */
export const repositoryRoot = dirname(dirname(fileURLToPath(import.meta.url)));

/** The packages with documented entry points, inner to outer. */
export const libraryPackages = [
  "units",
  "engine",
  "catalogue",
  "design",
  "advice",
  "words",
  "editor",
  "protocol",
  "report",
  "store",
] as const;

const neverKept = new Set([".git", "node_modules", "dist", "coverage", ".vite", "test-results", "screenshots"]);

/** Lists every file under a folder, paths relative to it with forward slashes, build outputs left out. */
export function filesUnder(folder: string): string[] {
  const found: string[] = [];
  const walk = (directory: string): void => {
    for (const entry of readdirSync(directory, { withFileTypes: true })) {
      if (neverKept.has(entry.name)) continue;
      const path = join(directory, entry.name);
      if (entry.isDirectory()) walk(path);
      else if (entry.isFile()) found.push(relative(folder, path).split(sep).join("/"));
    }
  };
  walk(folder);
  return found.sort();
}

/** Lists the files git keeps or would keep; without git (an unpacked archive) everything but build outputs. */
export function keptFiles(): string[] {
  try {
    const listed = execFileSync("git", ["ls-files", "-z", "--cached", "--others", "--exclude-standard"], {
      cwd: repositoryRoot,
      encoding: "utf8",
      stdio: ["ignore", "pipe", "ignore"],
    });
    return [...new Set(listed.split("\0"))].filter((path) => path !== "").sort();
  } catch {
    return filesUnder(repositoryRoot).filter((path) => !path.endsWith(".tsbuildinfo"));
  }
}

/** Whether a module is the script that Node was asked to run, rather than one imported by it. */
export function isMain(moduleUrl: string): boolean {
  return moduleUrl === pathToFileURL(process.argv[1] ?? "").href;
}
