import { DOMParser } from "@xmldom/xmldom";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { element, escaped } from "./element.ts";
import { fitLines, textWidth } from "./textWidth.ts";

describe("text in XML", () => {
  it("comes back as it was for everything that XML can write", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), (text) => {
        const document = new DOMParser().parseFromString(
          element("text", { "data-x": text }, escaped(text)),
          "text/xml",
        );
        // W3C XML 1.0, 2.11: a reader turns every line end into one line feed, and 3.3.3: into a blank in attributes.
        expect(document.documentElement?.textContent).toBe(text.replace(/\r\n?/g, "\n"));
      }),
    );
  });

  it("loses what XML forbids", () => {
    expect(escaped("a\u0000b\ud800c")).toBe("a b c");
  });
});

describe("lines of a label", () => {
  it("fit their room, all words kept where the lines suffice", () => {
    const text = "the pump of “return” draws air time and again, and stays off";
    const lines = fitLines(text, 11, 200, 3);
    for (const line of lines) expect(textWidth(line, 11)).toBeLessThanOrEqual(200);
    expect(lines.join(" ")).toBe(text);
  });

  it("are cut with an ellipsis where they do not", () => {
    const [line = ""] = fitLines("a name that goes on and on and on", 12, 80, 1);
    expect(line).toMatch(/…$/);
    expect(textWidth(line, 12)).toBeLessThanOrEqual(80);
  });
});
