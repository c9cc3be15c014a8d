import { demoCatalogue, findPump } from "@tidewright/catalogue";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { catalogueOf } from "./catalogueMessage.ts";
import { catalogueTeller } from "./catalogueTeller.ts";
import { currentCatalogue, currentOwnPumps, watchCatalogue } from "./currentCatalogue.ts";
import { takeRows, watchRows } from "./shopRows.ts";
import { type ShopTerms, takeTerms } from "./shopTerms.ts";

const data = findPump(demoCatalogue, "ferrow-c40")!;
const row = (id: string, more: object = {}) => ({ id, data: { ...data, ...more } });

const terms: ShopTerms = { currency: "EUR", tariff: null, units: {}, priceMultipliers: {} };
const priceOf = (id: string) => findPump(currentCatalogue(), id)?.price;

beforeEach(() => {
  takeRows([]);
  takeTerms(undefined);
});

describe("the catalogue in force", () => {
  it("is the program's own before anything is known", () => {
    expect(currentCatalogue()).toBe(demoCatalogue);
  });

  it("has the shop's pumps first, and stays the same object until they change", () => {
    takeRows([row("house-1"), row("house-2")]);
    const catalogue = currentCatalogue();
    expect(catalogue.pumps.slice(0, 3).map(({ id }) => id)).toEqual(["house-1", "house-2", demoCatalogue.pumps[0]!.id]);
    takeRows([row("house-1"), row("house-2")]);
    expect(currentCatalogue()).toBe(catalogue);
    takeRows([row("house-1"), row("house-2", { ratedPower: 41 })]);
    expect(findPump(currentCatalogue(), "house-2")?.ratedPower).toBe(41);
  });

  it("has also those that were there before anybody asked for a catalogue", async () => {
    vi.resetModules();
    const early = await import("./shopRows.ts");
    early.takeRows([row("house-1")]);
    const late = await import("./currentCatalogue.ts");
    expect(findPump(late.currentCatalogue(), "house-1")).toBeDefined();
  });

  it("loses a bad row and nothing else", () => {
    takeRows([{ id: "bad", data: { maker: 7 } }, row("house-1"), { id: "worse", data: null }]);
    expect(currentOwnPumps().map(({ id }) => id)).toEqual(["house-1"]);
  });

  it("is told of once for each change, when the new one is in force already", () => {
    const seen: number[] = [];
    const stop = watchRows(() => seen.push(currentCatalogue().pumps.length - demoCatalogue.pumps.length));
    takeRows([row("house-1")]);
    takeRows([row("house-1")]);
    takeRows([row("house-1"), row("house-2")]);
    stop();
    takeRows([]);
    expect(seen).toEqual([1, 2]);
  });
});

describe("at the shop's prices", () => {
  it("has the program's pumps by its factors and its own as they are", () => {
    takeRows([row("house-1")]);
    takeTerms({ ...terms, priceMultipliers: { Ferrow: 0.5 } });
    expect([priceOf("ferrow-c40"), priceOf("house-1")]).toEqual([data.price / 2, data.price]);
    takeTerms({ ...terms, priceMultipliers: {} });
    expect(priceOf("ferrow-c40")).toBe(data.price);
  });

  it("is another catalogue only when a price is another", () => {
    const seen: (number | undefined)[] = [];
    const stop = watchCatalogue(() => seen.push(priceOf("ferrow-c40")));
    takeTerms({ ...terms, priceMultipliers: { Ferrow: 2 } });
    const catalogue = currentCatalogue();
    takeTerms({ ...terms, priceMultipliers: { Ferrow: 2 }, tariff: { value: 0.3, unit: "EUR/kWh" } });
    expect(currentCatalogue()).toBe(catalogue);
    takeTerms(undefined);
    stop();
    takeTerms({ ...terms, priceMultipliers: { Ferrow: 3 } });
    expect(seen).toEqual([2 * data.price, data.price]);
  });
});

describe("a worker", () => {
  it("is told of the shop's prices", () => {
    const heard: unknown[] = [];
    const tell = catalogueTeller();
    takeTerms({ ...terms, priceMultipliers: { Ferrow: 2 } });
    tell({ postMessage: (message: unknown) => heard.push(message) });
    const told = catalogueOf(heard[0] as Parameters<typeof catalogueOf>[0]);
    expect(findPump(told, "ferrow-c40")?.price).toBe(2 * data.price);
  });

  it("is told of the shop's pumps before its next question and not again until they change", () => {
    const heard: unknown[] = [];
    const worker = { postMessage: (message: unknown) => heard.push(message) };
    const tell = catalogueTeller();
    expect(tell(worker)).toBe(demoCatalogue);
    expect(heard).toEqual([]);
    takeRows([row("house-1")]);
    expect(tell(worker)).toBe(currentCatalogue());
    tell(worker);
    takeRows([]);
    tell(worker);
    expect(heard).toMatchObject([
      { kind: "catalogue", pumps: [{ id: "house-1" }] },
      { kind: "catalogue", pumps: [] },
    ]);
    expect(catalogueOf(heard[0] as Parameters<typeof catalogueOf>[0]).pumps[0]?.id).toBe("house-1");
  });
});
