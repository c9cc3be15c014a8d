import { loadWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { alsoInUnits, readQuantity, stepped, typedText } from "./quantityText.ts";
import { screenFormat } from "./screenFormat.ts";

describe("quantities as typed", () => {
  it("keeps 25 mm as 25 mm whatever the units of the screen are", () => {
    expect(typedText({ value: 25, unit: "mm" }, "length")).toBe("25 mm");
  });

  it("writes feet and inches with their fraction", () => {
    expect(typedText({ value: 3.375, unit: "ft-in" }, "length")).toBe(`3' 4 1/2"`);
  });

  it("does not round what lies between sixteenths of an inch", () => {
    expect(typedText({ value: 3.371, unit: "ft-in" }, "length")).toBe("3.371 ft");
  });

  it("reads any unit, and gives a bare number the unit that stood there", () => {
    expect(readQuantity("800 US gal/h", "flow", "L/h")).toEqual({
      ok: true,
      quantity: { value: 800, unit: "US gal/h" },
    });
    expect(readQuantity("40", "length", "cm")).toEqual({ ok: true, quantity: { value: 40, unit: "cm" } });
  });

  it("says what is wrong with a length in litres", () => {
    const reading = readQuantity("25 L", "length", "mm");
    expect(reading.ok ? "" : reading.problem).toMatch(/volume/);
  });

  it("steps in the last written digit", () => {
    expect(stepped({ value: 1.25, unit: "m" }, 1).value).toBe(1.26);
    expect(stepped({ value: 430, unit: "mm" }, -10).value).toBe(420);
  });

  it("shows the other units beside what was typed, exact inch from NIST SP 811: 25.4 mm", () => {
    const us = screenFormat({ system: "us", own: {} });
    expect(alsoInUnits({ value: 254, unit: "mm" }, "length", us)).toMatch(/^10\sin$/u);
    expect(alsoInUnits({ value: 10, unit: "in" }, "length", us)).toBeUndefined();
  });

  it("lets one quantity have a unit of its own", () => {
    const own = screenFormat({ system: "metric", own: { flow: "US gal/h" } });
    expect(own.unitOf("flow")).toBe("US gal/h");
    expect(own.unitOf("length")).toBe("mm");
    expect(screenFormat({ system: "metric", own: { flow: "furlong" } }).unitOf("flow")).toBe("L/h");
  });

  it("writes and reads a decimal comma where that is the reader's, and the point beside it where it is plain", async () => {
    const german = await loadWords("de");
    expect(typedText({ value: 1.026, unit: "m" }, "length", ",")).toBe("1,026 m");
    for (const text of ["1,026 m", "1,026"])
      expect(readQuantity(text, "length", "m", german)).toEqual({ ok: true, quantity: { value: 1.026, unit: "m" } });
    expect(readQuantity("2.5 m", "length", "m", german)).toEqual({ ok: true, quantity: { value: 2.5, unit: "m" } });
    const twofold = readQuantity("1.026 m", "length", "m", german);
    expect(twofold.ok ? "" : twofold.problem).toMatch(/1026/);
    const wrong = readQuantity("25 L", "length", "mm", german);
    expect(wrong.ok ? "" : wrong.problem).toMatch(/Länge/);
  });

  it("writes 1.25 m with a comma in German, through Intl's own sign", () => {
    const german = screenFormat({ system: "metric", own: { length: "m" } }, "de");
    expect(german(1.25, "length")).toBe("1,25\u00a0m");
    expect(german.sum(12.5, "CHF")).toBe("12,50\u00a0CHF");
    expect(german.plain(0.3)).toBe("0,3");
  });
});
