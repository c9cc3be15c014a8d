import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, it } from "vitest";
import { differences, evaluateExample, findExamples } from "./docExamples.ts";
import { readPublicApi } from "./publicApi.ts";
import { libraryPackages, repositoryRoot } from "./repository.ts";

describe("worked examples in comments", () => {
  for (const packageName of libraryPackages) {
    for (const { entry, expression, printed } of findExamples(readPublicApi(packageName))) {
      it(`${packageName} ${entry.name}: ${expression}`, async () => {
        expect(printed, `${entry.file}: an Example line reads "EXPR  ->  VALUE"`).not.toBe("");
        // The file's own exports come second, so that an example of an inner function runs too.
        const scope = {
          ...(await load(join("packages", packageName, "src", "index.ts"))),
          ...(await load(entry.file)),
        };
        expect(differences(evaluateExample(expression, scope), printed), `${entry.file}:${entry.line}`).toEqual([]);
      });
    }
  }
});

describe("comparison of a value with its printed form", () => {
  it("accepts what rounds to the printed digits and nothing else", () => {
    expect(differences(0.101974, "0.10197")).toEqual([]);
    expect(differences(0.10198, "0.10197")).not.toEqual([]);
    expect(differences(1.4e-6, "1.40e-6")).toEqual([]);
    expect(differences(1.41e-6, "1.40e-6")).not.toEqual([]);
  });
  it("does not let a short integer pass for a value it only rounds to", () => {
    expect(differences(5, "5")).toEqual([]);
    expect(differences(5.4, "5")).not.toEqual([]);
    expect(differences(0.001, "0")).not.toEqual([]);
    expect(differences("5", "5")).not.toEqual([]);
    expect(differences(Number.NaN, "5")).not.toEqual([]);
  });
  it("compares arrays, typed arrays and objects item by item", () => {
    expect(differences([1, "a", { b: true }], '[1, "a", { "b": true }]')).toEqual([]);
    expect(differences(Float64Array.of(0.25, 0.5), "[0.25, 0.50]")).toEqual([]);
    expect(differences({ a: 1, b: undefined }, '{ "a": 1 }')).toEqual([]);
    expect(differences({ a: 1, b: 2 }, '{ "a": 1 }')).toEqual(["value.b is 2, not printed"]);
    expect(differences([1], "[1, 2]")).not.toEqual([]);
  });
  it("keeps digits inside strings as text", () => {
    expect(differences("12.5 mm", '"12.5 mm"')).toEqual([]);
    expect(differences("12.50 mm", '"12.5 mm"')).not.toEqual([]);
  });
  it("tells undefined, true and NaN apart", () => {
    expect(differences(undefined, "undefined")).toEqual([]);
    expect(differences(null, "undefined")).not.toEqual([]);
    expect(differences(true, "true")).toEqual([]);
    expect(differences(Number.NaN, "NaN")).toEqual([]);
  });
  it("refuses a printed value that is not a literal", () => {
    expect(() => differences(1, "0.5 m")).toThrow("not a JSON literal");
  });
});

async function load(path: string): Promise<Record<string, unknown>> {
  return import(/* @vite-ignore */ pathToFileURL(join(repositoryRoot, path)).href);
}
