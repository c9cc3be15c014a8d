/** How smoothly the screens follow a hand, on the real server over an invented shop.
 *    drag    a pointer that moves at every frame drags a grip of the demonstration job: frames shown each second, the share of
 *            frames within 18.2 ms (55 a second), and the longest; beside a drag over empty paper in the same run, the bound
 *    list    1,000 jobs: time from a typed letter to the list that shows its finds [ms], and frames while it is scrolled
 *  Run with `npm run speed:hands -w apps/web`. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { serveShop } from "./servedShop.ts";
import { moving } from "./usualContext.ts";

const seconds = Number(process.env["SECONDS"] ?? 4);
const jobs = 1000;

/** Frames that the page's own clock sees, as text: a compiler's helpers are not there. */
const framesOf = `new Promise((done) => {
  const times = [];
  const end = performance.now() + ${seconds * 1000};
  const look = (now) => { times.push(now); performance.now() < end ? requestAnimationFrame(look) : done(times); };
  requestAnimationFrame(look);
})`;

const shop = await serveShop();
const reef: unknown = JSON.parse(
  readFileSync(new URL("../../../examples/waiting-room-reef.json", import.meta.url), "utf8"),
);
const { designId } = await shop.makeDesign(reef);
const { page } = await shop.open(`?design=${designId}`, moving);
await page.waitForSelector('[data-grip="/overflow/weir"]');
await page.waitForTimeout(4000);
for (const [name, selector] of [
  ["empty paper", ".tw-picture"],
  ["weir crest", '[data-grip="/overflow/weir"]'],
  ["pump speed", '[data-grip="/loops/0/pumps/0"]'],
  ["sump level", '[data-grip="/sump/chambers/2"]'],
] as const)
  console.log(`drag, ${name.padEnd(12)} ${await dragged(page, selector)}`);

for (let i = 0; i < jobs; i += 50)
  await Promise.all(
    Array.from({ length: 50 }, (_, k) => shop.api("POST", "api/jobs", { name: `Reef number ${i + k}` })),
  );
const desk = (await shop.open("#/jobs", moving)).page;
await desk.waitForFunction(() => document.querySelector(".list-count")?.textContent?.includes("1,00"));
console.log(`list, ${jobs} jobs: ${await searched(desk)}`);
console.log(`list, scrolled:    ${await scrolled(desk)}`);
await shop.stop();

function told(times: readonly number[]): string {
  const gaps = times.slice(1).map((time, i) => time - times[i]!);
  const fps = (gaps.length / (times.at(-1)! - times[0]!)) * 1000;
  const good = gaps.filter((gap) => gap <= 18.2).length / gaps.length;
  return `${fps.toFixed(1)} frames a second, ${(good * 100).toFixed(0)} % within 18.2 ms, longest ${Math.max(...gaps).toFixed(0)} ms`;
}

async function dragged(at: Page, selector: string): Promise<string> {
  const box = (await at.locator(selector).first().boundingBox())!;
  const paper = selector === ".tw-picture";
  const [x, y] = paper ? [box.x + box.width - 30, box.y + 90] : [box.x + box.width / 2, box.y + box.height / 2];
  await at.mouse.move(x, y);
  await at.mouse.down();
  let over = false;
  const frames = at.evaluate(framesOf).then((times) => {
    over = true;
    return times as number[];
  });
  for (let i = 0; !over; i += 1) await at.mouse.move(x, y + 8 * Math.sin(i / 6));
  await at.mouse.up();
  await at.waitForTimeout(800);
  return told(await frames);
}

async function searched(at: Page): Promise<string> {
  const took: number[] = [];
  const field = at.locator("input[type=search]");
  for (const text of ["number 999", "reef 77", "number 12", "reef 500"]) {
    await field.fill("");
    await at.waitForTimeout(300);
    took.push(
      (await at.evaluate(`new Promise((done) => {
        const input = document.querySelector("input[type=search]");
        const count = () => document.querySelector(".list-count")?.textContent;
        const before = count();
        const begun = performance.now();
        Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value").set.call(input, ${JSON.stringify(text)});
        input.dispatchEvent(new Event("input", { bubbles: true }));
        const look = () => count() === before ? requestAnimationFrame(look) : done(performance.now() - begun);
        requestAnimationFrame(look);
      })`)) as number,
    );
  }
  return `letter to list ${Math.min(...took).toFixed(0)} ms least, ${Math.max(...took).toFixed(0)} ms most`;
}

async function scrolled(at: Page): Promise<string> {
  await at.locator("input[type=search]").fill("");
  await at.waitForTimeout(400);
  await at.mouse.move(600, 600);
  let over = false;
  const frames = at.evaluate(framesOf).then((times) => {
    over = true;
    return times as number[];
  });
  for (let i = 0; !over; i += 1) await at.mouse.wheel(0, i % 60 < 30 ? 240 : -240);
  return told(await frames);
}
