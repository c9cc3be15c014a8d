import {
  type DrainLine,
  darcyFrictionFactor,
  drainPractice,
  froudeFlow,
  rimWeirFlow,
  seaWater,
  siphonFlow,
  standpipeFlow,
  ventedStackFlow,
} from "@tidewright/engine";
import { checksOf } from "./check.ts";

const gallonPerHour = 3.785411784e-3 / 3600;
const water = seaWater(35, 25);
const drop = 0.9144;

/** Average Sch 40 bores; quiet, vented, rule of the trade, siphon with elbows, siphon without [US gal/h]. */
const table = [
  ["1 in", 0.02614, 78, 231, 800, 1049, 1468],
  ["1 1/2 in", 0.04039, 230, 737, 1500, 2752, 3754],
  ["2 in", 0.05199, 432, 1445, 2050, 4760, 6398],
] as const;

function line(bore: number, length: number, lossCoefficient: number): DrainLine {
  const segment = { length, diameter: bore, roughness: 1.5e-6, lossCoefficient, laminarLoss: 0 };
  return { bore, inletDiameter: bore, segments: [segment], valveLoss: 0, inletElevation: drop, outletElevation: 0 };
}

/** Crane's standard elbow, 30 fT, with fT as printed for the size. */
const printedFactor = { "1 in": 0.0222, "1 1/2 in": 0.0202, "2 in": 0.019 } as const;
const straight = (bore: number) => siphonFlow(line(bore, drop, 1.5), drop, water) / gallonPerHour;
const bent = (size: keyof typeof printedFactor, bore: number) =>
  siphonFlow(line(bore, 1.8, 1.5 + 2 * 30 * printedFactor[size]), drop, water) / gallonPerHour;

const plainRim: DrainLine = {
  bore: 0.0525,
  inletDiameter: 0.0525,
  segments: [],
  valveLoss: 0,
  inletElevation: 0,
  outletElevation: -1,
};

/** Gravity drains: rims, siphons, quiet flow, and where the trade's rules of thumb lie. */
export const gravityDrains = [
  ...checksOf(
    {
      source: "USBR, Design of Small Dams, shaft spillway: crest and throat control, evaluated apart from the project",
      tag: "other program",
      tolerance: 0.002,
      why: "three printed figures; reality is within 20 %, because water swirls",
    },
    [
      ["flow over a 52.5 mm rim under 10 mm, crest control, m3/s", 2.93e-4, () => rimWeirFlow(0.0525, 0.01)],
      ["flow into the rim under 30 mm, throat control, m3/s", 9.96e-4, () => standpipeFlow(plainRim, 0.03, water).flow],
    ],
  ),
  ...checksOf(
    {
      source: "self-venting limit Fr = V / sqrt(g D) = 0.3, P. D. Hills 1983; number from memory",
      tag: "analytic",
      tolerance: 0.008,
      why: "whole US gal/h",
    },
    table.map(
      ([size, bore, quiet]) =>
        [`quiet flow in ${size} pipe, US gal/h`, quiet, () => froudeFlow(0.3, bore) / gallonPerHour] as const,
    ),
  ),
  ...checksOf(
    {
      source: "energy equation V^2/2g (1.5 + f L/D) = 0.9144 m, straight pipe, solved apart from the project",
      tag: "other program",
      tolerance: 0.003,
      why: "whole US gal/h, and viscosity to 0.3 %",
    },
    table.map(
      ([size, bore, , , , , full]) =>
        [`siphon in straight ${size} pipe, US gal/h`, full, () => straight(bore)] as const,
    ),
  ),
  ...checksOf(
    {
      source: "the same with 1.8 m of pipe and two elbows of Crane TP-410, K = 30 fT, solved apart from the project",
      tag: "other program",
      tolerance: 0.005,
      why: "fT is printed with three decimals",
    },
    table.map(
      ([size, bore, , , , full]) =>
        [`siphon in ${size} pipe with two elbows, US gal/h`, full, () => bent(size, bore)] as const,
    ),
  ),
  ...checksOf(
    {
      source: "energy equation without friction, Q = A sqrt(2 g H / K)",
      tag: "analytic",
      tolerance: 1e-10,
      why: "exact but for the last step of the iteration",
    },
    [
      [
        "siphon of losses alone, K 4, H 0.9144 m, 40 mm, m3/s",
        (Math.PI / 4) * 0.04 ** 2 * Math.sqrt((2 * 9.80665 * drop) / 4),
        () => siphonFlow(line(0.04, 0, 4), drop, water),
      ],
      [
        "head that the found siphon flow needs over the head it has, 26.14 mm",
        1,
        () => {
          const bore = 0.02614;
          const speed = siphonFlow(line(bore, drop, 1.5), drop, water) / ((Math.PI / 4) * bore ** 2);
          const f = darcyFrictionFactor((speed * bore) / water.kinematicViscosity, 1.5e-6 / bore);
          return ((1.5 + (f * drop) / bore) * speed ** 2) / (2 * 9.80665) / drop;
        },
      ],
    ],
  ),
  ...checksOf(
    {
      source: "common practice, no source: a 1 in drain takes 800, 1 1/2 in 1500, 2 in a little over 2000 US gal/h",
      tag: "common practice",
      tolerance: 1e-6,
      why: "kept as the trade says it",
    },
    table.map(
      ([size, bore, , , rule]) =>
        [`rule of the trade for ${size}, US gal/h`, rule, () => drainPractice(bore).flow / gallonPerHour] as const,
    ),
  ),
  ...checksOf(
    {
      source: "common practice over Wyly and Eaton's vented stack, 7/24 full: every rule exceeds the quiet figure",
      tag: "common practice",
      tolerance: 0.03,
      why: "two printed figures of the ratio",
    },
    table.map(
      ([size, bore, , vented, rule]) =>
        [
          `rule over vented stack, ${size}`,
          rule / vented,
          () => drainPractice(bore).flow / ventedStackFlow(bore),
        ] as const,
    ),
  ),
  ...checksOf(
    {
      source: "common practice over the full siphon with two elbows: every rule stays below it",
      tag: "common practice",
      tolerance: 0.01,
      why: "as the siphon's own figure",
    },
    table.map(
      ([size, bore, , , rule, siphon]) =>
        [
          `rule over full siphon, ${size}`,
          rule / siphon,
          () => drainPractice(bore).flow / gallonPerHour / bent(size, bore),
        ] as const,
    ),
  ),
];
