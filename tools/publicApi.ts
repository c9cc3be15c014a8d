import { join, relative, sep } from "node:path";
import ts from "typescript";
import { filesUnder, repositoryRoot } from "./repository.ts";

/** One exported declaration of a package and what its comment says. */
export interface ApiEntry {
  readonly packageName: string;
  readonly name: string;
  readonly kind: "function" | "const" | "type";
  /** Path from the repository root, and line counted from 1. */
  readonly file: string;
  readonly line: number;
  /** The comment above it without stars; empty where there is none. */
  readonly comment: string;
  /** The declaration without its body. */
  readonly signature: string;
  /** Whether the package's entry point hands it out. */
  readonly isPublic: boolean;
}

/** Reads every exported declaration of packages/NAME/src, in order of file and line. */
export function readPublicApi(packageName: string): ApiEntry[] {
  const source = join(repositoryRoot, "packages", packageName, "src");
  const files = filesUnder(source).filter((path) => /\.ts$/.test(path) && !/\.test\.ts$/.test(path));
  const program = ts.createProgram(
    files.map((path) => join(source, path)),
    {
      target: ts.ScriptTarget.ES2022,
      module: ts.ModuleKind.ESNext,
      moduleResolution: ts.ModuleResolutionKind.Bundler,
      customConditions: ["source"],
      allowImportingTsExtensions: true,
      noEmit: true,
      noLib: true,
      types: [],
    },
  );
  const checker = program.getTypeChecker();
  const handedOut = entryExports(program, checker, join(source, "index.ts"));
  return files.flatMap((path) => {
    const file = program.getSourceFile(join(source, path));
    if (!file) return [];
    return file.statements.flatMap((statement) =>
      exportedDeclarations(statement).map((declared) => {
        const symbol = checker.getSymbolAtLocation(declared.identifier);
        return {
          packageName,
          name: declared.identifier.text,
          kind: declared.kind,
          file: relative(repositoryRoot, join(source, path)).split(sep).join("/"),
          line: file.getLineAndCharacterOfPosition(statement.getStart(file)).line + 1,
          comment: leadingComment(file, statement),
          signature: signatureOf(file, statement, declared),
          isPublic: symbol !== undefined && handedOut.has(symbol),
        };
      }),
    );
  });
}

function entryExports(program: ts.Program, checker: ts.TypeChecker, entry: string): Set<ts.Symbol> {
  const file = program.getSourceFile(entry);
  const module = file && checker.getSymbolAtLocation(file);
  if (!module) return new Set();
  const resolved = checker
    .getExportsOfModule(module)
    .map((symbol) => (symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol));
  return new Set(resolved);
}

interface Declared {
  readonly identifier: ts.Identifier;
  readonly kind: ApiEntry["kind"];
  readonly variable?: ts.VariableDeclaration;
}

function exportedDeclarations(statement: ts.Statement): Declared[] {
  const modifiers = ts.canHaveModifiers(statement) ? ts.getModifiers(statement) : undefined;
  if (!modifiers?.some((modifier) => modifier.kind === ts.SyntaxKind.ExportKeyword)) return [];
  if (ts.isFunctionDeclaration(statement) && statement.name) {
    return [{ identifier: statement.name, kind: "function" }];
  }
  if (ts.isVariableStatement(statement)) {
    return statement.declarationList.declarations.flatMap((variable) =>
      ts.isIdentifier(variable.name)
        ? [{ identifier: variable.name, kind: isFunctionValue(variable) ? "function" : "const", variable }]
        : [],
    );
  }
  if (ts.isInterfaceDeclaration(statement) || ts.isTypeAliasDeclaration(statement)) {
    return [{ identifier: statement.name, kind: "type" }];
  }
  return [];
}

function isFunctionValue(variable: ts.VariableDeclaration): boolean {
  const value = variable.initializer;
  return value !== undefined && (ts.isArrowFunction(value) || ts.isFunctionExpression(value));
}

/** The last block comment that touches the statement, stars and borders removed. */
function leadingComment(file: ts.SourceFile, statement: ts.Statement): string {
  const text = file.text;
  const ranges = ts.getLeadingCommentRanges(text, statement.getFullStart()) ?? [];
  const last = ranges.filter((range) => text.startsWith("/**", range.pos)).at(-1);
  if (!last) return "";
  return text
    .slice(last.pos + 3, last.end - 2)
    .split("\n")
    .map((line) => line.replace(/^\s*\* ?/, "").trimEnd())
    .join("\n")
    .trim();
}

function signatureOf(file: ts.SourceFile, statement: ts.Statement, declared: Declared): string {
  const start = statement.getStart(file);
  if (ts.isFunctionDeclaration(statement)) {
    const end = statement.body ? statement.body.getStart(file) : statement.end;
    return tidy(file.text.slice(start, end));
  }
  const variable = declared.variable;
  if (!variable) return tidy(file.text.slice(start, statement.end));
  const value = variable.initializer;
  if (value && (ts.isArrowFunction(value) || ts.isFunctionExpression(value))) {
    return tidy(`export const ${file.text.slice(variable.getStart(file), value.body.getStart(file))}`).replace(
      / =>$/,
      "",
    );
  }
  const type = variable.type ? `: ${variable.type.getText(file)}` : "";
  const isLiteral = value !== undefined && (ts.isNumericLiteral(value) || ts.isStringLiteral(value));
  return tidy(`export const ${declared.identifier.text}${type}${isLiteral ? ` = ${value.getText(file)}` : ""}`);
}

function tidy(signature: string): string {
  return signature.replace(/^export /, "").trim();
}
