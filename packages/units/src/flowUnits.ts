import { imperialGallonLitres, usGallonLitres } from "./exactFactors.ts";
import { linearUnit, type UnitDefinition } from "./unitDefinition.ts";

interface Volume {
  readonly symbol: string;
  readonly name: string;
  /** Volume [m3] = count / over. */
  readonly times: number;
  readonly over: number;
  readonly aliases: readonly string[];
  /** Letters before "h", "m" in shop shorthand: "g" gives gph and gpm. */
  readonly shorthand: readonly string[];
}

const volumes: readonly Volume[] = [
  {
    symbol: "L",
    name: "litres",
    times: 1,
    over: 1000,
    aliases: ["l", "litre", "litres", "liter", "liters", "ltr"],
    shorthand: ["lp"],
  },
  { symbol: "m3", name: "cubic metres", times: 1, over: 1, aliases: ["cbm"], shorthand: ["cmp"] },
  {
    symbol: "US gal",
    name: "US gallons",
    times: usGallonLitres,
    over: 1000,
    aliases: ["gal", "gallon", "gallons", "US gallon", "US gallons"],
    shorthand: ["gp", "USgp"],
  },
  {
    symbol: "imp gal",
    name: "imperial gallons",
    times: imperialGallonLitres,
    over: 1000,
    aliases: ["imperial gallon", "imperial gallons", "UK gal", "UK gallon", "UK gallons"],
    shorthand: ["igp", "impgp"],
  },
];

const times = [
  { symbol: "h", name: "hour", seconds: 3600, aliases: ["hr", "hour"], letter: "h" },
  { symbol: "min", name: "minute", seconds: 60, aliases: ["minute"], letter: "m" },
  { symbol: "s", name: "second", seconds: 1, aliases: ["sec", "second"], letter: "s" },
  { symbol: "d", name: "day", seconds: 86_400, aliases: ["day"], letter: "d" },
] as const;

/** Flows whose unit is any volume per any time; the shop's own (L/h, US gal/h) come first. */
const perTime: readonly UnitDefinition[] = volumes.flatMap((volume) =>
  times.map((time) => {
    const long = [volume.symbol, ...volume.aliases].flatMap((v) =>
      [time.symbol, ...time.aliases].map((t) => `${v}/${t}`),
    );
    const symbol = `${volume.symbol}/${time.symbol}`;
    const note = volume.symbol === "US gal" ? " (plain gal, gph and gpm are taken as US)" : "";
    return linearUnit(symbol, `${volume.name} per ${time.name}${note}`, volume.times, volume.over * time.seconds, {
      aliases: [
        ...long.filter((alias) => alias !== symbol),
        ...volume.shorthand.map((shorthand) => `${shorthand}${time.letter}`),
      ],
      display: symbol === "L/h" ? { decimals: 0 } : volume.symbol.endsWith("gal") ? { decimals: 1 } : {},
    });
  }),
);

/** Flows in cubic metres per second. */
export const flowUnits: readonly UnitDefinition[] = [
  ...perTime,
  linearUnit("ft3/s", "cubic feet per second", 28_316_846_592, 1e12, { aliases: ["cfs", "cu ft/s"] }),
];

/** Velocities in metres per second. */
export const velocityUnits: readonly UnitDefinition[] = [
  linearUnit("m/s", "metres per second", 1, 1, {
    aliases: ["m/sec", "metres/second", "meters/second"],
    display: { decimals: 3 },
  }),
  linearUnit("cm/s", "centimetres per second", 1, 100, { aliases: ["cm/sec"], display: { decimals: 1 } }),
  linearUnit("mm/s", "millimetres per second", 1, 1000, { aliases: ["mm/sec"], display: { decimals: 1 } }),
  linearUnit("ft/s", "feet per second", 3048, 10_000, {
    aliases: ["ft/sec", "fps", "feet/second"],
    display: { decimals: 2 },
  }),
  linearUnit("in/s", "inches per second", 254, 10_000, { aliases: ["in/sec", "ips"], display: { decimals: 2 } }),
];

/** Kinematic viscosities in square metres per second. */
export const kinematicViscosityUnits: readonly UnitDefinition[] = [
  linearUnit("m2/s", "square metres per second", 1, 1, { display: { significant: 4 } }),
  linearUnit("mm2/s", "square millimetres per second", 1, 1_000_000, { display: { significant: 4 } }),
  linearUnit("cSt", "centistokes", 1, 1_000_000, {
    aliases: ["centistoke", "centistokes"],
    display: { significant: 4 },
  }),
  linearUnit("ft2/s", "square feet per second", 9_290_304, 100_000_000, { display: { significant: 4 } }),
];

/** Turnover in volumes of the tank per hour: the trade never uses another time. */
export const turnoverUnits: readonly UnitDefinition[] = [
  linearUnit("1/h", "tank volumes per hour", 1, 1, {
    aliases: ["/h", "x/h", "×/h", "1/hr", "/hr", "x/hr", "1/hour", "/hour", "x/hour", "volumes/h", "volumes/hour"],
    label: "/h",
    display: { decimals: 1 },
  }),
];
