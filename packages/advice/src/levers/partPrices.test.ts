import { demoCatalogue, withShopPrices } from "@tidewright/catalogue";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import { rank } from "../rank.ts";
import { example } from "../testing/examples.ts";
import { proposePlumbing } from "./proposeChanges.ts";

const design = example("waiting-room-reef.json");
const sold = { Ferrow: 2, pipe: 2, fitting: 2, valve: 2 };
const catalogues = [demoCatalogue, withShopPrices(demoCatalogue, sold)] as const;

describe("at a shop's prices", () => {
  it("parts to buy for a change cost what the shop asks", () => {
    const [listed, asked] = catalogues.map((catalogue) =>
      proposePlumbing(design, catalogue, assess(design, catalogue, { curves: false })),
    );
    const made = ["pipe-size-up", "drain-size-up", "sweep-elbows"];
    const changes = listed!.filter(({ kind, price }) => made.includes(kind) && price > 0);
    expect(changes.length).toBeGreaterThan(2);
    for (const { kind, at, price } of changes)
      expect(asked!.find((each) => each.kind === kind && each.at === at)?.price).toBeCloseTo(2 * price, 1);
  });

  it("pumps are listed and ranked by them", () => {
    const [listed, asked] = catalogues.map((catalogue) => rank(design, catalogue, { pairs: false }).candidates);
    const ferrow = listed!.filter(({ label, extras }) => label.startsWith("Ferrow") && extras.length === 0);
    expect(ferrow.length).toBeGreaterThan(0);
    for (const { label, price } of ferrow)
      expect(asked!.find((each) => each.label === label)?.price).toBeCloseTo(2 * price, 6);
    expect(asked!.findIndex(({ label }) => label === ferrow[0]!.label)).toBeGreaterThan(listed!.indexOf(ferrow[0]!));
    const [before, after] = catalogues.map((catalogue) => assess(design, catalogue, { curves: false }).cost.purchase);
    expect(after).toBeGreaterThan(before!);
  });
});
