import { demoCatalogue } from "@tidewright/catalogue";
import { animalGroups, checkDesign, type Design } from "@tidewright/design";
import { toSI } from "@tidewright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import { safetySweep } from "../overTime/safetySweep.ts";
import { firstDesign } from "./firstDesign.ts";
import type { StartNoteCode } from "./firstDesignResult.ts";
import { holeOfPipe, pipeOfHole } from "./practice.ts";
import { readStart } from "./readStart.ts";
import { type ShopGround, shopGroundOf } from "./shopGround.ts";
import type { StartAnswers } from "./startAnswers.ts";

const mm = (value: number) => ({ value, unit: "mm" });
const litres = (value: number) => ({ value, unit: "L" });
const gallons = (value: number) => ({ value, unit: "US gal" });

/** Every danger that a first design may have, and the note that must then say so. */
const explained: Readonly<Record<string, readonly StartNoteCode[]>> = {
  "drain/no-emergency": ["oneDrain"],
  "sump/too-small": ["danger"],
  "power/circuit-overload": ["circuitSmall"],
  "overTime/power-cut": ["wet", "sumpSmall"],
  "overTime/restart": ["wet", "sumpSmall"],
  "overTime/drain-blocked": ["wet"],
  "overTime/top-off-stuck-open": ["wet"],
};

/** Checks what every first design promises, and returns it. */
function promised(answers: StartAnswers, sweep = false) {
  const reading = readStart(answers);
  expect(reading.ok ? [] : reading.problems).toEqual([]);
  const first = firstDesign(answers, demoCatalogue);
  const { design, notes } = first;
  const checked = checkDesign(design, demoCatalogue);
  expect(checked.ok ? [] : checked.problems).toEqual([]);
  const state = assess(design, demoCatalogue, { curves: false });
  const codes = notes.map((note) => note.code);
  const findings = [...state.findings, ...(sweep ? safetySweep(design, demoCatalogue).findings : [])];
  for (const finding of findings) {
    if (finding.severity !== "danger") continue;
    const told = codes.some((code) => code === "danger" || explained[finding.code]?.includes(code));
    expect(told, `${finding.code} of ${JSON.stringify(answers)} is told`).toBe(true);
  }
  if (!codes.includes("sumpSmall")) expect(state.sump.margin).toBeGreaterThan(0);
  const { value, wish } = state.turnover.return;
  const asked = answers.wishes?.returnTurnover?.map((each) => toSI(each, "turnover")) ?? [5, 10];
  if (!codes.some((code) => ["returnLowered", "returnNarrowed", "drainLoud", "noPump"].includes(code))) {
    expect(value).toBeGreaterThan(0.98 * (asked[0] ?? 0));
    expect(value).toBeLessThan(1.02 * (asked[1] ?? 0));
  }
  if (!codes.includes("noPump")) {
    expect(value).toBeGreaterThan(0.98 * (wish?.[0] ?? 0));
    const dry = state.drains.find((drain) => drain.role === "emergency");
    if (dry) expect(dry.flow).toBeLessThan(1e-3 * state.overflow.flow);
  }
  return { ...first, state, codes };
}

const volumes = [60, 110, 250, 520, 1000, 1900, 3000];

