import type { Assessment } from "@tidewright/advice";
import type { ReactNode } from "react";
import { type ScreenFormat, useFormat } from "../format/useFormat.ts";
import type { ProvenanceId } from "../provenance/provenance.ts";
import { Sourced } from "../provenance/Sourced.tsx";

interface Reading {
  readonly label: string;
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
  const readings = readingsOf(assessment, path, format);
  if (readings.length === 0) return null;
  return (
    <dl className="readings">
      {readings.map(({ label, value, of, index }) => (
        <div key={label}>
          <dt>{label}</dt>
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

function readingsOf(a: Assessment, path: string, f: ScreenFormat): Reading[] {
  const part = a.parts.findIndex((state) => state.path === path);
  if (part >= 0) {
    const state = a.parts[part]!;
    const outlet = a.outlets.find((end) => end.path === path);
    return [
      { label: "Flow", value: f(state.flow, "flow") },
      { label: "Speed", value: f(state.velocity, "velocity"), of: "partSpeed", index: part },
      { label: "Head lost", value: f(state.headLoss, "head"), of: "partLoss", index: part },
      { label: "Bore", value: f(state.diameter, "length") },
      ...(outlet === undefined ? [] : [{ label: "Jet", value: f(outlet.jetVelocity, "velocity") }]),
    ];
  }
  const pump = a.pumps.findIndex((state) => state.path === path);
  if (pump >= 0) {
    const state = a.pumps[pump]!;
    return [
      { label: "Flow", value: f(state.flow, "flow"), of: "flow", index: state.loop },
      { label: "Head", value: f(state.head, "head"), of: "head", index: state.loop },
      { label: "Place on curve", value: `${Math.round(state.placeOnCurve * 100)} %`, of: "pumpPlace", index: pump },
      { label: "Power", value: f(state.electricalPower, "power"), of: "watts" },
      { label: "Wire to water", value: `${Math.round(state.efficiency * 100)} %`, of: "efficiency", index: pump },
      { label: "Sound", value: f(state.soundLevel, "soundLevel"), of: "sound" },
      { label: "Suction head", value: f(state.npshAvailable, "head"), of: "npsh", index: pump },
      { label: "Price", value: f(state.price, "money") },
    ];
  }
  const drain = a.drains.findIndex((state) => state.path === path);
  if (drain >= 0) {
    const state = a.drains[drain]!;
    return [
      { label: "Flow", value: f(state.flow, "flow"), of: "drain", index: drain },
      { label: "Quiet up to", value: f(state.capacity.quiet, "flow"), of: "drain", index: drain },
      { label: "Practice", value: f(state.capacity.practice, "flow"), of: "drain", index: drain },
      { label: "Full siphon", value: f(state.capacity.siphon, "flow"), of: "drain", index: drain },
      { label: "Water over rim", value: f(state.submergence, "length") },
      ...(state.valveOpening === undefined
        ? []
        : [
            {
              label: state.valveSolved ? "Valve, found" : "Valve",
              value: `${Math.round(state.valveOpening * 100)} % open`,
            },
          ]),
    ];
  }
  const loop = a.loops.findIndex((state) => state.path === path);
  if (loop >= 0) {
    const state = a.loops[loop]!;
    return [
      { label: "Flow", value: f(state.flow, "flow"), of: "flow", index: loop },
      { label: "To the display", value: f(state.flowToDisplay, "flow"), of: "flow", index: loop },
      { label: "Static head", value: f(state.staticHead, "head"), of: "head", index: loop },
      { label: "Total head", value: f(state.totalHead, "head"), of: "head", index: loop },
    ];
  }
  const chamber = a.sump.chambers.find((state) => state.path === path);
  if (chamber !== undefined)
    return [
      { label: "Depth", value: f(chamber.depth, "length") },
      { label: "Volume", value: f(chamber.volume, "volume") },
    ];
  return sectionReadings(a, path, f);
}

function sectionReadings(a: Assessment, path: string, f: ScreenFormat): Reading[] {
  const circuit = a.power.circuits.findIndex((state) => state.path === path);
  if (circuit >= 0) {
    const state = a.power.circuits[circuit]!;
    return [
      { label: "Load", value: f(state.current, "current"), of: "circuit", index: circuit },
      { label: "Limit", value: f(state.limit, "current"), of: "circuit", index: circuit },
    ];
  }
  switch (path) {
    case "/display":
      return [
        { label: "Water", value: f(a.volumes.display, "volume"), of: "volume" },
        { label: "Below the rim", value: f(a.overflow.displayFreeboard, "length"), of: "weirHead" },
      ];
    case "/overflow":
      return [
        { label: "Over the weir", value: f(a.overflow.flow, "flow") },
        { label: "Head", value: f(a.overflow.weirHead, "length"), of: "weirHead" },
        { label: "Fall behind it", value: f(a.overflow.fall, "length") },
        { label: "Box below its rim", value: f(a.overflow.boxFreeboard, "length"), of: "weirHead" },
      ];
    case "/sump":
      return [
        { label: "Water", value: f(a.volumes.sump, "volume"), of: "volume" },
        { label: "Falls back", value: f(a.sump.drainDown.total, "volume"), of: "powerCut" },
        { label: "Room", value: f(a.sump.room, "volume"), of: "powerCut" },
        { label: "Highest safe depth", value: f(a.sump.safeOperatingLevel, "length"), of: "operatingLevel" },
      ];
    case "/power":
      return [
        { label: "Power", value: f(a.power.watts, "power"), of: "watts" },
        { label: "Energy a year", value: f(a.power.annualEnergy, "energy"), of: "annualCost" },
        { label: "Cost a year", value: f(a.power.annualCost, "money"), of: "annualCost" },
      ];
    case "/wishes":
      return [
        { label: "Return turnover", value: f(a.turnover.return.value, "turnover"), of: "turnover" },
        { label: "All movement", value: f(a.turnover.total.value, "turnover"), of: "totalTurnover" },
        { label: "Sound", value: f(a.sound.level, "soundLevel"), of: "sound" },
        { label: "To buy", value: f(a.cost.purchase, "money"), of: "price" },
      ];
    case "/water":
      return [{ label: "Density", value: f(a.water.density, "density") }];
    default:
      return [];
  }
}
