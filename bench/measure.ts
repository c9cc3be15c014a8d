/** Times of one run: the least and the median of many batches, a call each [us]. */
export interface Timing {
  readonly least: number;
  readonly median: number;
}

/** Runs a set of rivals in turn, so that whatever else the machine does falls on all of them alike. Each is warmed first, then
 *  called in batches long enough for the clock. The figures are microseconds a call. */
export function race(rivals: Readonly<Record<string, () => unknown>>, rounds = 60, batchTime = 3): Map<string, Timing> {
  const entries = Object.entries(rivals).map(([name, run]) => ({
    name,
    run,
    calls: callsFor(run, batchTime),
    times: [] as number[],
  }));
  for (let round = 0; round < rounds; round++)
    for (const entry of entries) entry.times.push(batch(entry.run, entry.calls));
  return new Map(entries.map(({ name, times }) => [name, timing(times)]));
}

function callsFor(run: () => unknown, batchTime: number): number {
  // A warm-up of at least 300 ms or three calls lets the compiler finish.
  const start = performance.now();
  let calls = 0;
  do {
    run();
    calls++;
  } while (calls < 3 || performance.now() - start < 300);
  const each = batch(run, Math.max(1, Math.floor(calls / 10))) / 1000;
  return Math.max(1, Math.ceil(batchTime / each));
}

function batch(run: () => unknown, calls: number): number {
  const start = performance.now();
  for (let i = 0; i < calls; i++) run();
  return (1000 * (performance.now() - start)) / calls;
}

function timing(times: number[]): Timing {
  const sorted = times.sort((a, b) => a - b);
  return { least: sorted[0] ?? Number.NaN, median: sorted[Math.floor(sorted.length / 2)] ?? Number.NaN };
}

/** Prints rows of text as a table with a rule under the first. */
export function printTable(rows: readonly (readonly string[])[]): void {
  const widths = (rows[0] ?? []).map((_, c) => Math.max(...rows.map((row) => (row[c] ?? "").length)));
  rows.forEach((row, r) => {
    console.log(
      row.map((cell, c) => (c === 0 ? cell.padEnd(widths[c] ?? 0) : cell.padStart(widths[c] ?? 0))).join("  "),
    );
    if (r === 0) console.log(widths.map((width) => "-".repeat(width)).join("  "));
  });
}

/** Three figures, for times and ratios alike. */
export const figures = (value: number): string => Number(value.toPrecision(3)).toString();
