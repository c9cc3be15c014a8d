import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { allChecks } from "./allChecks.ts";
import { compareWithEpanet } from "./epanet/comparison.ts";
import { networks } from "./epanet/networks.ts";
import { markdownTable } from "./markdownTable.ts";

it("the printed table is what the checks say now (npm run table -w checks)", () => {
  const printed = readFileSync(new URL("../docs/checks.md", import.meta.url), "utf8");
  expect(printed).toBe(markdownTable(allChecks, networks.map(compareWithEpanet)));
});
