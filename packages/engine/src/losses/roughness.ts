/** Wall roughness of one material, as laid or as it becomes. */
export interface RoughnessRow {
  /** Roughness to reckon with [m]. */
  readonly value: number;
  /** Range met in handbooks or in use [m]. */
  readonly low: number;
  readonly high: number;
  /** Where the value stands. */
  readonly source: string;
  /** "published", "from memory" or "common practice". */
  readonly status: "published" | "from memory" | "common practice";
}

const moody = "L. F. Moody, Friction factors for pipe flow, Transactions ASME 66 (1944) 671-684: drawn tubing, glass";

/** Wall roughness e by material.
 *  Result: record of RoughnessRow, roughness [m].
 *  Findings: none. Throws: never.
 *  Valid: clean walls unless the name says otherwise. At 25 mm bore and Re 4e4, going from 1.5e-6 to 1e-4 m raises friction by 40 %.
 *  Source: in each row.
 *  Example: roughness.pvc.value  ->  0.0000015 */
export const roughness = {
  pvc: { value: 1.5e-6, low: 0, high: 7e-6, source: moody, status: "published" },
  glass: { value: 1.5e-6, low: 0, high: 1.5e-6, source: moody, status: "published" },
  drawnTubing: { value: 1.5e-6, low: 1e-6, high: 2.5e-6, source: moody, status: "published" },
  smoothHose: {
    value: 3e-5,
    low: 1e-5,
    high: 7e-5,
    source: "Handbooks, smooth rubber or vinyl hose: 1e-5 to 7e-5 m",
    status: "from memory",
  },
  corrugatedHose: {
    value: 5e-4,
    low: 2e-4,
    high: 3e-3,
    source: "Wire-reinforced or corrugated hose is several times rougher than smooth hose; measure where it matters",
    status: "from memory",
  },
  biofilm: {
    value: 1e-4,
    low: 3e-5,
    high: 5e-4,
    source: "A thin biofilm raises roughness to 1e-4 m or more, whatever lies under it",
    status: "from memory",
  },
} as const satisfies Record<string, RoughnessRow>;

/** Materials with a roughness. */
export type PipeMaterial = keyof typeof roughness;
