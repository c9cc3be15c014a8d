import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { barriers } from "./barriers.ts";
import { type ServedShop, serveShop } from "./servedShop.ts";

const target = (path: string): string => `.drawing .tw-target[data-path="${path}"]`;

describe.skipIf(maySkipBrowserTests())("a shop's day, from the first question to the customer's link", () => {
  let shop: ServedShop;
  beforeAll(async () => {
    shop = await serveShop();
  });
  afterAll(async () => {
    await shop?.stop();
  });

  it("goes from the guided start over the drawing, a variant and a comparison to a link in a clean profile", async () => {
    // At the counter: a tank's volume, and three pumps that fit.
    const { page, context, complaints } = await shop.open("#/start");
    await page.fill("#start-tank-volume", "450 l");
    await page.waitForSelector(".start-preview .start-figures");
    await page.click(".start-finish .action-strong");
    await page.waitForSelector(".drawer tbody tr");
    expect(await page.locator(".drawer tbody tr").count()).toBeGreaterThanOrEqual(3);
    const designId = new URL(page.url()).searchParams.get("design")!;
    const opened = () => shop.api<Opened>("GET", `api/designs/${designId}`);
    const first = (await opened()).latest.document;

    // On the site: the crest is dragged by mouse, the stand nudged by keyboard; both are kept as they are made.
    const grip = await page.locator('[data-grip="/overflow/weir"]').boundingBox();
    await page.mouse.move(grip!.x + grip!.width / 2, grip!.y + grip!.height / 2);
    await page.mouse.down();
    for (let i = 1; i <= 5; i += 1)
      await page.mouse.move(grip!.x + grip!.width / 2, grip!.y + grip!.height / 2 + i * 2);
    await page.mouse.up();
    await expect
      .poll(async () => (await opened()).latest.document.overflow.weir.crest.value)
      .toBeLessThan(first.overflow.weir.crest.value);
    const lowered = (await opened()).latest.document.overflow.weir.crest.value;
    await page.focus(target("/sump/chambers/2"));
    await page.keyboard.press("ArrowUp");
    await expect
      .poll(async () => (await opened()).latest.document.sump.operatingLevel.value)
      .toBeGreaterThan(first.sump.operatingLevel.value);

    // Undone after a reload: only the last step goes.
    await page.reload();
    await page.waitForSelector(target("/sump/chambers/2"));
    await page.click('button[aria-label^="Undo:"]');
    await expect
      .poll(async () => (await opened()).latest.document.sump.operatingLevel.value)
      .toBe(first.sump.operatingLevel.value);
    expect((await opened()).latest.document.overflow.weir.crest.value).toBe(lowered);

    // On the bench in the evening: a variant with a lower stand, and both side by side.
    const { id: variantId } = await shop.api<{ id: string }>("POST", `api/designs/${designId}/variants`, {
      name: "Lower stand",
      document: { ...first, display: { ...first.display, standHeight: { value: 600, unit: "mm" } } },
    });
    await page.goto(`${shop.address}#/compare/${designId}@latest..${variantId}@latest`);
    await page.waitForSelector(".compare-parts [data-difference='/display/standHeight']");
    // What is found over time comes after the numbers.
    await page.waitForSelector(".compare-block [role=status]", { state: "detached", timeout: 60_000 });
    expect(await page.locator("[data-findings] li").count()).toBeGreaterThan(0);
    expect(await barriers(page)).toEqual([]);

    // The customer's link, opened where nobody is signed in.
    const { token } = await shop.api<{ token: string }>("POST", "api/links", {
      kind: "view",
      designId: variantId,
      days: 14,
    });
    const customer = await shop.open(`share.html#${token}`, {
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      bypassCSP: true,
    });
    await customer.page.waitForSelector("[data-plain=flow]");
    await customer.page.waitForSelector("svg");
    expect(await customer.page.textContent("main, body")).toContain("Lower stand");
    expect(await barriers(customer.page)).toEqual([]);
    expect(customer.complaints).toEqual([]);
    await customer.context.close();
    expect(complaints).toEqual([]);
    await context.close();
  }, 120_000);

  it("shows the tank from above beside the elevation, where a pump is dragged, turned by keys and put back", async () => {
    const reef = JSON.parse(readFileSync(new URL("../../../examples/waiting-room-reef.json", import.meta.url), "utf8"));
    const { designId } = await shop.makeDesign(reef);
    const { page, context } = await shop.open(`?design=${designId}`, { bypassCSP: true });
    await page.waitForSelector(target("/tankPumps/0"));
    await page.click(".view-choice:has(input[value=both])");
    await page.waitForSelector('[data-plan-path="/tankPumps/0"]');
    const document = async () => (await shop.api<Opened>("GET", `api/designs/${designId}`)).latest.document;
    const grip = await page.locator('[data-plan-grip="/tankPumps/0:place"]').boundingBox();
    const [x, y] = [grip!.x + grip!.width / 2, grip!.y + grip!.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 6; i += 1) await page.mouse.move(x + i * 10, y);
    await page.mouse.up();
    await expect.poll(async () => (await document()).tankPumps[0]!.at[0]!.value).toBeGreaterThan(100);
    await page.focus('[data-plan-path="/tankPumps/0"]');
    await page.keyboard.press("Alt+ArrowUp");
    await expect.poll(async () => (await document()).tankPumps[0]!.aim.yaw.value).not.toBe(5);
    for (let i = 0; i < 2; i += 1) await page.click('button[aria-label^="Undo:"]');
    await expect.poll(document).toEqual(reef);
    await page.click(".plan-zones button");
    await page.waitForSelector('[data-plan-path="/display/zones/2"]');
    expect(await barriers(page)).toEqual([]);
    await expect.poll(async () => (await document()).display.zones[2]?.area).toHaveLength(2);
    await context.close();
  });
});

interface Opened {
  readonly latest: {
    readonly document: {
      readonly display: {
        readonly standHeight: { readonly value: number };
        readonly zones: readonly { readonly area?: unknown }[];
      };
      readonly overflow: { readonly weir: { readonly crest: { readonly value: number } } };
      readonly sump: { readonly operatingLevel: { readonly value: number } };
      readonly tankPumps: {
        readonly at: readonly { readonly value: number }[];
        readonly aim: { readonly yaw: { readonly value: number } };
      }[];
    };
  };
}
