/** Angle of the arc's beginning and its whole turn [rad]: three quarters of a circle, open below. */
const start = (5 / 4) * Math.PI;
const sweep = (3 / 2) * Math.PI;

/** Returns where a share of full speed lies on a pump's arc, clockwise from the lower left.
 *  share of full speed, 0 to 1   -> angle, counter-clockwise from +x [rad]
 *  Findings: none. Throws: never.
 *  Valid: any share.
 *  Source: own construction.
 *  Example: shareAngle(0.5)  ->  1.5708 */
export function shareAngle(share: number): number {
  return start - sweep * share;
}

/** Returns the share of full speed that a direction from the pump's middle means.
 *  dx, dy from the middle of the pump, y up   -> share, 0 to 1; directions in the gap mean the nearer end
 *  Findings: none. Throws: never.
 *  Valid: any direction.
 *  Source: own construction.
 *  Example: angleShare(0, 1)  ->  0.5 */
export function angleShare(dx: number, dy: number): number {
  let back = start - Math.atan2(dy, dx);
  while (back < 0) back += 2 * Math.PI;
  while (back >= 2 * Math.PI) back -= 2 * Math.PI;
  if (back <= sweep) return back / sweep;
  return back - sweep < 2 * Math.PI - back ? 1 : 0;
}

/** Returns the radius of a pump's arc on the screen.
 *  scale of the view [px/m]   -> radius [px]
 *  Findings: none. Throws: never.
 *  Valid: any scale.
 *  Source: own construction. */
export function arcGeometry(scale: number): { readonly radius: number } {
  return { radius: Math.max(11, 0.055 * scale) + 5.5 };
}
