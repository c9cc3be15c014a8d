/** What a Vitest run came to: tests that passed, failed and were skipped. */
export interface TestCounts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

interface JsonReport {
  readonly testResults: readonly {
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
}

/** Counts the tests of a Vitest json report; a file that failed to load counts as one failed test, since the tests in
 *  it could not even be counted. */
export function testCounts(report: JsonReport): TestCounts {
  const statuses = report.testResults.flatMap(({ status, assertionResults }) => {
    const each = assertionResults.map((result) => result.status);
    return status === "failed" && !each.includes("failed") ? [...each, "failed"] : each;
  });
  const passed = statuses.filter((status) => status === "passed").length;
  const failed = statuses.filter((status) => status === "failed").length;
  return { passed, failed, skipped: statuses.length - passed - failed };
}

/** Counts of two runs together. */
export const addCounts = (one: TestCounts, other: TestCounts): TestCounts => ({
  passed: one.passed + other.passed,
  failed: one.failed + other.failed,
  skipped: one.skipped + other.skipped,
});

/** Words the counts as the line that ends every test run. */
export function closingLine({ passed, failed, skipped }: TestCounts): string {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`;
}
