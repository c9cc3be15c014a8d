import { describe, expect, it } from "vitest";
import { leaks, leaksOfRepository, tiedPackages } from "./noLeaks.ts";

const slash = "/";
const inHome = `${slash}home${slash}ann`;
const host = `https:${slash}${slash}${"registry"}.example.org`;

describe("what a committed file gives away", () => {
  it("finds nothing in this repository", () => {
    expect(leaksOfRepository()).toEqual([]);
  });
  it.each([
    [`root = "${inHome}/job"`, `1: path ${inHome}`],
    [`\n  at file:${slash}${slash}${inHome}/x.ts`, `2: path ${inHome}`],
    [`"resolved": "${host}/zod"`, `1: registry host ${host}`],
    [`deb http:${slash}${slash}deb.${"debian"}.org bookworm`, `1: registry host deb.${"debian"}.org`],
  ])("finds it in %j", (text, found) => {
    expect(leaks(text)).toEqual([found]);
  });
  it("lets relative paths, routes and words with a slash pass", () => {
    expect(
      leaks(`see docs${slash}work${slash}plan.md, L/h, a/home/b, https:${slash}${slash}example.org/tmp/x`),
    ).toEqual([]);
  });
  it("names the packages of a lockfile that are tied to an address", () => {
    const lockfile = {
      packages: { "": {}, "node_modules/a": { resolved: `${host}/a.tgz` }, b: { resolved: "packages/b" } },
    };
    expect(tiedPackages(JSON.stringify(lockfile))).toEqual([`node_modules/a resolved ${host}/a.tgz`]);
  });
});
