import { inventedSource, type Source } from "../source.ts";

/** What a device does to the water. */
export type DeviceKind = "chiller" | "uv" | "reactor" | "skimmerFeed" | "heater" | "filter" | "mediaCanister";

/** One device with a pressure drop. `lossPoints`: flow [m3/s] against head loss [m], rising from nothing.
 *  `flowRange` [m3/s]: what it needs to work. `watts` [W] electrical; `coolingWatts` [W] heat a chiller takes out.
 *  `connection` [m] bore of its ports. `price` [EUR]. */
export interface DeviceRow {
  id: string;
  kind: DeviceKind;
  label: string;
  maker: string;
  lossPoints: { flow: number; headLoss: number }[];
  flowRange: [number, number];
  watts: number;
  coolingWatts?: number;
  connection: number;
  price: number;
  source: Source;
}

/** Table units: flows in L/h, head loss in m at the largest flow, bore in mm. `exponent` of h ~ Q^n: near 2 for pipe-like
 *  devices, lower for packed media, where friction is partly laminar. */
interface DeviceLine {
  id: string;
  kind: DeviceKind;
  label: string;
  maker: string;
  least: number;
  most: number;
  headAtMost: number;
  exponent: number;
  watts: number;
  cooling?: number;
  bore: number;
  price: number;
}

// biome-ignore format: one device a line reads as the table it is
const lines: DeviceLine[] = [
  { id: "chiller-300", kind: "chiller", label: "Chiller 300 W", maker: "Brayne", least: 400, most: 1500, headAtMost: 0.9, exponent: 1.85, watts: 150, cooling: 300, bore: 16, price: 420 },
  { id: "chiller-600", kind: "chiller", label: "Chiller 600 W", maker: "Brayne", least: 800, most: 2500, headAtMost: 1.1, exponent: 1.85, watts: 260, cooling: 600, bore: 20, price: 590 },
  { id: "chiller-1200", kind: "chiller", label: "Chiller 1200 W", maker: "Brayne", least: 1500, most: 4500, headAtMost: 1.3, exponent: 1.85, watts: 480, cooling: 1200, bore: 25, price: 960 },
  { id: "chiller-2500", kind: "chiller", label: "Chiller 2500 W", maker: "Ostwick", least: 3000, most: 9000, headAtMost: 1.6, exponent: 1.85, watts: 930, cooling: 2500, bore: 40, price: 1980 },
  { id: "uv-18", kind: "uv", label: "UV unit 18 W", maker: "Tarnhelm", least: 150, most: 1200, headAtMost: 0.35, exponent: 1.9, watts: 20, bore: 20, price: 135 },
  { id: "uv-36", kind: "uv", label: "UV unit 36 W", maker: "Tarnhelm", least: 300, most: 2200, headAtMost: 0.45, exponent: 1.9, watts: 40, bore: 25, price: 210 },
  { id: "uv-55", kind: "uv", label: "UV unit 55 W", maker: "Tarnhelm", least: 500, most: 3500, headAtMost: 0.5, exponent: 1.9, watts: 60, bore: 32, price: 295 },
  { id: "uv-110", kind: "uv", label: "UV unit 110 W", maker: "Calder Fold", least: 1000, most: 7000, headAtMost: 0.6, exponent: 1.9, watts: 120, bore: 40, price: 520 },
  { id: "reactor-1", kind: "reactor", label: "Fluidised reactor 1 L", maker: "Ferrow", least: 60, most: 400, headAtMost: 0.4, exponent: 1.4, watts: 0, bore: 12, price: 58 },
  { id: "reactor-2", kind: "reactor", label: "Fluidised reactor 2 L", maker: "Ferrow", least: 120, most: 800, headAtMost: 0.5, exponent: 1.4, watts: 0, bore: 16, price: 79 },
  { id: "reactor-5", kind: "reactor", label: "Fluidised reactor 5 L", maker: "Ferrow", least: 300, most: 1800, headAtMost: 0.6, exponent: 1.4, watts: 0, bore: 20, price: 149 },
  { id: "skimmer-feed-1", kind: "skimmerFeed", label: "Skimmer feed 1000 L/h", maker: "Ostwick", least: 400, most: 1400, headAtMost: 0.25, exponent: 2, watts: 0, bore: 20, price: 24 },
  { id: "skimmer-feed-3", kind: "skimmerFeed", label: "Skimmer feed 3000 L/h", maker: "Ostwick", least: 1200, most: 4200, headAtMost: 0.3, exponent: 2, watts: 0, bore: 32, price: 39 },
  { id: "canister-3", kind: "mediaCanister", label: "Media canister 3 L", maker: "Calder Fold", least: 200, most: 1200, headAtMost: 0.7, exponent: 1.25, watts: 0, bore: 16, price: 88 },
  { id: "canister-8", kind: "mediaCanister", label: "Media canister 8 L", maker: "Calder Fold", least: 500, most: 2600, headAtMost: 0.8, exponent: 1.25, watts: 0, bore: 25, price: 142 },
  { id: "heater-300", kind: "heater", label: "In-line heater 300 W", maker: "Brayne", least: 200, most: 2000, headAtMost: 0.2, exponent: 1.95, watts: 300, bore: 20, price: 74 },
  { id: "heater-1000", kind: "heater", label: "In-line heater 1000 W", maker: "Brayne", least: 800, most: 6000, headAtMost: 0.3, exponent: 1.95, watts: 1000, bore: 32, price: 168 },
  { id: "filter-50", kind: "filter", label: "Pressure filter, 50 um bag", maker: "Ostwick", least: 500, most: 4000, headAtMost: 0.9, exponent: 1.3, watts: 0, bore: 32, price: 119 },
];

const litrePerHour = 1 / 3_600_000;

function toRow(line: DeviceLine): DeviceRow {
  const lossPoints = [0, 0.25, 0.5, 0.75, 1].map((share) => ({
    flow: share * line.most * litrePerHour,
    headLoss: Math.round(line.headAtMost * share ** line.exponent * 1000) / 1000,
  }));
  return {
    id: line.id,
    kind: line.kind,
    label: line.label,
    maker: line.maker,
    lossPoints,
    flowRange: [line.least * litrePerHour, line.most * litrePerHour],
    watts: line.watts,
    ...(line.cooling === undefined ? {} : { coolingWatts: line.cooling }),
    connection: line.bore / 1000,
    price: line.price,
    source: inventedSource,
  };
}

/** Devices of the demonstration catalogue: flows in m3/s, losses in m, power in W, ports in m, prices in EUR.
 *  Result: readonly array of DeviceRow.
 *  Findings: none. Throws: never.
 *  Valid: loss points from no flow to the largest stated flow; none is measured.
 *  Source: invented; shapes follow h ~ Q^2 for open passages and lower powers for packed media (Ergun's two terms).
 *  Example: demoDevices.find((device) => device.id === "uv-36").watts  ->  40                                  */
export const demoDevices: readonly DeviceRow[] = lines.map(toRow);
