import { describe, expect, it } from "vitest";
import { allChecks } from "./allChecks.ts";
import { relativeDifference } from "./check.ts";

describe.each(Object.entries(allChecks))("%s", (_file, checks) => {
  it.each(checks.map((check) => [check.name, check] as const))("gives the known %s", (_name, check) => {
    expect(
      Math.abs(relativeDifference(check)),
      `${check.ours()} for ${check.expected}; ${check.source}`,
    ).toBeLessThanOrEqual(check.tolerance);
  });
});
