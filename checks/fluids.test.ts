import { describe, expect, it } from "vitest";
import { relativeDifference } from "./check.ts";
import { fluidsChecks } from "./fluids.ts";

const checks = fluidsChecks();

describe("the Python library fluids", () => {
  it.skipIf(checks === undefined)(
    checks === undefined
      ? "is not installed (python3 -m pip install fluids): skipped"
      : "agrees on friction and fittings",
    () => {
      const apart = (checks ?? []).filter((check) => !(Math.abs(relativeDifference(check)) <= check.tolerance));
      expect(apart.map((check) => `${check.name}: ${check.ours()} for ${check.expected}`)).toEqual([]);
      expect(checks?.length).toBeGreaterThan(150);
    },
  );
});
