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
});
