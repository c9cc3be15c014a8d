import { describe, expect, it } from "vitest";
import { missingParts } from "./docParts.ts";
import { type ApiEntry, readPublicApi } from "./publicApi.ts";
import { libraryPackages } from "./repository.ts";

describe("comments above exports", () => {
  it.each(libraryPackages)("%s: every exported function and value says what it must", (packageName) => {
    const lacking = readPublicApi(packageName).flatMap((entry) => {
      const missing = missingParts(entry);
      return missing.length > 0 ? [`${entry.file}:${entry.line} ${entry.name} lacks ${missing.join(", ")}`] : [];
    });
    expect(lacking).toEqual([]);
  });
});

describe("parts of a comment", () => {
  const whole = [
    "Weight of a column of water: p = rho g h.",
    "rho [kg/m3]   h [m]   -> pressure [Pa]",
    "Findings: none. Throws: never.",
    "Valid: constant density.",
    "Source: hydrostatics.",
    "Example: f(1)  ->  2",
  ];
  const entry = (comment: string, more: Partial<ApiEntry> = {}): ApiEntry => ({
    packageName: "engine",
    name: "f",
    kind: "function",
    file: "f.ts",
    line: 1,
    comment,
    signature: "",
    isPublic: true,
    ...more,
  });
  it("finds nothing missing in a whole comment", () => {
    expect(missingParts(entry(whole.join("\n")))).toEqual([]);
  });
  it.each([
    [1, "arguments and result"],
    [2, "Findings or Throws"],
    [3, "Valid"],
    [4, "Source"],
    [5, "Example"],
  ])("names the part on line %i when it is left out", (line, part) => {
    const comment = whole.filter((_, i) => i !== line).join("\n");
    // The arrow of the example may stand in for that of the arguments only where both are gone.
    const arrowless = line === 1 ? comment.replace("->", "=") : comment;
    expect(missingParts(entry(arrowless))).toContain(part);
  });
  it("asks only a sentence of inner helpers and of types", () => {
    expect(missingParts(entry("Adds two heads.", { isPublic: false }))).toEqual([]);
    expect(missingParts(entry("A pipe [m].", { kind: "type" }))).toEqual([]);
    expect(missingParts(entry("", { isPublic: false }))).toEqual(["description"]);
  });
});
