import { demoCatalogue, findPump } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import type { ShopSettings } from "@tidewright/protocol";
import { afterEach, describe, expect, it } from "vitest";
import { freshApp } from "../testing/freshApp.ts";
import { removeFresh } from "../testing/freshDoors.ts";

afterEach(removeFresh);

/** What a customer's answers in inches become in a shop that has said so much of itself. */
async function intakeIn(said: Partial<ShopSettings>): Promise<Design> {
  const { store, clock, links, ask } = await freshApp({ people: false });
  const { settings, version } = await store.settings.read();
  const by = { author: "Mara", at: new Date(clock.now).toISOString() };
  expect(await store.settings.write(version, { ...settings, ...said }, by)).toMatchObject({ ok: true });
  const inches = (value: number) => ({ value, unit: "in" });
  const tank = { length: inches(48), width: inches(24), height: inches(24) };
  const json = { name: "Aldous Penn", contact: "aldous@penn.example", notes: "", answers: { units: "us", tank } };
  expect((await ask("/api/intake", { method: "POST", as: "intake", json })).status).toBe(201);
  const latest = await store.designs.latest(links.intake.id);
  return latest?.document as Design;
}

describe("a design of a customer's intake", () => {
  it("has the shop's price of electricity and sockets, whatever the customer measured in", async () => {
    const { power, display } = await intakeIn({ currency: "EUR", tariff: { value: 0.27, unit: "EUR/kWh" } });
    expect(power).toMatchObject({
      tariff: { value: 0.27, unit: "EUR/kWh" },
      voltage: { value: 230 },
      frequency: { value: 50 },
      circuits: [{ rating: { value: 16 } }],
    });
    expect(display.length).toEqual({ value: 48, unit: "in" });
  });

  it("is made of the pump that is best at the shop's prices", async () => {
    const pumpOf = ({ loops }: Design) => findPump(demoCatalogue, loops[0]?.pumps[0]?.ref ?? "")!;
    const { id, maker } = pumpOf(await intakeIn({}));
    expect(pumpOf(await intakeIn({ priceMultipliers: { [maker]: 20 } })).id).not.toBe(id);
  });

  it("has 120 V and dollars in a shop whose own papers are in US units and that reckons in dollars", async () => {
    const { power } = await intakeIn({ currency: "USD", units: { volume: "US gal" } });
    expect(power).toMatchObject({ tariff: { unit: "USD/kWh" }, voltage: { value: 120 } });
  });
});
