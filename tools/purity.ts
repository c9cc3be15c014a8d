import { readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { filesUnder, isMain, repositoryRoot } from "./repository.ts";

/** Packages whose answers depend on nothing but their arguments. Import rules do not see globals, so this does. */
const purePackages = ["engine", "units"];

const forbiddenNames = new Set([
  "Date",
  "console",
  "performance",
  "setTimeout",
  "setInterval",
  "setImmediate",
  "queueMicrotask",
  "requestAnimationFrame",
  "globalThis",
  "window",
  "self",
  "document",
  "process",
  "crypto",
  "fetch",
  "require",
  "eval",
  "Function",
]);

/** Lists every use of the clock, of chance or of the surroundings in one source text, as "line: what". */
export function impurities(text: string): string[] {
  // A syntax tree, not a text search: comments, strings and property names of the same spelling are innocent.
  const file = ts.createSourceFile("source.ts", text, ts.ScriptTarget.ES2022, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const what = impurity(node);
    if (what) found.push(`${file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1}: ${what}`);
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

function impurity(node: ts.Node): string | undefined {
  if (ts.isPropertyAccessExpression(node) && ts.isIdentifier(node.expression)) {
    return node.expression.text === "Math" && node.name.text === "random" ? "Math.random" : undefined;
  }
  if (ts.isElementAccessExpression(node) && ts.isIdentifier(node.expression) && node.expression.text === "Math") {
    return "Math[...]";
  }
  if (ts.isVariableDeclaration(node) && node.initializer && ts.isIdentifier(node.initializer)) {
    return node.initializer.text === "Math" ? "Math under another name" : undefined;
  }
  return ts.isIdentifier(node) && forbiddenNames.has(node.text) && isValue(node) ? node.text : undefined;
}

/** Whether an identifier reads a variable, rather than naming a property, a type or a declaration. */
function isValue(node: ts.Identifier): boolean {
  const parent = node.parent;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isPropertyAssignment(parent)) return parent.initializer === node;
  if (ts.isBindingElement(parent)) return parent.initializer === node;
  if (ts.isVariableDeclaration(parent) || ts.isParameter(parent)) return parent.initializer === node;
  return !(
    ts.isTypeReferenceNode(parent) ||
    ts.isQualifiedName(parent) ||
    ts.isPropertySignature(parent) ||
    ts.isPropertyDeclaration(parent) ||
    ts.isMethodDeclaration(parent) ||
    ts.isMethodSignature(parent) ||
    ts.isFunctionDeclaration(parent) ||
    ts.isInterfaceDeclaration(parent) ||
    ts.isTypeAliasDeclaration(parent) ||
    ts.isImportSpecifier(parent) ||
    ts.isExportSpecifier(parent) ||
    ts.isLabeledStatement(parent)
  );
}

/** Lists the impurities of all pure packages, tests left out, as "path:line: what". */
function impuritiesOfPurePackages(): string[] {
  return purePackages.flatMap((name) =>
    filesUnder(join(repositoryRoot, "packages", name, "src"))
      .filter((path) => path.endsWith(".ts") && !path.endsWith(".test.ts"))
      .map((path) => `packages/${name}/src/${path}`)
      .flatMap((path) =>
        impurities(readFileSync(join(repositoryRoot, path), "utf8")).map((impurity) => `${path}:${impurity}`),
      ),
  );
}

if (isMain(import.meta.url)) {
  const found = impuritiesOfPurePackages();
  for (const line of found) console.error(line);
  if (found.length > 0) console.error("Time, chance and progress are arguments here: pass them in.");
  process.exitCode = found.length > 0 ? 1 : 0;
}
