import { describe, expect, it } from "vitest";
import { addCounts, closingLine, testCounts } from "./closingLine.ts";

const file = (status: string, ...statuses: string[]) => ({
  status,
  assertionResults: statuses.map((each) => ({ status: each })),
});

describe("closing line of a test run", () => {
  it("counts tests over all files", () => {
    const counts = testCounts({
      testResults: [file("passed", "passed", "passed", "pending"), file("failed", "failed")],
    });
    expect(closingLine(counts)).toBe("2 passed, 1 failed, 1 skipped");
  });
  it("counts a file that could not be loaded as a failure", () => {
    expect(closingLine(testCounts({ testResults: [file("failed")] }))).toBe("0 passed, 1 failed");
  });
  it("adds what a second run came to", () => {
    const first = { passed: 3, failed: 0, skipped: 2 };
    expect(closingLine(addCounts(first, { passed: 2, failed: 1, skipped: 0 }))).toBe("5 passed, 1 failed, 2 skipped");
  });
  it("leaves out skipped tests when there are none", () => {
    expect(closingLine({ passed: 3, failed: 0, skipped: 0 })).toBe("3 passed, 0 failed");
  });
});
