import type { Assessment } from "@tidewright/advice";
import type { MessageKey, Words } from "@tidewright/words";
import type { ReactNode } from "react";
import { type ScreenFormat, useFormat } from "../format/useFormat.ts";
import type { ProvenanceId } from "../provenance/provenance.ts";
import { Sourced } from "../provenance/Sourced.tsx";
import { useWords } from "../words/useWords.ts";

interface Reading {
  readonly label: MessageKey;
  readonly value: string;
  readonly of?: ProvenanceId;
  readonly index?: number;
}

/** What the solved system says about one part, each number with its origin. */
export function PartReadings({
  assessment,
  path,
}: {
  readonly assessment: Assessment;
  readonly path: string;
}): ReactNode {
  const format = useFormat();
  const { say } = useWords();
  const readings = readingsOf(assessment, path, format, say);
  if (readings.length === 0) return null;
  return (
    <dl className="readings">
      {readings.map(({ label, value, of, index }) => (
        <div key={label}>
          <dt>{say(label)}</dt>
          <dd>
            {of === undefined ? (
              value
            ) : (
              <Sourced of={of} index={index ?? 0}>
                {value}
              </Sourced>
            )}
          </dd>
        </div>
      ))}
    </dl>
  );
}

function readingsOf(a: Assessment, path: string, f: ScreenFormat, say: Words["say"]): Reading[] {
  const part = a.parts.findIndex((state) => state.path === path);
  if (part >= 0) {
    const state = a.parts[part]!;
    const outlet = a.outlets.find((end) => end.path === path);
    return [
      { label: "bench.figure.flow", value: f(state.flow, "flow") },
      { label: "bench.readings.speed", value: f(state.velocity, "velocity"), of: "partSpeed", index: part },
      { label: "bench.readings.headLost", value: f(state.headLoss, "head"), of: "partLoss", index: part },
      { label: "bench.readings.bore", value: f(state.diameter, "length") },
      ...(outlet === undefined
        ? []
        : [{ label: "bench.readings.jet" as const, value: f(outlet.jetVelocity, "velocity") }]),
    ];
  }
  const pump = a.pumps.findIndex((state) => state.path === path);
  if (pump >= 0) {
    const state = a.pumps[pump]!;
    return [
      { label: "bench.figure.flow", value: f(state.flow, "flow"), of: "flow", index: state.loop },
      { label: "bench.readings.head", value: f(state.head, "head"), of: "head", index: state.loop },
      { label: "bench.readings.placeOnCurve", value: f.perCent(state.placeOnCurve), of: "pumpPlace", index: pump },
      { label: "bench.figure.power", value: f(state.electricalPower, "power"), of: "watts" },
      { label: "bench.readings.wireToWater", value: f.perCent(state.efficiency), of: "efficiency", index: pump },
      { label: "bench.effect.sound", value: f(state.soundLevel, "soundLevel"), of: "sound" },
      { label: "bench.readings.suctionHead", value: f(state.npshAvailable, "head"), of: "npsh", index: pump },
      { label: "bench.readings.price", value: f(state.price, "money") },
    ];
  }
  const drain = a.drains.findIndex((state) => state.path === path);
  if (drain >= 0) {
    const state = a.drains[drain]!;
    return [
      { label: "bench.figure.flow", value: f(state.flow, "flow"), of: "drain", index: drain },
      { label: "bench.readings.quietUpTo", value: f(state.capacity.quiet, "flow"), of: "drain", index: drain },
      { label: "bench.readings.practice", value: f(state.capacity.practice, "flow"), of: "drain", index: drain },
      { label: "bench.readings.fullSiphon", value: f(state.capacity.siphon, "flow"), of: "drain", index: drain },
      { label: "bench.readings.waterOverRim", value: f(state.submergence, "length") },
      ...(state.valveOpening === undefined
        ? []
        : [
            {
              label: state.valveSolved ? ("bench.readings.valveFound" as const) : ("bench.readings.valve" as const),
              value: say("bench.readings.open", { share: f.perCent(state.valveOpening) }),
            },
          ]),
    ];
  }
  const loop = a.loops.findIndex((state) => state.path === path);
  if (loop >= 0) {
    const state = a.loops[loop]!;
    return [
      { label: "bench.figure.flow", value: f(state.flow, "flow"), of: "flow", index: loop },
      { label: "bench.readings.toDisplay", value: f(state.flowToDisplay, "flow"), of: "flow", index: loop },
      { label: "bench.readings.staticHead", value: f(state.staticHead, "head"), of: "head", index: loop },
      { label: "bench.effect.totalHead", value: f(state.totalHead, "head"), of: "head", index: loop },
    ];
  }
  const chamber = a.sump.chambers.find((state) => state.path === path);
  if (chamber !== undefined)
    return [
      { label: "bench.readings.depth", value: f(chamber.depth, "length") },
      { label: "bench.readings.volume", value: f(chamber.volume, "volume") },
    ];
  return sectionReadings(a, path, f);
}

