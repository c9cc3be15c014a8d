import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type ApiEntry, readPublicApi } from "./publicApi.ts";
import { isMain, libraryPackages, repositoryRoot } from "./repository.ts";

const folder = join("docs", "reference");

/** Returns the reference page of one package: every function and value it hands out, file by file, with its comment. */
export function referencePage(packageName: string, description: string, entries: readonly ApiEntry[]): string {
  const shown = entries.filter((entry) => entry.isPublic);
  const prefix = `packages/${packageName}/src/`;
  const files = [...new Set(shown.map((entry) => entry.file))];
  const lines = [
    `# @tidewright/${packageName}`,
    "",
    description,
    "",
    "Made from the comments in the source by `npm run docs`; edit those, not this page.",
  ];
  for (const file of files) {
    lines.push("", `## ${file.slice(prefix.length)}`);
    for (const entry of shown.filter((candidate) => candidate.file === file)) {
      lines.push("", `### ${entry.name}`, "", "```ts", entry.signature, "```");
      // Set as text: the columns of arguments and units line up as they do in the source.
      if (entry.comment !== "") lines.push("", "```text", ...entry.comment.split("\n"), "```");
    }
  }
  return `${lines.join("\n")}\n`;
}

/** Makes all reference pages in memory: path from the repository root to text. */
export function allReferencePages(): Map<string, string> {
  const pages = new Map<string, string>();
  const contents = ["# Reference", "", "One page per package, made by `npm run docs`.", ""];
  for (const name of libraryPackages) {
    const manifest = readFileSync(join(repositoryRoot, "packages", name, "package.json"), "utf8");
    const { description } = JSON.parse(manifest) as { description: string };
    pages.set(join(folder, `${name}.md`), referencePage(name, description, readPublicApi(name)));
    contents.push(`- [@tidewright/${name}](${name}.md): ${description}`);
  }
  pages.set(join(folder, "README.md"), `${contents.join("\n")}\n`);
  return pages;
}

/** Lists the pages on disk that differ from what the comments say now, missing and left-over ones included. */
export function stalePages(pages: ReadonlyMap<string, string>): string[] {
  const stale = [...pages].flatMap(([path, text]) => {
    const full = join(repositoryRoot, path);
    if (!existsSync(full)) return [`${path} is missing`];
    return readFileSync(full, "utf8") === text ? [] : [`${path} is stale`];
  });
  return [...stale, ...leftOver(pages).map((path) => `${path} belongs to no package`)];
}

function leftOver(pages: ReadonlyMap<string, string>): string[] {
  const full = join(repositoryRoot, folder);
  const present = existsSync(full) ? readdirSync(full) : [];
  return present.map((name) => join(folder, name)).filter((path) => path.endsWith(".md") && !pages.has(path));
}

if (isMain(import.meta.url)) {
  const pages = allReferencePages();
  if (process.argv.includes("--check")) {
    const stale = stalePages(pages);
    for (const line of stale) console.error(line);
    if (stale.length > 0) console.error("Write them anew with: npm run docs");
    process.exitCode = stale.length > 0 ? 1 : 0;
  } else {
    mkdirSync(join(repositoryRoot, folder), { recursive: true });
    for (const path of leftOver(pages)) rmSync(join(repositoryRoot, path));
    for (const [path, text] of pages) writeFileSync(join(repositoryRoot, path), text);
    console.log(`${pages.size} pages written to ${folder}`);
  }
}
