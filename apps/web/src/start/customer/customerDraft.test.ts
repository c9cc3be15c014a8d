import { loadWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { type CustomerDraft, emptyCustomer, readCustomer } from "./customerDraft.ts";

const english = await loadWords("en");

const filled: CustomerDraft = {
  ...emptyCustomer("de-DE"),
  name: "Ada",
  contact: "0123",
  sizes: { length: "120", width: "50", height: "55 cm", stand: "80" },
  animals: ["softCorals"],
};
const wrong = (change: Partial<CustomerDraft>) => {
  const reading = readCustomer({ ...filled, ...change }, english);
  return reading.ok ? [] : Object.keys(reading.problems).sort();
};

describe("what a customer says", () => {
  it("becomes answers in the units that were chosen", () => {
    const reading = readCustomer(filled, english);
    expect(reading).toMatchObject({
      ok: true,
      answers: {
        units: "metric",
        tank: { length: { value: 120, unit: "cm" }, height: { value: 55, unit: "cm" } },
        animals: ["softCorals"],
        standHeight: { value: 80, unit: "cm" },
      },
    });
    expect(readCustomer({ ...filled, units: "us", sizes: { volume: "75" } }, english)).toMatchObject({
      ok: true,
      answers: { tank: { volume: { value: 75, unit: "US gal" } } },
    });
  });

  it("needs a name, a way back and a size, and everything missing is told at once", () => {
    expect(wrong({ name: " ", contact: "", sizes: {} })).toEqual(["contact", "name", "tank"]);
    expect(wrong({ sizes: { length: "120", width: "50" } })).toEqual(["tank"]);
    expect(wrong({ sizes: { length: "abc", width: "50", height: "50" } })).toEqual(["length"]);
    expect(wrong({ sizes: { length: "99999", width: "50", height: "50" } })).toEqual(["length"]);
    expect(wrong({ glass: "drilled", holes: "many" })).toEqual(["holes"]);
  });

  it("keeps a number of holes whose size nobody knows in the notes", () => {
    const reading = readCustomer({ ...filled, glass: "drilled", holes: "2", notes: "By the window." }, english);
    expect(reading.ok && reading.notes).toBe("By the window.\nHow many holes? 2");
    expect(reading.ok && reading.answers.overflow).toEqual({ glass: "drilled" });
  });

  it("says how evaporated water is replaced, and leaves it out where that is not known", () => {
    const said = (change: Partial<CustomerDraft>) => {
      const reading = readCustomer({ ...filled, ...change }, english);
      return reading.ok ? reading.answers.topOff : reading.problems;
    };
    expect(said({})).toBeUndefined();
    expect(said({ topOff: "none", sizes: { ...filled.sizes, reservoir: "20" } })).toEqual({ kind: "none" });
    expect(said({ topOff: "automatic", sizes: { ...filled.sizes, reservoir: "20" } })).toEqual({
      kind: "automatic",
      reservoir: { value: 20, unit: "L" },
    });
    expect(said({ topOff: "automatic", sizes: { ...filled.sizes, reservoir: "a bucket" } })).toHaveProperty(
      "reservoir",
    );
  });

  it("is read with a decimal comma in German", async () => {
    const german = await loadWords("de");
    const reading = readCustomer({ ...filled, sizes: { ...filled.sizes, length: "120,5" } }, german);
    expect(reading.ok && reading.answers.tank.length).toEqual({ value: 120.5, unit: "cm" });
  });
});
