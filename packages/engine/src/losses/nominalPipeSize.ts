/** Bore [m] of schedule 40 pipe (ASTM D1785, outside diameter less two minimum walls) by nominal size [in]. */
const bores = [
  0.00925, 0.01252, 0.0158, 0.02093, 0.02664, 0.03505, 0.04089, 0.0525, 0.06271, 0.07793, 0.10226, 0.15405,
];
const sizes = [0.25, 0.375, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 6];

/** Nominal pipe size that belongs to a bore, straight between the sizes of schedule 40 and in proportion outside them:
 *  Darby's method asks for it, and metric pipe or hose has none.
 *  diameter inner [m]   -> nominal size [in]
 *  Findings: none. Throws: never.
 *  Valid: 9 to 154 mm; half a size wrong changes Darby's K by less than 8 %.
 *  Source: ASTM D1785, schedule 40, bores recomputed.
 *  Example: nominalPipeSize(0.02664)  ->  1 */
export function nominalPipeSize(diameter: number): number {
  const last = bores.length - 1;
  if (diameter <= bores[0]) return (sizes[0] * diameter) / bores[0];
  if (diameter >= bores[last]) return (sizes[last] * diameter) / bores[last];
  let i = 1;
  while (bores[i] < diameter) i++;
  const share = (diameter - bores[i - 1]) / (bores[i] - bores[i - 1]);
  return sizes[i - 1] + share * (sizes[i] - sizes[i - 1]);
}