function sectionReadings(a: Assessment, path: string, f: ScreenFormat): Reading[] {
  const circuit = a.power.circuits.findIndex((state) => state.path === path);
  if (circuit >= 0) {
    const state = a.power.circuits[circuit]!;
    return [
      { label: "bench.readings.load", value: f(state.current, "current"), of: "circuit", index: circuit },
      { label: "bench.readings.limit", value: f(state.limit, "current"), of: "circuit", index: circuit },
    ];
  }
  switch (path) {
    case "/display":
      return [
        { label: "bench.readings.water", value: f(a.volumes.display, "volume"), of: "volume" },
        { label: "bench.readings.belowRim", value: f(a.overflow.displayFreeboard, "length"), of: "weirHead" },
      ];
    case "/overflow":
      return [
        { label: "bench.readings.overWeir", value: f(a.overflow.flow, "flow") },
        { label: "bench.readings.weirHead", value: f(a.overflow.weirHead, "length"), of: "weirHead" },
        { label: "bench.readings.fallBehind", value: f(a.overflow.fall, "length") },
        { label: "bench.readings.boxBelowRim", value: f(a.overflow.boxFreeboard, "length"), of: "weirHead" },
        ...(a.overflow.siphon === undefined
          ? []
          : ([
              { label: "bench.readings.siphonHead", value: f(a.overflow.siphon.head, "length") },
              { label: "bench.readings.siphonSpeed", value: f(a.overflow.siphon.velocity, "velocity") },
              { label: "bench.readings.crestVacuum", value: f(a.overflow.siphon.crestVacuum, "length") },
            ] as const)),
      ];
    case "/sump":
      return [
        { label: "bench.readings.water", value: f(a.volumes.sump, "volume"), of: "volume" },
        { label: "bench.readings.fallsBack", value: f(a.sump.drainDown.total, "volume"), of: "powerCut" },
        { label: "bench.readings.room", value: f(a.sump.room, "volume"), of: "powerCut" },
        { label: "bench.readings.safeDepth", value: f(a.sump.safeOperatingLevel, "length"), of: "operatingLevel" },
      ];
    case "/power":
      return [
        { label: "bench.figure.power", value: f(a.power.watts, "power"), of: "watts" },
        { label: "bench.cost.energyAYear", value: f(a.power.annualEnergy, "energy"), of: "annualCost" },
        { label: "bench.cost.costAYear", value: f.sum(a.power.annualCost, a.power.tariffCurrency), of: "annualCost" },
      ];
    case "/wishes":
      return [
        { label: "bench.readings.returnTurnover", value: f(a.turnover.return.value, "turnover"), of: "turnover" },
        { label: "bench.readings.movement", value: f(a.turnover.total.value, "turnover"), of: "totalTurnover" },
        { label: "bench.effect.sound", value: f(a.sound.level, "soundLevel"), of: "sound" },
        { label: "bench.cost.toBuy", value: f(a.cost.purchase, "money"), of: "price" },
      ];
    case "/water":
      return [{ label: "bench.readings.density", value: f(a.water.density, "density") }];
    default:
      return [];
  }
}
