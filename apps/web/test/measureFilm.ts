/** How soon a film starts and how evenly it plays. Prints, over several runs in one browser,
 *    press to paint    from pressing play to the first task after the frame in which a moved level is painted
 *    choice to paint   from choosing another scenario to the frame in which its film stands on the drawing, simulation included
 *    frames            frames a second while the film plays, the longest gap between two, and the script time of one
 *  Run with `npm run speed:film -w apps/web`. */
import type { Page } from "playwright-core";
import { serveBench } from "./servedBench.ts";
import { moving } from "./usualContext.ts";

const runs = Number(process.env.RUNS ?? 10);

const bench = await serveBench();
const { page } = await bench.open(moving);
await page.waitForTimeout(6000);
await page.click(".tool:text-is('What if')");
await page.waitForSelector(".film-chart");

const presses: number[] = [];
for (let run = 0; run < runs; run += 1) {
  await page.keyboard.press("Home");
  await page.evaluate(() => performance.clearMeasures("film-start"));
  await page.click("[data-film-play]");
  await page.waitForFunction(() => performance.getEntriesByName("film-start").length > 0);
  presses.push(await page.evaluate(() => performance.getEntriesByName("film-start")[0]!.duration));
  await page.click("[data-film-play]");
}

const choices: number[] = [];
const ids = await page
  .locator(".film-choice option")
  .evaluateAll((all) => all.map((one) => one.getAttribute("value")!));
for (const id of ids.slice(0, runs)) choices.push(await choose(page, id));

await choose(page, "powerCut");
await page.keyboard.press("Home");
await page.click("[data-film-play]");
const played = await page.evaluate(async () => {
  const times: number[] = [];
  const start = performance.now();
  while (performance.now() - start < 6000) times.push(await new Promise<number>((done) => requestAnimationFrame(done)));
  const gaps = times.slice(1).map((time, i) => time - times[i]!);
  return { frames: gaps.length, seconds: (times.at(-1)! - times[0]!) / 1000, gaps };
});
const session = await page.context().newCDPSession(page);
await session.send("Performance.enable");
const before = await taskTimes();
const counted = await page.evaluate(async () => {
  const start = performance.now();
  let frames = 0;
  for (; performance.now() - start < 4000; frames += 1) await new Promise((done) => requestAnimationFrame(done));
  return frames;
});
const after = await taskTimes();
await bench.stop();

console.table([
  { what: "press to paint, ms", ...spread(presses) },
  { what: "choice to paint, ms", ...spread(choices) },
  { what: "gap between frames, ms", ...spread(played.gaps) },
]);
console.log(`${(played.frames / played.seconds).toFixed(1)} frames a second while playing`);
console.log(
  `one frame: script ${((1000 * (after.script - before.script)) / counted).toFixed(2)} ms, style and layout ${(
    (1000 * (after.layout - before.layout)) / counted
  ).toFixed(2)} ms, all of the page's thread ${((1000 * (after.task - before.task)) / counted).toFixed(2)} ms`,
);

/** Chooses a scenario as a hand would and returns the time until its film is painted [ms]. */
function choose(target: Page, id: string): Promise<number> {
  return target.evaluate(async (value) => {
    const select = document.querySelector<HTMLSelectElement>(".film-choice select")!;
    if (select.value === value) return 0;
    const old = document.querySelector(".film-drawing");
    const start = performance.now();
    const set = Object.getOwnPropertyDescriptor(HTMLSelectElement.prototype, "value")!.set!;
    set.call(select, value);
    select.dispatchEvent(new Event("change", { bubbles: true }));
    for (;;) {
      await new Promise((done) => requestAnimationFrame(done));
      const now = document.querySelector(".film-drawing");
      if (now !== null && now !== old) break;
      if (performance.now() - start > 10_000) break;
    }
    return performance.now() - start;
  }, id);
}

async function taskTimes(): Promise<{ script: number; layout: number; task: number }> {
  const { metrics } = await session.send("Performance.getMetrics");
  const of = (name: string) => metrics.find((metric) => metric.name === name)?.value ?? 0;
  return {
    script: of("ScriptDuration"),
    layout: of("LayoutDuration") + of("RecalcStyleDuration"),
    task: of("TaskDuration"),
  };
}

function spread(times: readonly number[]): { least: string; median: string; most: string } {
  const sorted = times.filter((time) => time > 0).sort((a, b) => a - b);
  const at = (share: number) => (sorted[Math.floor((sorted.length - 1) * share)] ?? Number.NaN).toFixed(1);
  return { least: at(0), median: at(0.5), most: at(1) };
}
