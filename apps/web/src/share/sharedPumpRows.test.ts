import { readFileSync } from "node:fs";
import { assess } from "@tidewright/advice";
import { demoCatalogue, readOwnPumps, withOwnPumps } from "@tidewright/catalogue";
import { readDesign } from "@tidewright/design";
import { sharedPump } from "@tidewright/protocol";
import { describe, expect, it } from "vitest";
import { sharedPumpRows } from "./sharedPumpRows.ts";

const told = demoCatalogue.pumps.map((pump) => sharedPump.parse({ ...pump, id: `house-${pump.id}` }));

describe("the pumps of a shared design", () => {
  it("are all read again as pumps, though the shop keeps their prices to itself", () => {
    const { pumps, problems } = readOwnPumps(sharedPumpRows(told));
    expect(problems).toEqual([]);
    expect(pumps).toHaveLength(demoCatalogue.pumps.length);
    expect(JSON.stringify(told)).not.toMatch(/"(price|note|source|currency)"/);
  });

  it("give a customer the shop's own numbers", () => {
    const text = readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8");
    const inShop = withOwnPumps(
      demoCatalogue,
      demoCatalogue.pumps.map((pump) => ({ ...pump, id: `house-${pump.id}` })),
    );
    const atCustomer = withOwnPumps(demoCatalogue, readOwnPumps(sharedPumpRows(told)).pumps);
    const reading = readDesign(
      text.replaceAll(/"ref": "(?=tarnhelm|ferrow|brayne|ostwick)/g, '"ref": "house-'),
      inShop,
    );
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    const [shop, customer] = [inShop, atCustomer].map((catalogue) => assess(reading.design, catalogue));
    expect(shop!.pumps[0]!.ref).toMatch(/^house-/);
    expect(customer!.loops).toEqual(shop!.loops);
    expect(customer!.power).toEqual(shop!.power);
    expect(customer!.sound).toEqual(shop!.sound);
    expect(shop!.cost.pumps).toBeGreaterThan(0);
    expect(customer!.cost.pumps).toBe(0);
  });
});
