import { describe, expect, it } from "vitest";
import { compareWithEpanet } from "./comparison.ts";
import { networks } from "./networks.ts";

describe("networks solved by EPANET and by us", () => {
  it.each(networks.map((entry) => [entry.name, entry] as const))("agree on %s", (_name, entry) => {
    const found = compareWithEpanet(entry);
    expect(found.status).toBe("converged");
    expect(found.flowDifference).toBeLessThanOrEqual(found.flowTolerance);
    expect(found.headDifference).toBeLessThanOrEqual(found.headTolerance);
  });
});
