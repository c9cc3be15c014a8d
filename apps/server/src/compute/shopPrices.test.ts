import { demoCatalogue, findPump } from "@tidewright/catalogue";
import { afterEach, expect, it } from "vitest";
import { endServed, exampleText, servedShop } from "../testing/servedShop.ts";

afterEach(endServed);

it("an answer of hydraulics has the prices of the shop, from the next question on", async () => {
  const { store, ask } = await servedShop();
  const priceOf = async () => {
    const response = await ask("POST", "api/assess", exampleText("waiting-room-reef.json"));
    const { pumps } = (await response.json()) as { pumps: { ref: string; price: number }[] };
    return pumps.find(({ ref }) => ref === "ferrow-c40")?.price;
  };
  const listed = findPump(demoCatalogue, "ferrow-c40")!.price;
  expect(await priceOf()).toBe(listed);
  const { settings, version } = await store.settings.read();
  const by = { author: "Mara", at: "2026-03-01T09:00:00.000Z" };
  await store.settings.write(version, { ...settings, priceMultipliers: { Ferrow: 0.5, pump: 3 } }, by);
  expect(await priceOf()).toBe(listed / 2);
});
