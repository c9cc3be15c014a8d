import { describe, expect, it } from "vitest";
import { impurities } from "./purity.ts";

describe("purity of the inner packages", () => {
  it.each([
    ["const t = Date.now();", "1: Date"],
    ["const t = new Date();", "1: Date"],
    ["const x =\n  Math.random();", "2: Math.random"],
    ['const x = Math["random"]();', "1: Math[...]"],
    ["const m = Math;", "1: Math under another name"],
    ["console.log(1);", "1: console"],
    ["const p = performance.now();", "1: performance"],
    ["setTimeout(f, 1);", "1: setTimeout"],
    ["const g = globalThis;", "1: globalThis"],
    ["const text = `$" + "{Date.now()}`;", "1: Date"],
    ["const value = { Date };", "1: Date"],
  ])("finds the surroundings in %s", (text, found) => {
    expect(impurities(text)).toEqual([found]);
  });
  it.each([
    "// Date.now() and Math.random()",
    "/* console.log */ const a = 1;",
    'const a = "Date.now()";',
    "const a = `setTimeout`;",
    "const a = pump.performance;",
    "const a = { performance: 1 };",
    "function f(x: Date): void {}",
    "const a = Math.sqrt(2);",
    "interface Pump { readonly performance: number }",
  ])("lets %s pass", (text) => {
    expect(impurities(text)).toEqual([]);
  });
});