describe("a first design", () => {
  it.each(animalGroups)(
    "for %s is sound for tanks of 60 to 3000 L, with one, two and three drains, metric and US",
    (animals) => {
      for (const size of [litres(60), gallons(137), litres(3000)])
        for (const drains of ["one", "two", "three"] as const)
          promised({ tank: { volume: size }, animals: [animals], overflow: { drains } });
    },
  );

  it.each([60, 520, 1000])("of %d L keeps the floor dry in a full sweep over time, or says why not", (volume) => {
    for (const drains of ["one", "two", "three"] as const)
      promised({ tank: { volume: litres(volume) }, overflow: { drains } }, true);
  });

  it("with three drains runs a siphon, a quiet open channel and a dry spare", () => {
    for (const volume of volumes) {
      const { state } = promised({ tank: { volume: litres(volume) } });
      const [siphon, open, dry] = state.drains;
      expect(siphon?.regime).toBe("siphon");
      expect(open?.flow).toBeLessThanOrEqual((open?.capacity.quiet ?? 0) * 1.001);
      expect(dry?.regime).toBe("dry");
      // The dry spare alone carries everything with the box full.
      expect(dry?.capacityAtRim).toBeGreaterThan(state.overflow.flow);
      expect(state.overflow.fall).toBeGreaterThan(0);
    }
  });

  it("stays sound whatever is answered, and is made within a second", () => {
    const length = (min: number, max: number) => fc.integer({ min, max }).map(mm);
    const maybe = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: undefined });
    const answers = fc.record({
      tank: fc.record({ length: length(400, 3000), width: length(250, 1100), height: length(250, 900) }),
      animals: maybe(fc.subarray([...animalGroups], { minLength: 1 })),
      overflow: maybe(
        fc.oneof(
          fc.record({ drains: fc.constantFrom("one" as const, "two" as const, "three" as const) }),
          fc.record({
            glass: fc.constant("drilled" as const),
            holes: fc.record({ count: fc.integer({ min: 1, max: 4 }), diameter: length(28, 80) }),
          }),
          fc.record({ glass: fc.constant("keep" as const) }),
        ),
      ),
      standHeight: maybe(length(0, 4000)),
      sump: maybe(fc.record({ length: length(300, 1200), width: length(200, 500), height: length(250, 500) })),
      topOff: maybe(
        fc.oneof(
          fc.record({ kind: fc.constantFrom("automatic" as const, "none" as const) }),
          fc.record({ reservoir: fc.integer({ min: 2, max: 200 }).map(litres) }),
        ),
      ),
      returnWay: maybe(fc.record({ horizontal: length(0, 8000), elbows: fc.integer({ min: 0, max: 8 }) })),
      power: maybe(
        fc.constantFrom(
          { voltage: { value: 230, unit: "V" }, circuit: { value: 16, unit: "A" } },
          { voltage: { value: 120, unit: "V" }, circuit: { value: 15, unit: "A" } },
        ),
      ),
      wishes: maybe(
        fc.record({
          budget: maybe(fc.integer({ min: 50, max: 2000 }).map((value) => ({ value, unit: "EUR" }))),
          sound: maybe(fc.integer({ min: 28, max: 50 }).map((value) => ({ value, unit: "dB(A)" }))),
        }),
      ),
    });
    let slowest = 0;
    fc.assert(
      fc.property(answers, (loose) => {
        // An answer that is not given is not there.
        const said = JSON.parse(JSON.stringify(loose)) as StartAnswers;
        const started = process.cpuUsage();
        const { codes } = promised(said);
        const { user, system } = process.cpuUsage(started);
        // Where no pump fits, every size of pipe and every pair of pumps was tried before it is said.
        if (!codes.includes("noPump")) slowest = Math.max(slowest, (user + system) / 1000);
      }),
      { numRuns: 12, seed: 4711, endOnFailure: true },
    );
    // The aim is one second on an idle machine; with the checks of this test it is given three, of its own work alone.
    expect(slowest).toBeLessThan(3000);
  });

  it("is the same design for the same answers", () => {
    const answers: StartAnswers = { tank: { volume: litres(400) }, animals: ["softCorals", "calmFish"] };
    expect(firstDesign(answers, demoCatalogue)).toEqual(firstDesign(answers, demoCatalogue));
  });

  it("keeps what was said as it was said and lists everything else with its reason and source", () => {
    const answers: StartAnswers = {
      tank: {
        length: { value: 4, unit: "ft-in" },
        width: { value: 20, unit: "in" },
        height: { value: 22, unit: "in" },
      },
      standHeight: { value: 34, unit: "in" },
      power: { tariff: { value: 0.21, unit: "USD/kWh" } },
    };
    const { design, defaults } = promised(answers);
    expect(design.display.length).toEqual({ value: 4, unit: "ft-in" });
    expect(design.display.standHeight).toEqual({ value: 34, unit: "in" });
    expect(design.overflow.weir.length.unit).toBe("in");
    const paths = defaults.map((entry) => entry.path);
    expect(new Set(paths).size).toBe(paths.length);
    for (const said of ["/display/length", "/display/standHeight", "/power/tariff"]) expect(paths).not.toContain(said);
    for (const assumed of [
      "/display/rockShare",
      "/sump/operatingLevel",
      "/loops/0/pumps/0/ref",
      "/wishes/returnTurnover",
    ])
      expect(paths).toContain(assumed);
    for (const { source, value } of defaults) {
      expect(source.length).toBeGreaterThan(5);
      expect(value).toBeDefined();
    }
  });

  describe("of a tank that was measured in inches", () => {
    const inches = (value: number) => ({ value, unit: "in" });
    const answers: StartAnswers = { units: "us", tank: { length: inches(48), width: inches(24), height: inches(24) } };
    const madeFor = (shop?: ShopGround, said = answers) => {
      const { design, defaults } = firstDesign(said, demoCatalogue, shop);
      const { voltage, frequency, tariff, circuits } = design.power;
      const why = (path: string) => defaults.find((entry) => entry.path === path)?.why.key;
      const mains = [voltage, frequency, circuits?.[0]?.rating].map((each) => `${each?.value} ${each?.unit}`);
      return { design, tariff, mains, why: [why("/power/voltage"), why("/power/tariff")] };
    };

    it("has the sockets and the money of the shop, not those of a country of inches", () => {
      const { design, mains, tariff, why } = madeFor({
        tariff: { value: 0.27, unit: "EUR/kWh" },
        currency: "EUR",
        us: false,
      });
      expect(mains).toEqual(["230 V", "50 Hz", "16 A"]);
      expect(tariff).toEqual({ value: 0.27, unit: "EUR/kWh" });
      expect(why).toEqual(["mains", "shopTariff"]);
      expect(design.sump.height.unit).toBe("in");
    });

    it("has 230 V and euros where no shop says anything", () => {
      const { mains, tariff, why } = madeFor();
      expect(mains).toEqual(["230 V", "50 Hz", "16 A"]);
      expect(tariff.unit).toBe("EUR/kWh");
      expect(why).toEqual(["mains", "tariff"]);
    });

    it("has 120 V where the shop's own papers are in US units, and dollars where it reckons in them", () => {
      const { mains, tariff, why } = madeFor({ currency: "USD", us: true });
      expect(mains).toEqual(["120 V", "60 Hz", "15 A"]);
      expect(tariff.unit).toBe("USD/kWh");
      expect(why).toEqual(["shopMains", "tariff"]);
    });

    it("has what was answered before what the shop says", () => {
      const power = { voltage: { value: 120, unit: "V" }, tariff: { value: 0.4, unit: "CHF/kWh" } };
      const shop: ShopGround = { tariff: { value: 0.27, unit: "EUR/kWh" }, currency: "EUR" };
      const { mains, tariff, why } = madeFor(shop, { ...answers, power });
      expect(mains).toEqual(["120 V", "60 Hz", "15 A"]);
      expect(tariff).toEqual(power.tariff);
      expect(why).toEqual([undefined, undefined]);
    });
  });

  it("takes over of a shop's settings what it can reckon with", () => {
    const said = (units: Record<string, string>, tariff: { value: number; unit: string } | null = null) =>
      shopGroundOf({ currency: "EUR", tariff, units });
    expect([{ length: "in" }, { flow: "US gal/h" }, { volume: "US gal" }].map((units) => said(units).us)).toEqual([
      true,
      true,
      true,
    ]);
    expect([{}, { length: "mm" }, { length: "in", volume: "imp gal" }].map((units) => said(units).us)).toEqual([
      false,
      false,
      false,
    ]);
    expect(said({}, { value: 0.3, unit: "EUR/kWh" }).tariff).toEqual({ value: 0.3, unit: "EUR/kWh" });
    expect(said({}, { value: 0.3, unit: "EUR/h" })).not.toHaveProperty("tariff");
  });

  it("that must not be drilled, has one drain, or too small a purse, says so", () => {
    const tank = { volume: litres(300) };
    expect(promised({ tank, overflow: { glass: "keep" } }).codes).toContain("hangOn");
    expect(promised({ tank, overflow: { drains: "one" } }).codes).toContain("oneDrain");
    expect(promised({ tank, wishes: { budget: { value: 40, unit: "EUR" } } }).codes).toContain("budgetShort");
    expect(promised({ tank, wishes: { sound: { value: 20, unit: "dB(A)" } } }).codes).toContain("soundOver");
    expect(promised({ tank, animals: ["calmFish", "branchingStony"] }).codes).toContain("animalsConflict");
  });

  it("turns the display over as it is asked to: here eight to ten times an hour", () => {
    const perHour = (value: number) => ({ value, unit: "1/h" });
    const { state } = promised({
      tank: { volume: litres(300) },
      wishes: { returnTurnover: [perHour(8), perHour(10)] },
    });
    expect(state.turnover.return.value).toBeGreaterThan(8);
    expect(state.turnover.return.value).toBeLessThan(10);
  });

  it("takes a sump that is there as it is, and lowers its water rather than wet the floor", () => {
    const sump = { length: mm(450), width: mm(300), height: mm(300) };
    const { design, state, codes } = promised({ tank: { volume: litres(400) }, sump }, true);
    expect(design.sump.height).toEqual(mm(300));
    expect(toSI(design.sump.operatingLevel, "length")).toBeLessThan(0.18);
    if (!codes.includes("sumpSmall")) expect(state.sump.margin).toBeGreaterThan(0);
    expect(promised({ tank: { volume: litres(2000) }, sump }).codes).toContain("sumpSmall");
  });

  it("uses the holes that are there: as many drains as holes, pipes that fit them", () => {
    const holes = (count: number, diameter: number) =>
      promised({
        tank: { volume: litres(250) },
        overflow: { glass: "drilled", holes: { count, diameter: mm(diameter) } },
      });
    expect(holes(1, 45).design.drains).toHaveLength(1);
    expect(holes(2, 45).design.drains.map((drain) => drain.role)).toEqual(["main", "emergency"]);
    const three = holes(3, 45).design;
    expect(three.drains).toHaveLength(3);
    for (const drain of three.drains) expect(drain.run[0]).toMatchObject({ series: "pn16-32" });
  });

  it("lifts from a cellar two and a half metres down", () => {
    const { state, codes } = promised({ tank: { volume: litres(500) }, standHeight: { value: 2.9, unit: "m" } }, true);
    expect(codes).not.toContain("noPump");
    expect(state.loops[0]?.staticHead).toBeGreaterThan(2.5);
  });
});

