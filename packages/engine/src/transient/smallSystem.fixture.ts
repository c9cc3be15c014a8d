import { pumpAtSpeed, pumpCurve } from "../pumps/index.ts";
import type { TransientModel } from "./model.ts";

const curves = [
  {
    speedRatio: 1,
    curve: pumpCurve([
      { flow: 0, head: 3 },
      { flow: 0.0007, head: 2.2 },
      { flow: 0.0014, head: 0.2 },
    ]),
  },
];

/** Water that a full pipe of the small system's bores holds [m3 per m]. */
const section = (bore: number) => (Math.PI / 4) * bore ** 2;

/** A small made-up system for tests: display, box with siphon, open channel and dry standpipe, two sump chambers, one return. */
export function smallSystem(change: Partial<TransientModel> = {}): TransientModel {
  const line = (bore: number, inlet: number, valveLoss: number) => ({
    bore,
    inletDiameter: bore,
    segments: [{ length: 1.5, diameter: bore, roughness: 1.5e-6, lossCoefficient: 2.7, laminarLoss: 0 }],
    valveLoss,
    inletElevation: inlet,
    outletElevation: 0.3,
  });
  return {
    water: { kinematicViscosity: 9.4e-7 },
    vessels: [
      { id: "display", floor: 0.9, area: 0.8, rim: 1.5, rimLength: 4.2, startLevel: 1.461 },
      { id: "box", floor: 1.1, area: 0.04, rim: 1.49, rimLength: 1, spillsInto: 0, startLevel: 1.36 },
      { id: "first", floor: 0.05, area: 0.12, rim: 0.45, rimLength: 1.5, startLevel: 0.27 },
      { id: "return", floor: 0.05, area: 0.15, rim: 0.45, rimLength: 1.6, startLevel: 0.25 },
    ],
    weirs: [
      {
        id: "weir",
        from: 0,
        to: 1,
        weir: { length: 0.35, toothOpenShare: 0.6, toothHeight: 0.02, crestHeight: 0.55 },
        crest: 1.45,
      },
      {
        id: "baffle",
        from: 2,
        to: 3,
        weir: { length: 0.4, toothOpenShare: 1, toothHeight: 0, crestHeight: 0.2 },
        crest: 0.25,
      },
    ],
    drains: [
      {
        id: "siphon",
        from: 1,
        to: 2,
        kind: "throttledSiphon",
        line: line(0.034, 1.33, 60),
        endElevation: 0.2,
        content: section(0.034) * 1.2,
        primed: true,
      },
      {
        id: "channel",
        from: 1,
        to: 2,
        kind: "openChannel",
        line: line(0.034, 1.355, 0),
        endElevation: 0.2,
        content: section(0.034) * 1.2,
        primed: false,
      },
      {
        id: "dry",
        from: 1,
        to: 2,
        kind: "dryStandpipe",
        line: line(0.042, 1.42, 0),
        endElevation: 0.2,
        content: section(0.042) * 1.2,
        primed: false,
      },
    ],
    circuits: [
      {
        id: "return",
        network: {
          liquid: { density: 1023, kinematicViscosity: 9.4e-7 },
          nodes: [
            { id: "source", kind: "fixedHead", head: 0 },
            { id: "discharge", kind: "junction", elevation: 0.05 },
            { id: "out", kind: "fixedHead", head: 0 },
          ],
          links: [
            {
              id: "pump",
              kind: "pump",
              from: "source",
              to: "discharge",
              pump: pumpAtSpeed(curves, 1),
              reverseFlow: true,
              reverseCoefficient: 2e6,
            },
            {
              id: "riser",
              kind: "pipe",
              from: "discharge",
              to: "out",
              length: 2,
              diameter: 0.027,
              roughness: 1.5e-6,
              minorLoss: 3,
            },
          ],
        },
        sourceNode: "source",
        source: 3,
        intakeElevation: 0.1,
        outlets: [{ id: "nozzle", node: "out", vessel: 0, elevation: 1.42, breakElevation: 1.43 }],
        upper: 0,
        pumps: [
          {
            link: "pump",
            curves,
            speed: 1,
            reverseCoefficient: 2e6,
          },
        ],
        content: section(0.027) * 2,
        checkValves: [],
      },
    ],
    evaporation: [],
    pumpTimeConstant: 0.5,
    ...change,
  };
}
