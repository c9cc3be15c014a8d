import { standardGravity } from "../water/index.ts";

/** Rows notch angle [degrees], Ce [-], kh [m]. */
const coefficients = [
  [20, 0.59, 0.0028],
  [40, 0.58, 0.0017],
  [60, 0.575, 0.0012],
  [80, 0.575, 0.001],
  [90, 0.578, 0.00085],
  [100, 0.58, 0.00085],
] as const;

/** Returns the flow through a triangular notch in a thin plate: Q = Ce (8/15) tan(angle/2) sqrt(2 g) (h + kh)^2.5.
 *  head h [m] above the notch's point   angle [rad] between its edges   -> flow [m3/s]; 0 at or below the point
 *  Findings: none. Throws: never.
 *  Valid: head above 0.05 m, angle 20 to 100 degrees (coefficients are held beyond), full contraction; about 2 % at 90 degrees.
 *  Source: ISO 1438:2017 for 90 degrees (0.578, 0.85 mm); other angles J. Shen, Discharge characteristics of triangular-notch
 *  thin-plate weirs, USGS Water-Supply Paper 1617-B (1981), as tabulated in R. D. Blevins, Applied Fluid Dynamics Handbook (1984).
 *  Example: vNotchWeirFlow(0.1, Math.PI / 2)  ->  0.004410 */
export function vNotchWeirFlow(head: number, angle: number): number {
  if (!(head > 0) || !(angle > 0)) return 0;
  const degrees = Math.min(100, Math.max(20, (angle * 180) / Math.PI));
  let row = 1;
  while (row < coefficients.length - 1 && coefficients[row][0] < degrees) row++;
  const [from, c0, k0] = coefficients[row - 1];
  const [to, c1, k1] = coefficients[row];
  const t = (degrees - from) / (to - from);
  const coefficient = c0 + t * (c1 - c0);
  const headCorrection = k0 + t * (k1 - k0);
  return coefficient * (8 / 15) * Math.tan(angle / 2) * Math.sqrt(2 * standardGravity) * (head + headCorrection) ** 2.5;
}
