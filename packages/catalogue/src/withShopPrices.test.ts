import { describe, expect, it } from "vitest";
import { demoCatalogue, findController, findDevice, findPump, withOwnPumps, withShopPrices } from "./index.ts";

const priceOf = (catalogue: typeof demoCatalogue, id: string) => findPump(catalogue, id)?.price;
const listed = priceOf(demoCatalogue, "ferrow-c40")!;
const other = demoCatalogue.pumps.find(({ maker }) => maker !== "Ferrow")!;

describe("a catalogue at a shop's prices", () => {
  it("has the maker's factor where there is one, else the kind's, and never both", () => {
    const priced = withShopPrices(demoCatalogue, { Ferrow: 0.9, pump: 1.15 });
    expect(priceOf(priced, "ferrow-c40")).toBeCloseTo(0.9 * listed, 9);
    expect(priceOf(priced, other.id)).toBeCloseTo(1.15 * other.price, 2);
    demoCatalogue.devices.forEach((device, i) => {
      const factor = device.maker === "Ferrow" ? 0.9 : 1;
      expect(priced.devices[i]?.price).toBeCloseTo(factor * device.price, 2);
    });
  });

  it("has prices in whole cents, and those that a factor of one leaves as they were", () => {
    const { pumps } = withShopPrices(demoCatalogue, { pump: 1.0733, Ferrow: 1 });
    for (const { price } of pumps) expect(price * 100).toBeCloseTo(Math.round(price * 100), 6);
    expect(priceOf({ ...demoCatalogue, pumps }, "ferrow-c40")).toBe(listed);
  });

  it("prices devices, controllers, pipe, fittings and valves by their kind", () => {
    const priced = withShopPrices(demoCatalogue, { device: 2, controller: 3, pipe: 4, fitting: 5, valve: 6 });
    const [device, controller] = [demoCatalogue.devices[0]!, demoCatalogue.controllers[0]!];
    expect(findDevice(priced, device.id)?.price).toBe(2 * device.price);
    expect(findController(priced, controller.id)?.price).toBe(3 * controller.price);
    expect(priced.pipeSeries[0]?.pricePerMetre).toBeCloseTo(4 * demoCatalogue.pipeSeries[0]!.pricePerMetre, 9);
    expect(priced.fittings[0]?.priceAt25mm).toBeCloseTo(5 * demoCatalogue.fittings[0]!.priceAt25mm, 9);
    expect(priced.valves[0]?.priceAt25mm).toBeCloseTo(6 * demoCatalogue.valves[0]!.priceAt25mm, 9);
    expect(priceOf(priced, "ferrow-c40")).toBe(listed);
  });

  it("sells a pump's own controller by the maker's factor too", () => {
    const own = demoCatalogue.pumps.find(({ controller }) => controller?.price !== undefined)!;
    const priced = findPump(withShopPrices(demoCatalogue, { [own.maker]: 0.5 }), own.id);
    expect(priced?.controller?.price).toBeCloseTo(0.5 * own.controller!.price!, 2);
  });

  it("reads names in letters large and small, and is the very catalogue where no name is known or no factor is one", () => {
    expect(priceOf(withShopPrices(demoCatalogue, { " FERROW ": 2 }), "ferrow-c40")).toBe(2 * listed);
    for (const factors of [{}, { "No Such Maker": 2 }, { Ferrow: 0 }, { pump: Number.NaN }])
      expect(withShopPrices(demoCatalogue, factors)).toBe(demoCatalogue);
  });

  it("leaves the shop's own pumps at the price that it gave them", () => {
    const own = { ...findPump(demoCatalogue, "ferrow-c40")!, id: "house-1" };
    const catalogue = withOwnPumps(withShopPrices(demoCatalogue, { Ferrow: 0.5, pump: 3 }), [own]);
    expect(priceOf(catalogue, "house-1")).toBe(listed);
    expect(priceOf(catalogue, "ferrow-c40")).toBe(listed / 2);
  });
});
