import { readFileSync } from "node:fs";
import type { BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { maySkipBrowserTests } from "../../../tools/browser.ts";
import { barriers } from "./barriers.ts";
import { type ServedShop, serveShop } from "./servedShop.ts";

const example = JSON.parse(readFileSync(new URL("../../../examples/waiting-room-reef.json", import.meta.url), "utf8"));
/** A red picture of 8 by 8, as PNG. */
const picture = Buffer.from(
  "iVBORw0KGgoAAAANSUhEUgAAAAgAAAAICAIAAABLbSncAAAAEklEQVR4nGP4z8CAFWEXHbQSACj/P8Fu7N9hAAAAAElFTkSuQmCC",
  "base64",
);
/** What a page would show or run if it took a text for markup. */
const hostile = `"><img src=x onerror="window.struck=1"><script>window.struck=1</script>{{7*7}}'`;
const many = 1000;

interface Made {
  readonly id: string;
  readonly version: number;
}

describe.skipIf(maySkipBrowserTests())("the desk of a shop", () => {
  let shop: ServedShop;
  let filled: { readonly jobId: string; readonly designId: string; readonly customerId: string };
  beforeAll(async () => {
    shop = await serveShop();
    const customer = await shop.api<Made>("POST", "api/customers", { name: hostile, contact: hostile, notes: hostile });
    const job = await shop.api<Made>("POST", "api/jobs", { name: hostile, customerId: customer.id, notes: hostile });
    const design = await shop.api<Made>("POST", `api/jobs/${job.id}/designs`, {
      name: hostile.slice(0, 200),
      document: { ...example, name: hostile },
    });
    await shop.api("PUT", `api/designs/${design.id}/revisions/1/name`, { name: hostile });
    filled = { jobId: job.id, designId: design.id, customerId: customer.id };
    for (let i = 0; i < many; i += 50)
      await Promise.all(
        Array.from({ length: 50 }, (_, k) =>
          shop.api("POST", "api/jobs", {
            name: `Reef number ${i + k}`,
            stage: (i + k) % 100 === 7 ? "intake" : "built",
          }),
        ),
      );
  }, 120_000);
  afterAll(async () => {
    await shop?.stop();
  });

  it("takes a customer, a job and a design from the list to the bench and back", async () => {
    const { page, context, complaints } = await shop.open("#/customers");
    await page.click("button:text-is('New customer')");
    await page.fill(".sheet input", "Ines Paredes");
    await page.click("button:text-is('Add the customer')");
    await page.waitForSelector(".title-name input");
    expect(await page.inputValue(".title-name input")).toBe("Ines Paredes");
    await page.click("button:text-is('New job')");
    await page.waitForSelector("text=Designs");
    await page.fill(".title-name input", "Kitchen bar reef");
    await page.selectOption(".title-stage select", "proposed");
    await page.fill("textarea", "Lift is 0.8 m wide");
    await page.waitForSelector(".keeping-state[data-state=kept]");
    const jobId = page.url().split("/").at(-1)!;
    await expect
      .poll(() => shop.api("GET", `api/jobs/${jobId}`))
      .toMatchObject({
        name: "Kitchen bar reef",
        stage: "proposed",
        notes: "Lift is 0.8 m wide",
        customerName: "Ines Paredes",
      });
    // The list of designs hears of one that another screen makes.
    await shop.api("POST", `api/jobs/${jobId}/designs`, { name: "As drawn", document: example });
    await page.click(".design-open:has-text('As drawn')");
    await page.waitForSelector("[data-figure=flow]");
    await page.goBack();
    await page.waitForSelector(".design-open:has-text('As drawn')");
    await page.click(".desk-nav a:text-is('Jobs')");
    await page.fill("input[type=search]", "kitchen ines");
    await page.waitForSelector(".row:has-text('Kitchen bar reef')");
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("scrolls and searches a thousand jobs at once, by hand and by keys", async () => {
    const { page, context } = await shop.open("#/jobs");
    await page.waitForFunction(
      (least) =>
        Number(/of ([\d,]+)/.exec(document.querySelector(".list-count")?.textContent ?? "")?.[1]?.replace(",", "")) >=
        least,
      many,
    );
    expect(await page.locator(".rows > li").count()).toBeLessThan(60);
    // Jobs to review stand first.
    await page.waitForSelector(".rows > li:first-child .row[data-review]");
    await page.keyboard.press("/");
    await page.keyboard.type("reef 77");
    await page.waitForFunction(() => document.querySelector(".list-count")?.textContent?.startsWith("19 jobs"));
    // How soon a letter is answered is for the measuring script (npm run speed:hands).
    await page.evaluate(async () => {
      const input = document.querySelector<HTMLInputElement>("input[type=search]")!;
      const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")!.set!;
      for (const number of [996, 997, 998, 999]) {
        set.call(input, `number ${number}`);
        input.dispatchEvent(new Event("input", { bubbles: true }));
        while (!document.querySelector(".rows .row-name")?.textContent?.endsWith(String(number)))
          await new Promise((next) => requestAnimationFrame(next));
      }
    });
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    await page.waitForSelector(".title-name input");
    expect(await page.inputValue(".title-name input")).toBe("Reef number 999");
    await page.goBack();
    await page.fill("input[type=search]", "");
    await page.waitForFunction(() => /^1,\d{3} jobs/.test(document.querySelector(".list-count")?.textContent ?? ""));
    await page.mouse.move(400, 500);
    await expect
      .poll(
        async () => {
          await page.mouse.wheel(0, 20_000);
          return page.evaluate(() =>
            Number(document.querySelector<HTMLElement>(".rows > li:last-child .row")?.dataset["row"] ?? 0),
          );
        },
        { timeout: 15_000 },
      )
      .toBeGreaterThan(300);
    await context.close();
  });

  it("shows the list of the last visit while the server is gone, and says so", async () => {
    const { page, context } = await shop.open("#/jobs");
    await page.waitForFunction(() => document.querySelector(".list-count")?.textContent?.includes("of 1,0"));
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
    await page.route("**/api/**", (route) => route.abort());
    await page.reload();
    await page.waitForSelector(".desk-reach");
    expect(await page.locator(".rows .row").count()).toBeGreaterThan(5);
    await context.close();
  });

  it("keeps a picture and tells in words why it does not keep a drawing that could run", async () => {
    const { page, context } = await shop.open(`#/jobs/${filled.jobId}`);
    await page.setInputFiles(".job-files input[type=file]", {
      name: `${hostile.replaceAll("/", "")}.png`,
      mimeType: "image/png",
      buffer: picture,
    });
    await page.waitForSelector(".pictures img");
    await page.waitForFunction(
      () => (document.querySelector<HTMLImageElement>(".pictures img")?.naturalWidth ?? 0) > 0,
    );
    const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>window.struck=1</script></svg>');
    await page.setInputFiles(".job-files input[type=file]", {
      name: "plan.svg",
      mimeType: "image/svg+xml",
      buffer: svg,
    });
    await page.waitForSelector(".uploads .field-problem");
    expect(await page.textContent(".uploads")).toMatch(/plan\.svg.*not taken/);
    await page.click(".pictures .icon-button");
    await page.click("button:text-is('Remove the file')");
    await page.waitForFunction(() => document.querySelector(".pictures img") === null);
    await context.close();
  });

  it("shows both texts where two people write at once, and keeps the chosen one", async () => {
    const { id } = await shop.api<Made>("POST", "api/jobs", { name: "Two hands" });
    const { page, context } = await shop.open(`#/jobs/${id}`);
    await page.waitForSelector("textarea");
    await page.route("**/api/events", (route) => route.abort());
    // The other screen is first by the time this one sends.
    await page.fill("textarea", "from here");
    await shop.api("PATCH", `api/jobs/${id}`, { notes: "from there" }, { "If-Match": '"1"' });
    await page.waitForSelector(".conflict");
    expect(await page.textContent(".conflict")).toMatch(/from here.*from there/s);
    await page.click("button:text-is('Keep mine')");
    await expect.poll(() => shop.api("GET", `api/jobs/${id}`)).toMatchObject({ notes: "from here" });
    await context.close();
  });

  it("makes a job of a design file, and lists all that is wrong in one it cannot read", async () => {
    const { page, context } = await shop.open("#/jobs");
    await page.waitForSelector(".rows .row");
    const input = page.locator(".list-actions input[type=file]");
    const file = (name: string, document: unknown) => ({
      name,
      mimeType: "application/json",
      buffer: Buffer.from(JSON.stringify(document)),
    });
    await input.setInputFiles(
      file("broken.json", { ...example, display: { ...example.display, length: "long", width: 3 } }),
    );
    await page.waitForSelector(".problem-list li:nth-child(2)");
    expect(await page.textContent(".problem-list")).toMatch(/\/display\/length.*\/display\/width/s);
    await page.keyboard.press("Escape");
    await input.setInputFiles(file("corridor.json", { ...example, name: "Corridor of the school" }));
    await page.waitForSelector(".design-open:has-text('Corridor of the school')");
    expect(await page.inputValue(".title-name input")).toBe("Corridor of the school");
    await context.close();
  });

  it("keeps what the shop says of itself, with a logo, and hands everything out as one file", async () => {
    const { page, context } = await shop.open("#/shop");
    await page.fill("[autocomplete=street-address]", "14 Quay Lane");
    await page.setInputFiles(".logo-field input[type=file]", {
      name: "logo.png",
      mimeType: "image/png",
      buffer: picture,
    });
    await page.waitForSelector("img.shop-logo");
    await page.waitForSelector(".keeping-state[data-state=kept]");
    const { settings } = await shop.api<{ settings: { address: string; logoFileId: string } }>("GET", "api/settings");
    expect(settings).toMatchObject({ address: "14 Quay Lane", logoFileId: expect.any(String) });
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.click("button:text-is('Save a backup')"),
    ]);
    expect(download.suggestedFilename()).toMatch(/\.backup$/);
    expect(readFileSync(await download.path()).length).toBeGreaterThan(10_000);
    await context.close();
  });

  it("makes a link that a customer can open in a clean profile, and closes it", async () => {
    const { jobId } = await shop.makeDesign(example, "For the customer");
    const { page, context } = await shop.open(`#/jobs/${jobId}`);
    await page.click("button:text-is('Make a link')");
    await page.click("button:text-is('Make the link')");
    const address = await page.inputValue(".link-text");
    expect(address).toContain("share.html#");
    const customer = await shop.open(address.slice(shop.address.length), {
      viewport: { width: 390, height: 844 },
      isMobile: true,
      hasTouch: true,
    });
    await customer.page.waitForSelector("[data-plain=mishaps]");
    expect(await customer.page.textContent("h1")).toBe("Waiting room");
    expect(await customer.page.locator("input, textarea, [contenteditable]").count()).toBe(0);
    expect(await customer.page.getAttribute("meta[name=robots]", "content")).toContain("noindex");
    const litres = await customer.page.textContent("[data-plain=flow] .share-figure");
    expect(litres).toMatch(/^\d+\sL\/h$/u);
    await customer.page.click("[data-system=us]");
    await customer.page.waitForFunction(() =>
      document.querySelector("[data-plain=flow] .share-figure")?.textContent?.includes("gal"),
    );
    expect(await sideways(customer.page)).toBeLessThanOrEqual(0);
    expect(customer.complaints).toEqual([]);
    await page.keyboard.press("Escape");
    await page.click(".link-row button:text-is('Close')");
    await page.click("button:text-is('Close it now')");
    await page.waitForSelector(".link-row[data-closed]");
    await customer.page.reload();
    await customer.page.waitForSelector("h1:has-text('please ask the shop for a new one')");
    await customer.context.close();
    await context.close();
  });

  it("shows markup in names as the text it is, on every screen", async () => {
    const { token } = await shop.api<{ token: string }>("POST", "api/links", {
      kind: "view",
      designId: filled.designId,
      days: 1,
    });
    const settings = await shop.api<{ settings: object; version: number }>("GET", "api/settings");
    await shop.api(
      "PUT",
      "api/settings",
      { ...settings.settings, name: hostile, address: hostile },
      { "If-Match": `"${settings.version}"` },
    );
    const { page, context } = await shop.open("#/jobs");
    let dialogs = 0;
    page.on("dialog", (dialog) => {
      dialogs += 1;
      void dialog.dismiss();
    });
    for (const path of [...screensOf(filled), `share.html#${token}`, `?design=${filled.designId}`]) {
      await page.goto(shop.address + path);
      await page.waitForFunction(
        () =>
          document.body.textContent.includes("onerror=") || document.querySelector('input[value*="onerror="]') !== null,
        undefined,
        { timeout: 15_000 },
      );
      for (const summary of await page.locator(".versions summary").all()) {
        await summary.click();
        await page.waitForSelector(".version-name");
      }
      const struck = await page.evaluate(() => ({
        ran: "struck" in window,
        elements: document.querySelectorAll('img[src="x"], [onerror], body script:not([src])').length,
      }));
      expect({ path, ...struck, dialogs }).toEqual({ path, ran: false, elements: 0, dialogs: 0 });
    }
    await context.close();
  });

  for (const colorScheme of ["light", "dark"] as const)
    it(`has no serious barrier on any screen, ${colorScheme}, and none is wider than a phone`, async () => {
      const { token } = await shop.api<{ token: string }>("POST", "api/links", {
        kind: "view",
        designId: filled.designId,
        days: 1,
      });
      const context = await shop.browser.newContext({
        viewport: { width: 390, height: 844 },
        colorScheme,
        hasTouch: true,
      });
      const { page } = await shop.open("#/jobs", context);
      for (const path of [...screensOf(filled), `share.html#${token}`, "share.html#nothing"]) {
        await page.goto(shop.address + path);
        await page.waitForSelector(readyOf(path));
        await page.waitForTimeout(150);
        expect(await barriers(page), path).toEqual([]);
        expect(await sideways(page), path).toBeLessThanOrEqual(0);
        expect(await smallTargets(page), path).toEqual([]);
      }
      await page.close();
      for (const firstOwnerWanted of [false, true]) {
        const door = await atTheDoor(shop, context, firstOwnerWanted);
        expect(await barriers(door), "the door").toEqual([]);
        expect(await sideways(door)).toBeLessThanOrEqual(0);
        expect(await smallTargets(door)).toEqual([]);
        await door.close();
      }
      await context.close();
    });

  it("tells at the door how long to wait after too many tries", async () => {
    const context = await shop.browser.newContext();
    const page = await atTheDoor(shop, context, false);
    await page.click("button:text-is('Sign in')");
    expect(await page.textContent("[role=alert]")).toBe("Give your name and your password.");
    await page.fill("[autocomplete=username]", "ines");
    await page.fill("[autocomplete=current-password]", "not the one");
    await page.keyboard.press("Enter");
    await page.waitForSelector("[role=alert]:has-text('again in 40 seconds')");
    await context.close();
  });
});

const screensOf = ({ jobId, customerId }: { readonly jobId: string; readonly customerId: string }) => [
  "#/jobs",
  `#/jobs/${jobId}`,
  "#/customers",
  `#/customers/${customerId}`,
  "#/shop",
  "#/people",
];

/** What a screen shows once everything of it is there. */
function readyOf(path: string): string {
  if (path.startsWith("share.html#nothing")) return ".share-shut h1";
  if (path.startsWith("share")) return "[data-plain=mishaps]";
  if (path.startsWith("#/jobs/")) return ".link-row";
  if (path.startsWith("#/customers/")) return ".title-name input";
  return (
    { "#/jobs": ".rows .row", "#/customers": ".rows .row", "#/shop": ".command", "#/people": ".audit td" }[path] ?? "h1"
  );
}

/** The screen that asks who is there: on the machine itself the server never does. */
async function atTheDoor(shop: ServedShop, context: BrowserContext, firstOwnerWanted: boolean): Promise<Page> {
  const page = await context.newPage();
  await page.route("**/api/session", (route) =>
    route.request().method() === "GET"
      ? route.fulfill({ json: { who: "nobody", accountId: null, name: null, role: null, firstOwnerWanted } })
      : route.fulfill({
          status: 429,
          json: {
            type: "urn:tidewright:problem:too-many",
            title: "",
            status: 429,
            detail: "too many; try again in 40 s",
          },
        }),
  );
  await page.goto(shop.address);
  await page.waitForSelector(".door form");
  return page;
}

const sideways = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** What a finger would miss: links and buttons that are no part of a sentence, and fields, lower than 44 px. */
const smallTargets = (page: Page) =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        ".desk a:not(.skip, .in-text), button, input:not([type=file], [type=checkbox], .visually-hidden), select, summary, textarea",
      ),
    ]
      .filter((element) => {
        const { width, height } = element.getBoundingClientRect();
        return width > 1 && height > 0 && height < 43.5 && !element.closest(".tw-elevation, .sheet-tools");
      })
      .map((element) => `${element.className} ${element.textContent} ${element.getBoundingClientRect().height}`),
  );
