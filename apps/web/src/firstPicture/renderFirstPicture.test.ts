import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { demoCatalogue, findPump } from "@tidewright/catalogue";
import { describe, expect, it } from "vitest";
import { renderFirstPicture } from "./renderFirstPicture.tsx";

const examples = fileURLToPath(new URL("../../../../examples/", import.meta.url));
const documents = readdirSync(examples)
  .filter((file) => file.endsWith(".json"))
  .slice(0, 2)
  .map((file) => JSON.parse(readFileSync(`${examples}${file}`, "utf8")) as unknown);
const payload = '"><script>alert(1)</script><img src=x onerror=alert(1)></svg><svg onload=alert(1)>';

/** The document with one text after another replaced, as far as it can still be read. */
function* withMarkup(value: unknown): Generator<unknown> {
  if (typeof value === "string") yield payload;
  if (typeof value !== "object" || value === null) return;
  for (const [key, each] of Object.entries(value)) {
    for (const changed of withMarkup(each)) {
      yield Array.isArray(value)
        ? value.map((item, at) => (String(at) === key ? changed : item))
        : { ...value, [key]: changed };
    }
  }
}

describe("the first picture", () => {
  const house = { ...findPump(demoCatalogue, "ferrow-c40")!, id: "house-1", maker: "Ourhouse", model: "One" };
  const named = JSON.parse(
    JSON.stringify(documents[0]).replace(/("pumps":\[\{"ref":)"[\w-]+"/, '$1"house-1"'),
  ) as unknown;

  it("shows a pump of the shop's own by its name", async () => {
    expect(JSON.stringify(named)).toContain('"house-1"');
    expect(await renderFirstPicture(named, [house])).toContain("Ourhouse One");
  });

  it("speaks the reader's language and counts in the reader's units", async () => {
    const english = await renderFirstPicture(documents[0]);
    const german = await renderFirstPicture(documents[0], [], { language: "de", system: "us", own: { flow: "L/min" } });
    const textOf = (picture: string | undefined) => picture!.replace(/<[^>]*>/g, "|");
    expect(/L\/h\|/.test(textOf(english))).toBe(true);
    expect(/L\/min\|/.test(textOf(german)) && !/L\/h/.test(textOf(german))).toBe(true);
    // A decimal comma, as CLDR has it for German, and the words of the drawing.
    expect(/\d,\d/.test(textOf(german)) && !/\d,\d/.test(textOf(english))).toBe(true);
    expect(/\|Schaubecken\|/.test(textOf(german)) && /\|display\|/.test(textOf(english))).toBe(true);
    // Two at once stay apart.
    const pair = await Promise.all([
      renderFirstPicture(documents[0]),
      renderFirstPicture(documents[0], [], { language: "de", system: "us", own: { flow: "L/min" } }),
    ]);
    expect(pair[0] === english && pair[1] === german).toBe(true);
  });

  it("is drawn also where the pump is gone from the catalogue", async () => {
    expect(await renderFirstPicture(named)).toContain("<svg");
  });
});

describe("the first picture, which goes into the page as markup", () => {
  it("holds no markup out of any text of a document", async () => {
    let drawn = 0;
    let escaped = 0;
    for (const document of documents) {
      for (const changed of withMarkup(document)) {
        const picture = await renderFirstPicture(changed);
        if (picture === undefined) continue;
        drawn++;
        expect(picture).not.toMatch(/<script|<img|<[^>]*\son\w+=|alert\(1\)>/i);
        if (picture.includes("&lt;")) escaped++;
      }
    }
    expect(drawn).toBeGreaterThan(10);
    expect(escaped).toBeGreaterThan(0);
  });
});
