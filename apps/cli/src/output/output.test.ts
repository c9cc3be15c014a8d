import { describe, expect, it } from "vitest";
import { formatIn, money, percent } from "./format.ts";
import { stylesFor } from "./styles.ts";
import { tableText } from "./table.ts";
import { wrap } from "./wrap.ts";

describe("tables", () => {
  it("narrow their flexible columns to fit the width, and keep numbers whole", () => {
    const name = "a very long name of a pump that nobody would ever print on one line of a terminal";
    const text = tableText(
      [
        { head: "pump", flexible: true },
        { head: "flow", align: "right" },
      ],
      [[name, "3142 L/h"]],
      40,
    );
    for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(40);
    expect(text).toContain("3142 L/h");
    expect(
      text
        .replace(/3142 L\/h|pump {2,}flow/g, "")
        .replace(/\s+/g, " ")
        .trim(),
    ).toBe(name);
  });

  it("break sentences at blanks only, and never between a number and its unit", () => {
    const text = wrap(`the drain carries ${formatIn("metric")(0.001, "flow")} in full siphon`, 24, "  ");
    expect(text.split("\n").every((line) => line.length <= 24)).toBe(true);
    expect(text).toMatch(/3600\u202fL\/h/);
  });
});

describe("units in tables", () => {
  const right = { head: "flow", align: "right" } as const;

  it("stand once above a column that shares one, intervals included, and stay in the cells of mixed columns", () => {
    const shared = tableText([right], [["12\u202fL/h"], ["1\u202fL/h to 2\u202fL/h"], ["—"]], 80);
    expect(shared.split("\n").map((line) => line.trim())).toEqual(["flow", "L/h", "12", "1 to 2", "—"]);
    const mixed = tableText([right], [["12\u202fL/h"], ["3\u202fm"]], 80);
    expect(mixed).toContain("12\u202fL/h");
    expect(mixed).toContain("3\u202fm");
  });
});

describe("numbers", () => {
  // NIST Special Publication 811 (2008), appendix B.8: 1 US gallon is 3.785412 L, 1 foot is 0.3048 m;
  // 1 imperial gallon is 4.54609 L.
  it("turn to the system asked for", () => {
    expect(formatIn("metric")(1 / 3600, "flow")).toMatch(/^1000\D/);
    expect(formatIn("us")(1 / 3600, "flow")).toMatch(/^264\D/);
    expect(formatIn("imperial")(1 / 3600, "flow")).toMatch(/^220\D/);
    expect(formatIn("us")(3.048, "head")).toMatch(/^10\D/);
  });

  it("that are not there are a dash", () => {
    expect([formatIn("us")(Number.NaN, "flow"), money(Number.NaN, "EUR"), percent(Number.POSITIVE_INFINITY)]).toEqual([
      "—",
      "—",
      "—",
    ]);
  });
});

describe("colour", () => {
  it("is for a terminal only, and not where NO_COLOR is set", () => {
    expect(stylesFor({ isTTY: true }, {}).red("danger")).toContain("\u001b[");
    expect(stylesFor({ isTTY: true }, { NO_COLOR: "1" }).red("danger")).toBe("danger");
    expect(stylesFor({ isTTY: false }, { FORCE_COLOR: "1" }).red("danger")).toBe("danger");
  });
});
