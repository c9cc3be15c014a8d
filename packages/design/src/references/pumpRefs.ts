import { listOf, textOf } from "./loose.ts";

/** A pump that a design names: the JSON Pointer of the name, and the catalogue id that stands there. */
export interface PumpRef {
  readonly path: string;
  readonly ref: string;
}

/** Returns every pump that a design names, place by place; places without a pump are passed over.
 *  design a Design, or any document of that shape with mistakes in it   -> PumpRef[], loops first, then tank pumps
 *  Findings: none. Throws: never.
 *  Valid: any value; of what is malformed nothing is returned.
 *  Source: own construction.
 *  Example: pumpRefs({ loops: [{ pumps: [{ ref: "house-1" }, {}] }], tankPumps: [{ ref: "wave-2" }] })  ->  [{"path": "/loops/0/pumps/0/ref", "ref": "house-1"}, {"path": "/tankPumps/0/ref", "ref": "wave-2"}] */
export function pumpRefs(design: unknown): PumpRef[] {
  const inLoops = listOf(design, "loops").flatMap((loop, i) =>
    listOf(loop, "pumps").flatMap((pump, p) => named(pump, `/loops/${i}/pumps/${p}/ref`)),
  );
  return [...inLoops, ...listOf(design, "tankPumps").flatMap((pump, i) => named(pump, `/tankPumps/${i}/ref`))];
}

function named(pump: unknown, path: string): PumpRef[] {
  const ref = textOf(pump, "ref");
  return ref === undefined ? [] : [{ path, ref }];
}
