/** Pictures of every screen, at phone, tablet and desk width, on paper and graphite, over an invented shop's jobs.
 *  `npm run pictures -w apps/web` writes those that the documents show; a folder as an argument gets them all, to be looked
 *  at; a second argument names the language, a third the screens, with commas between. */
import { mkdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { type ServedShop, serveShop } from "./servedShop.ts";

const [folder, language = "en", only] = process.argv.slice(2);
const docs = fileURLToPath(new URL("../../../docs/pictures", import.meta.url));
const examples = new URL("../../../examples/", import.meta.url);

const shop = await serveShop();
const seeded = await seed(shop);

interface Screen {
  readonly name: string;
  readonly path: string;
  /** Until then the screen is not whole. */
  readonly ready: string;
  readonly settings?: object;
  readonly act?: (page: Page) => Promise<void>;
}

const screens: readonly Screen[] = [
  { name: "desk", path: "#/jobs", ready: ".rows .row" },
  { name: "job", path: `#/jobs/${seeded.jobId}`, ready: ".design-open" },
  { name: "customers", path: "#/customers", ready: ".rows .row" },
  { name: "pumps", path: "#/pumps", ready: ".pump-row[data-pump]" },
  { name: "pump", path: "#/pumps/tarnhelm-f75", ready: ".plot-curve" },
  { name: "pump-table", path: "#/pumpTable", ready: ".drop" },
  { name: "shop", path: "#/shop", ready: "main input" },
  { name: "people", path: "#/people", ready: "main" },
  {
    name: "start",
    path: "#/start",
    ready: "#start-tank-volume",
    act: (page) => page.fill("#start-tank-volume", "450 l"),
  },
  { name: "bench", path: `?design=${seeded.designId}`, ready: "[data-figure=flow]" },
  { name: "plan", path: `?design=${seeded.designId}`, ready: "[data-figure=flow]", settings: { views: "both" } },
  {
    name: "versions",
    path: `?design=${seeded.designId}`,
    ready: "[data-figure=flow]",
    act: async (page) => {
      await page
        .locator(".tool[data-tool=versions], .tool:text-is('Versions'), .tool:text-is('Fassungen')")
        .first()
        .click();
    },
  },
  { name: "compare", path: `#/compare/${seeded.designId}@latest..${seeded.variantId}@latest`, ready: ".compare-parts" },
  { name: "share", path: `share.html#${seeded.share}`, ready: "[data-plain=flow]" },
  { name: "intake", path: `intake.html#${seeded.intake}`, ready: "#customer-name" },
];
const sizes = [
  { name: "desk", width: 1440, height: 900 },
  { name: "tablet", width: 820, height: 1180 },
  { name: "phone", width: 390, height: 844 },
] as const;
/** What the documents show: screen, size, theme. */
const shown = new Set([
  "bench-desk-light",
  "desk-desk-light",
  "plan-desk-light",
  "compare-desk-light",
  "share-phone-light",
  "start-tablet-light",
]);

for (const screen of screens)
  for (const size of sizes)
    for (const theme of ["light", "dark"] as const) {
      if (only !== undefined && !only.split(",").includes(screen.name)) continue;
      const name = `${screen.name}-${size.name}-${theme}`;
      if (folder === undefined && !shown.has(name)) continue;
      await picture(
        screen,
        size,
        theme,
        folder === undefined ? join(docs, `${screen.name}.png`) : join(folder, `${name}.png`),
      );
    }
await shop.stop();

async function picture(screen: Screen, size: (typeof sizes)[number], colorScheme: "light" | "dark", file: string) {
  const context = await shop.browser.newContext({
    viewport: { width: size.width, height: size.height },
    colorScheme,
    hasTouch: size.name !== "desk",
    locale: language === "de" ? "de-DE" : "en-GB",
  });
  await context.addInitScript({
    content: `localStorage.setItem("tidewright.settings", ${JSON.stringify(JSON.stringify({ language, ...screen.settings }))})`,
  });
  const page = await context.newPage();
  await page.goto(shop.address + screen.path);
  try {
    await page.waitForSelector(screen.ready, { timeout: 20_000 });
    await screen.act?.(page);
    // Curves, rankings and sweeps come after the numbers.
    await page.waitForTimeout(2500);
  } catch (error) {
    console.error(`${file}: ${String(error).split("\n")[0]}`);
  }
  await mkdir(join(file, ".."), { recursive: true });
  await writeFile(file, await page.screenshot());
  await context.close();
}

/** The invented shop's jobs, one with a variant, a named version and a customer. */
async function seed(to: ServedShop) {
  type Made = { readonly id: string };
  await to.api(
    "PUT",
    "api/settings",
    {
      name: "Pell & Wicken Seawater Rooms",
      address: "12 Harbour Steps",
      logoFileId: null,
      currency: "EUR",
      tariff: { value: 0.31, unit: "EUR/kWh" },
      units: {},
      priceMultipliers: {},
    },
    { "If-Match": '"0"' },
  );
  const customer = await to.api<Made>("POST", "api/customers", {
    name: "Practice at the Old Quay",
    contact: "reception, by telephone before ten",
    notes: "Quiet is everything: the surgery is next door.",
  });
  const read = async (name: string): Promise<{ name: string; display: Record<string, unknown> }> =>
    JSON.parse(await readFile(new URL(name, examples), "utf8"));
  const files = ["first-tank-110.json", "school-corridor-soft.json", "hotel-lobby.json", "waiting-room-reef.json"];
  const stages = ["built", "accepted", "proposed", "designing"] as const;
  let jobId = "";
  let designId = "";
  for (const [i, file] of files.entries()) {
    const document = await read(file);
    const job = await to.api<Made>("POST", "api/jobs", {
      name: document.name,
      stage: stages[i],
      ...(i === 3 ? { customerId: customer.id, notes: "Measured on site; sump in the stand." } : {}),
    });
    const design = await to.api<Made>("POST", `api/jobs/${job.id}/designs`, { name: "As drawn", document });
    jobId = job.id;
    designId = design.id;
  }
  await to.api("PUT", `api/designs/${designId}/revisions/1/name`, { name: "As measured" });
  const reef = await read("waiting-room-reef.json");
  const variant = await to.api<Made>("POST", `api/designs/${designId}/variants`, {
    name: "Lower stand",
    document: { ...reef, display: { ...reef.display, standHeight: { value: 700, unit: "mm" } } },
  });
  const share = await to.api<{ token: string }>("POST", "api/links", { kind: "view", designId, days: 30 });
  const intake = await to.api<{ token: string }>("POST", "api/links", { kind: "intake", days: 14 });
  return { jobId, designId, variantId: variant.id, share: share.token, intake: intake.token };
}
