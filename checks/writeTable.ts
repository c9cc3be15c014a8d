import { writeFileSync } from "node:fs";
import { allChecks } from "./allChecks.ts";
import { compareWithEpanet } from "./epanet/comparison.ts";
import { networks } from "./epanet/networks.ts";
import { markdownTable } from "./markdownTable.ts";

const page = new URL("../docs/checks.md", import.meta.url);
writeFileSync(page, markdownTable(allChecks, networks.map(compareWithEpanet)));
process.stdout.write("docs/checks.md is written\n");
