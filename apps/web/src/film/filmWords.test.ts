import type { Finding, SafetyRow, VesselTrack, WhatIfEvent } from "@tidewright/advice";
import { describe, expect, it } from "vitest";
import { clockText, latestEvent, levelWords } from "./filmWords.ts";
import { scenarioOfFinding } from "./scenarioOfFinding.ts";
import { worstMoment } from "./worstMoment.ts";

const millimetres = (si: number) => `${Math.round(si * 1000)} mm`;

// Expected values are analytic: differences and sexagesimal time.
describe("a moment of a film in words", () => {
  it("shows time as a clock does and never runs ahead", () => {
    expect(clockText(0)).toBe("0:00");
    expect(clockText(119.99)).toBe("1:59");
    expect(clockText(3600)).toBe("1:00:00");
    expect(clockText(2 * 86_400 + 3661)).toBe("2\u00a0d 01:01:01");
  });

  it("takes a moment reached by steps for the whole second that it is", () => {
    expect(clockText(59.9999999)).toBe("1:00");
  });

  it("tells water below its rim from water over it", () => {
    expect(levelWords(0.48, 0.5, 0.46, millimetres)).toEqual({
      margin: "20 mm to the rim",
      change: "up 20 mm",
      over: false,
    });
    expect(levelWords(0.503, 0.5, 0.46, millimetres)).toMatchObject({ margin: "3 mm over the rim", over: true });
    expect(levelWords(0.4, undefined, 0.4, millimetres)).toEqual({ margin: "", change: "as running", over: false });
  });

  it("names the last event up to a moment and none before the first", () => {
    const events = [{ t: 60 }, { t: 60 }, { t: 75 }] as WhatIfEvent[];
    expect(latestEvent(events, 59)).toBe(-1);
    expect(latestEvent(events, 60)).toBe(1);
    expect(latestEvent(events, 1e6)).toBe(2);
  });
});

describe("the worst moment of a scenario", () => {
  const vessel = (change: Partial<VesselTrack>): VesselTrack =>
    ({ start: 0.4, highest: 0.4, highestAt: 0, margin: 0.1, spilled: 0, ...change }) as VesselTrack;

  it("is when the vessel that spills most stands highest", () => {
    const vessels = [
      vessel({ spilled: 0.001, highestAt: 10 }),
      vessel({ spilled: 0.003, highestAt: 20 }),
      vessel({ margin: -0.01, highest: 0.5, highestAt: 30 }),
    ];
    expect(worstMoment({ verdict: "wet", vessels, timeToTrouble: 5 })).toBe(20);
  });

  it("is when a pump first draws air, where nothing spills", () => {
    expect(worstMoment({ verdict: "dry", vessels: [vessel({})], timeToTrouble: 77 })).toBe(77);
  });

  it("is when a vessel that rises comes nearest to its rim, not when one runs near its rim all the time", () => {
    const vessels = [vessel({ margin: 0.02 }), vessel({ margin: 0.05, highest: 0.48, highestAt: 90 })];
    expect(worstMoment({ verdict: "safe", vessels })).toBe(90);
  });
});

describe("the film of a finding", () => {
  const row = (id: string, kind: string, subjects: string[], verdict = "wet") =>
    ({ verdict, scenario: { id, kind, subjects } }) as unknown as SafetyRow;
  const rows = [
    row("twoDrainsBlocked:0+1", "twoDrainsBlocked", ["a", "b"]),
    row("twoDrainsBlocked:0+2", "twoDrainsBlocked", ["a", "c"]),
    row("powerCut", "powerCut", [], "safe"),
  ];
  const finding = (code: string, names: string) => ({ code, at: "/sump", data: { names } }) as unknown as Finding;

  it("is that of the very parts that it names", () => {
    expect(scenarioOfFinding(finding("overTime/two-drains-blocked", "a + c"), rows)).toBe("twoDrainsBlocked:0+2");
  });

  it("is none for a scenario that ends well and for findings of another kind", () => {
    expect(scenarioOfFinding(finding("overTime/power-cut", ""), rows)).toBeUndefined();
    expect(scenarioOfFinding(finding("pipe/fast", ""), rows)).toBeUndefined();
  });
});
