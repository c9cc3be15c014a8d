import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { launchChromium } from "../../../tools/browser.ts";

// Draws the icons of the installed app from the one mark: npm run icons -w apps/web. The masked one keeps the mark within
// the middle four fifths, which every shape of icon shows (W3C, Web Application Manifest, "maskable").
const folder = fileURLToPath(new URL("../public/icons/", import.meta.url));
const mark = readFileSync(`${folder}mark.svg`, "utf8");
const icons = [
  { file: "icon-192.png", size: 192, share: 1 },
  { file: "icon-512.png", size: 512, share: 1 },
  { file: "icon-masked-512.png", size: 512, share: 0.8 },
  { file: "icon-touch-180.png", size: 180, share: 1 },
] as const;

const browser = await launchChromium();
for (const { file, size, share } of icons) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const inner = Math.round(size * share);
  await page.setContent(
    `<body style="margin:0;background:#f7f4ec;display:grid;place-items:center;height:100vh"><div style="width:${inner}px;height:${inner}px;line-height:0">${mark}</div></body>`,
  );
  writeFileSync(folder + file, await page.screenshot());
  await page.close();
}
await browser.close();
