import { nextSizeUp } from "@tidewright/catalogue";
import type { AnimalGroup, Design, Part } from "@tidewright/design";
import { fromSI, type Quantity, toSI } from "@tidewright/units";

/** What a customer can say at the counter. */
export interface CounterAnswers {
  readonly name: string;
  readonly length: Quantity;
  readonly width: Quantity;
  readonly height: Quantity;
  /** Tank floor above the room's floor. */
  readonly standHeight: Quantity;
  /** Pipe size of the main drain, by catalogue id. */
  readonly drainSeries: string;
  /** One vented standpipe, or siphon with open channel and dry emergency. */
  readonly drains: "one" | "three";
  readonly animals: AnimalGroup;
  readonly mains: "230 V, 50 Hz" | "120 V, 60 Hz";
  readonly tariff: Quantity;
}

/** What is usual for the animals, in display volumes an hour: common practice, no source. */
const usualMovement: Readonly<Record<AnimalGroup, readonly [number, number]>> = {
  fish: [8, 15],
  calmFish: [5, 10],
  softCorals: [10, 15],
  largePolypStony: [15, 17],
  branchingStony: [20, 30],
  mixedReef: [15, 25],
};
/** Through the sump; common practice, no source. */
const usualReturn: readonly [number, number] = [5, 10];

/** Returns a whole design from the few things said at the counter; every assumption stands in it and can be changed.
 *  answers tank, stand, drain size, animals   -> Design without a chosen pump; lengths in the unit they were said in
 *  Proportions of box, sump and line are common practice, no source. */
