import { type Dimension, formatQuantity, unitSystems } from "@tidewright/units";
import { loadWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { describeFinding } from "./describeFinding.ts";
import { describeReason } from "./describeReason.ts";

const litresPerHour = (si: number, dimension: string) =>
  dimension === "flow" ? `${Math.round(si * 3.6e6)} L/h` : `${si} ${dimension}`;

describe("the words of a flow that runs the wrong way", () => {
  it("tell a pump that cannot lift as one past which water runs back, by its size and without a minus", () => {
    const reason = { code: "below-wish", value: -1281 / 3.6e6, limit: 1295 / 3.6e6, dimension: "flow" } as const;
    expect(describeReason(reason, litresPerHour)).toBe(
      "cannot lift: 1281 L/h of water would run back from the display through the other branches; 1295 L/h up is the least wished",
    );
  });

  it("leave a pump that gives too little as it is", () => {
    const reason = { code: "below-wish", value: 800 / 3.6e6, limit: 1295 / 3.6e6, dimension: "flow" } as const;
    expect(describeReason(reason, litresPerHour)).toBe("gives only 800 L/h; 1295 L/h is the least wished");
  });

  it("tell an outlet that takes water in as one", () => {
    const finding = {
      code: "flow/no-lift",
      severity: "danger",
      at: "/loops/0/run/1",
      source: "geometry",
      value: -700 / 3.6e6,
      limit: 0,
      dimension: "flow",
      data: { name: "the outlet to display" },
    } as const;
    expect(describeFinding(finding, litresPerHour).sentence).toBe(
      "Water runs back in at the outlet to display: 700 L/h the wrong way.",
    );
  });

  it("tell a device that is flowed through backward as one", () => {
    const finding = {
      code: "device/flow-low",
      severity: "warning",
      at: "/loops/0/run/4/branches/3/2",
      source: "maker",
      value: -306 / 3.6e6,
      limit: 120 / 3.6e6,
      dimension: "flow",
      data: { name: "Reactor 2 L" },
    } as const;
    expect(describeFinding(finding, litresPerHour).sentence).toBe(
      "Water runs backward through Reactor 2 L, 306 L/h; its maker asks for at least 120 L/h forward.",
    );
  });

  it("tell a pump at rest by its head", () => {
    const finding = {
      code: "flow/no-lift",
      severity: "danger",
      at: "/loops/0/pumps/0",
      source: "maker",
      value: 0.5,
      limit: 1.2,
      dimension: "head",
      data: { name: "Ferrow C40" },
    } as const;
    expect(describeFinding(finding, litresPerHour).sentence).toBe(
      "Ferrow C40 moves nothing forward: it reaches 0.5 head where 1.2 head is asked for.",
    );
  });
});

describe("the words of a loaded circuit", () => {
  it("say that all own load is reckoned on the first", () => {
    const finding = {
      code: "power/circuit-overload",
      severity: "danger",
      at: "/power/circuits/0",
      source: "circuit",
      value: 15,
      limit: 12.8,
      dimension: "current",
      data: { name: "stand" },
    } as const;
    expect(describeFinding(finding, (si) => `${si} A`).sentence).toContain("reckoned to hang on the first circuit");
  });
});

describe("the words of a place without a pump", () => {
  it("name the pump where there is a name, and say that none is chosen where there is not", () => {
    const finding = { code: "pump/missing", severity: "warning", at: "/loops/0/pumps/0", source: "wish" } as const;
    const told = (name: string, more: object) => describeFinding({ ...finding, data: { name, ...more } }, String);
    expect(told("", { one: "loop Return" })).toEqual({
      title: "No pump chosen",
      sentence: "This place for a pump is empty: no pump is reckoned with.",
      fix: "Take one from the ranking.",
    });
    const gone = told("house-1", { one: "loop Return" });
    expect(gone.title).toBe("Pump not in the catalogue");
    expect(gone.sentence).toMatch(/^The pump house-1 \(loop Return\) is not in the catalogue/);
    expect(gone.fix).toMatch(/another pump.*enter house-1/);
    expect(told("house-1", { place: "display" }).sentence).toMatch(/^The pump house-1 \(in the display\)/);
  });
});

describe("the words of a number without a unit", () => {
  const inUnits = (si: number, dimension: Dimension) =>
    formatQuantity(si, dimension, dimension === "ratio" ? "%" : unitSystems.metric[dimension]);
  const numbers = { source: "x", severity: "notice", at: "/loops/0/run/0" } as const;

  it("tell a Reynolds number whole and a Froude number short", async () => {
    const german = await loadWords("de");
    const regime = {
      ...numbers,
      code: "pipe/uncertain-regime",
      value: 3132.98,
      limit: 4000,
      data: { name: "A" },
    } as const;
    expect(describeFinding(regime, inUnits).sentence).toMatch(/^Reynolds number 3133 in A/);
    expect(describeFinding(regime, inUnits, german).sentence).toMatch(/^Reynolds-Zahl 3133 in A/);
    const froude = { ...numbers, code: "drain/siphon-not-clearing-air", value: 0.72493, limit: 1 } as const;
    expect(describeFinding(froude, inUnits).sentence).toMatch(/Froude number 0\.72; above about 1 water/);
    expect(describeFinding(froude, inUnits, german).sentence).toMatch(/Froude-Zahl 0,72; erst über etwa 1 /);
  });
});