describe("the top-off of a first design", () => {
  const litresOf = (design: Design) => 1000 * toSI(design.topOff?.reservoir ?? litres(0), "volume");

  it("lasts about a week of the evaporation that the engine reckons, and the sump holds all of it", () => {
    for (const size of [litres(60), litres(520), gallons(137), litres(3000)]) {
      const { design, defaults } = promised({ tank: { volume: size } });
      const { answers, rows } = safetySweep(design, demoCatalogue);
      const days = litresOf(design) / 1000 / answers.evaporationPerDay;
      // A week: common practice, no source. Reservoirs are whole litres, gallons or fives of them.
      expect(days).toBeGreaterThan(5.9);
      expect(days).toBeLessThan(8.1);
      const stuck = rows.find((row) => row.scenario.kind === "topOffStuckOpen");
      expect(["safe", "tight"]).toContain(stuck?.verdict);
      expect(defaults.find((entry) => entry.path === "/topOff/reservoir")).toMatchObject({
        question: "/topOff/reservoir",
        value: design.topOff?.reservoir,
        why: { key: "topOffReservoir" },
      });
    }
  });

  it("takes the long weekend's warning away, which a tank without one keeps", () => {
    const of = (kind: "automatic" | "none") => {
      const { design, codes } = promised({ tank: { volume: litres(520) }, topOff: { kind } });
      const { findings } = safetySweep(design, demoCatalogue);
      return { codes, severity: findings.find(({ code }) => code === "overTime/top-off-fails")?.severity };
    };
    expect(of("none")).toMatchObject({ severity: "warning", codes: expect.arrayContaining(["noTopOff"]) });
    const fitted = of("automatic");
    expect(fitted.severity).toBe("notice");
    expect(fitted.codes).not.toContain("noTopOff");
  });

  it("holds no more than a small sump that is there can take", () => {
    const sump = { length: mm(450), width: mm(300), height: mm(300) };
    const { design, defaults } = promised({ tank: { volume: litres(400) }, sump }, true);
    const why = defaults.find((entry) => entry.path === "/topOff/reservoir")?.why;
    expect(why?.key).toBe("topOffBySump");
    // Analytic: the glass above the running water, with the chambers at or above the operating level.
    const above = 300 - 1000 * toSI(design.sump.operatingLevel, "length") - 10;
    expect(litresOf(design)).toBeLessThanOrEqual((450 * 300 * above) / 1e6);
  });

  it("stays as it was said; one too large for the sump is told", () => {
    const sump = { length: mm(450), width: mm(300), height: mm(300) };
    const said = promised({
      tank: { volume: litres(400) },
      sump,
      topOff: { reservoir: { value: 40, unit: "L" } },
    });
    expect(said.design.topOff?.reservoir).toEqual({ value: 40, unit: "L" });
    expect(said.defaults.map((entry) => entry.path)).not.toContain("/topOff/reservoir");
    expect(said.notes).toContainEqual(
      expect.objectContaining({ code: "wet", values: expect.objectContaining({ scenario: "topOffStuckOpen" }) }),
    );
  });
});

describe("holes for bulkheads", () => {
  it("are about 35, 43, 52 and 62 mm for 25, 32, 40 and 50 mm pipe (common practice, no source)", () => {
    for (const [pipe, hole] of [
      [25, 35],
      [32, 43],
      [40, 52],
      [50, 62],
    ] as const) {
      expect(Math.abs(1000 * holeOfPipe(pipe / 1000) - hole)).toBeLessThan(1);
      expect(pipeOfHole(holeOfPipe(pipe / 1000))).toBeCloseTo(pipe / 1000, 12);
    }
  });
});