export function counterDesign(answers: CounterAnswers): Design {
  const { unit } = answers.length;
  const si = (quantity: Quantity) => toSI(quantity, "length");
  const whole = unit === "mm" || unit === "ft-in" ? 1 : 100;
  /** A length in the customer's own unit, rounded as one measures. */
  const at = (metres: number): Quantity => {
    const rounded = Math.round(metres * 1000) / 1000;
    if (unit === "ft-in") return { value: Math.round(fromSI(rounded, "in", "length") * 4) / 4, unit: "in" };
    return { value: Math.round(fromSI(rounded, unit, "length") * whole) / whole, unit };
  };
  const length = si(answers.length);
  const width = si(answers.width);
  const height = si(answers.height);
  const stand = si(answers.standHeight);
  const boxLength = Math.min(0.35, length * 0.3);
  const boxWidth = Math.min(0.15, width * 0.3);
  const crest = height - Math.min(0.04, height * 0.08);
  const sumpHeight = Math.min(0.4, Math.max(0.25, stand * 0.5));
  const sumpLength = Math.min(length * 0.75, 1.4);
  const sumpWidth = Math.min(width * 0.8, 0.5);
  const operating = sumpHeight * 0.45;
  const emergencySeries = nextSizeUp(answers.drainSeries)?.id ?? answers.drainSeries;

  /** A line from the box's floor down to the drain chamber. */
  const drainRun = (series: string, inlet: number, valve: boolean): Part[] => [
    { kind: "pipe", series, length: at(inlet), rise: at(-inlet) },
    { kind: "fitting", fitting: "bulkhead" },
    { kind: "fitting", fitting: "union" },
    ...(valve ? ([{ kind: "valve", valve: "gate", opening: 0.5 }] satisfies Part[]) : []),
    { kind: "pipe", series, length: at(stand - sumpHeight * 0.6), rise: at(-(stand - sumpHeight * 0.6)) },
    { kind: "fitting", fitting: "elbow45", count: 2 },
    { kind: "outlet", to: "sump.drain", depth: at(0.025) },
  ];
  const elevations = { low: crest * 0.75, middle: crest - 0.06, high: crest - 0.025 };
  const three: Design["drains"] = [
    {
      name: "siphon",
      role: "main",
      kind: "throttledSiphon",
      share: 0.85,
      inlet: { elevation: at(elevations.low) },
      run: drainRun(answers.drainSeries, elevations.low, true),
    },
    {
      name: "open channel",
      role: "secondary",
      kind: "openChannel",
      inlet: { elevation: at(elevations.middle) },
      run: drainRun(answers.drainSeries, elevations.middle, false),
    },
    {
      name: "emergency",
      role: "emergency",
      kind: "dryStandpipe",
      inlet: { elevation: at(elevations.high) },
      run: drainRun(emergencySeries, elevations.high, false),
    },
  ];
  const one: Design["drains"] = [
    {
      name: "drain",
      role: "main",
      kind: "ventedStandpipe",
      inlet: { elevation: at(elevations.middle) },
      run: drainRun(answers.drainSeries, elevations.middle, false),
    },
  ];
  // From the pump on the sump's floor up behind the tank and over its rim.
  const rise = stand + height + 0.03 - 0.1;
  const us = answers.mains === "120 V, 60 Hz";
  const movement = usualMovement[answers.animals];
  const perHour = (value: number): Quantity => ({ value, unit: "1/h" });

  return {
    tidewright: 1,
    name: answers.name.trim() || "At the counter",
    notes: "Begun at the counter: overflow, sump and lines are usual proportions and wait for the measured ones.",
    water: {
      salinity: { value: 35, unit: "ppt" },
      temperature: us ? { value: 78, unit: "F" } : { value: 25.5, unit: "C" },
    },
    display: {
      length: answers.length,
      width: answers.width,
      height: answers.height,
      standHeight: answers.standHeight,
      rockShare: 0.12,
      zones: [{ name: "whole tank", animals: answers.animals, share: 1 }],
    },
    overflow: {
      kind: "internalBox",
      weir: {
        length: at(boxLength),
        crest: at(crest),
        toothOpenShare: 0.6,
        toothHeight: at(Math.min(0.025, (height - crest) * 0.7)),
      },
      box: { length: at(boxLength), width: at(boxWidth), floor: at(0), rim: answers.height },
    },
    drains: answers.drains === "three" ? three : one,
    sump: {
      floor: at(0.02),
      height: at(sumpHeight),
      chambers: [
        {
          id: "drain",
          name: "drain",
          length: at(sumpLength * 0.3),
          width: at(sumpWidth),
          baffle: at(sumpHeight * 0.62),
        },
        {
          id: "skimmer",
          name: "skimmer",
          length: at(sumpLength * 0.4),
          width: at(sumpWidth),
          baffle: at(sumpHeight * 0.55),
        },
        { id: "return", name: "return", length: at(sumpLength * 0.3), width: at(sumpWidth) },
      ],
      operatingLevel: at(operating),
    },
    loops: [
      {
        name: "return",
        purpose: "return",
        from: { place: "sump.return", depth: at(operating * 0.6) },
        pumps: [{ placed: "inSump", speed: 1 }],
        run: [
          { kind: "pipe", series: answers.drainSeries, length: at(rise + 0.3), rise: at(rise) },
          { kind: "fitting", fitting: "union" },
          { kind: "fitting", fitting: "elbow90", count: 2 },
          { kind: "pipe", series: answers.drainSeries, length: at(0.25), rise: at(-0.06) },
          { kind: "outlet", to: "display", depth: at(0.03), siphonBreak: at(0.015) },
        ],
      },
    ],
    power: {
      voltage: { value: us ? 120 : 230, unit: "V" },
      frequency: { value: us ? 60 : 50, unit: "Hz" },
      tariff: answers.tariff,
      circuits: [{ name: "stand", rating: { value: us ? 15 : 16, unit: "A" }, otherLoad: { value: 300, unit: "W" } }],
    },
    wishes: {
      returnTurnover: [perHour(usualReturn[0]), perHour(usualReturn[1])],
      totalTurnover: [perHour(movement[0]), perHour(movement[1])],
      horizon: { value: 5, unit: "a" },
    },
  };
}
