/** How long a pointer drag takes to show its numbers: one edit a step, drags of several handles of the demonstration job.
 *  Prints, in one run, the least and the median over all edits of
 *    numbers  from the pointer event to its numbers standing in the page
 *    paint    from the pointer event to the first task after the frame in which they are painted
 *    script, style and layout, paint   processor time of the page's own thread for one edit, from the browser's trace
 *  Run with `npm run speed -w apps/web`; an argument names a file for the raw trace. */
import { writeFile } from "node:fs/promises";
import type { CDPSession, Page } from "playwright-core";
import { serveBench } from "./servedBench.ts";
import { moving } from "./usualContext.ts";

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly ts: number;
  readonly dur?: number;
  /** Time that the thread really ran, which other work on the machine hardly touches [us]. */
  readonly tdur?: number;
  readonly tid: number;
  readonly pid: number;
  readonly args?: { readonly data?: { readonly type?: string } };
}

/** What is dragged: the part whose grip is taken, and how far its value swings [px]. */
const drags = [
  { part: "/loops/0/pumps/0", name: "pump speed", swing: 14 },
  { part: "/overflow/weir", name: "weir crest", swing: 10 },
  { part: "/sump/chambers/2", name: "sump level", swing: 12 },
] as const;
const steps = Number(process.env.STEPS ?? 60);
/** Pause between steps [ms]: long enough that one edit never waits for the one before. */
const pause = 50;

const bench = await serveBench();
const rows: string[][] = [];
for (const drag of drags) {
  const { page } = await bench.open(moving);
  await page.waitForTimeout(1200);
  const session = await page.context().newCDPSession(page);
  await pull(page, drag, 20);
  await page.waitForTimeout(600);
  await page.evaluate(() => performance.clearMeasures());
  const trace = await traced(session, () => pull(page, drag, steps));
  await page.waitForTimeout(100);
  const times = await page.evaluate(() => ({
    numbers: performance.getEntriesByName("edit-to-numbers").map(({ duration }) => duration),
    paint: performance.getEntriesByName("edit-to-paint").map(({ duration }) => duration),
  }));
  const work = await mainThread(trace, times.numbers.length);
  rows.push([
    drag.name,
    `${times.numbers.length}`,
    spread(times.numbers),
    spread(times.paint),
    `${times.paint.filter((time) => time <= 16.7).length} of ${times.paint.length}`,
    ...work,
  ]);
  if (process.argv[2]) await writeFile(process.argv[2], JSON.stringify({ traceEvents: trace }));
  await page.context().close();
}
await bench.stop();
console.table(
  rows.map(([drag, edits, numbers, paint, inFrame, script, layout, painting]) => ({
    drag,
    edits,
    "numbers least / median ms": numbers,
    "paint least / median ms": paint,
    "in 16.7 ms": inFrame,
    "script ms an edit": script,
    "style+layout": layout,
    "paint+commit": painting,
  })),
);

async function pull(page: Page, { part, swing }: (typeof drags)[number], count: number): Promise<void> {
  const grip = await page.evaluate((path) => {
    const target = document.querySelector(`[data-grip="${path}"]`) ?? document.querySelector(`[data-path="${path}"]`);
    const box = target?.getBoundingClientRect();
    return box && { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  }, part);
  if (!grip) throw new Error(`no grip at ${part}`);
  await page.mouse.move(grip.x, grip.y);
  await page.mouse.down();
  for (let i = 1; i <= count; i += 1) {
    await page.mouse.move(grip.x, grip.y + Math.round(swing * Math.sin((i * 2 * Math.PI) / 31)) + (i % 2));
    await page.waitForTimeout(pause);
  }
  await page.mouse.up();
}

async function traced(session: CDPSession, work: () => Promise<void>): Promise<TraceEvent[]> {
  const events: TraceEvent[] = [];
  session.on("Tracing.dataCollected", ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await session.send("Tracing.start", {
    transferMode: "ReportEvents",
    traceConfig: { includedCategories: ["devtools.timeline", "blink.user_timing"] },
  });
  await work();
  const done = new Promise((resolve) => session.once("Tracing.tracingComplete", resolve));
  await session.send("Tracing.end");
  await done;
  return events;
}

/** Work of the page's own thread for one edit [ms]: script, style and layout, paint and commit. */
async function mainThread(trace: readonly TraceEvent[], edits: number): Promise<string[]> {
  const main = trace.find(({ name }) => name === "EventDispatch");
  const own = trace.filter(({ tid, pid, dur }) => tid === main?.tid && pid === main?.pid && dur !== undefined);
  const total = (names: readonly string[]) => {
    // Nested slices of the same set are counted once.
    let sum = 0;
    let end = 0;
    for (const { ts, dur = 0, tdur = dur } of own
      .filter(({ name }) => names.includes(name))
      .sort((a, b) => a.ts - b.ts)) {
      if (ts >= end) sum += tdur;
      end = Math.max(end, ts + dur);
    }
    return (sum / 1000 / Math.max(1, edits)).toFixed(2);
  };
  return [
    total([
      "FunctionCall",
      "EvaluateScript",
      "EventDispatch",
      "FireAnimationFrame",
      "RunMicrotasks",
      "MajorGC",
      "MinorGC",
    ]),
    total(["UpdateLayoutTree", "Layout", "RecalculateStyles"]),
    total(["PrePaint", "Paint", "Layerize", "Commit", "UpdateLayer"]),
  ];
}

function spread(times: readonly number[]): string {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number) => (sorted[Math.floor((sorted.length - 1) * share)] ?? Number.NaN).toFixed(1);
  return `${at(0)} / ${at(0.5)} (90 % ${at(0.9)})`;
}
