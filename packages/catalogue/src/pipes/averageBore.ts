const inch = 0.0254;

/** Smallest wall tolerance of ASTM D1785, 0.020 in, and its share of the minimum wall, 12 %. */
const leastTolerance = 0.02 * inch;
const toleranceShare = 0.12;

/** Average bore of plastic pipe made to ASTM D1785: D = OD - 2 (t + tol / 2), tol = max(0.020 in, 0.12 t).
 *  outerDiameter [m]   minimumWall t [m]   -> bore [m]
 *  Findings: none. Throws: never.
 *  Valid: Schedule 40 and 80, 1/2 to 4 in; within 0.0005 in of the published averages, which are rounded to 0.001 in.
 *  Source: ASTM D1785, Standard Specification for PVC Plastic Pipe, wall thickness and tolerance table: the wall may
 *  exceed its minimum by the tolerance, so the mean wall lies half a tolerance above the minimum.
 *  Example: astmAverageBore(0.033401, 0.0033782)  ->  0.0261366                                                */
export function astmAverageBore(outerDiameter: number, minimumWall: number): number {
  return outerDiameter - 2 * minimumWall - astmWallTolerance(minimumWall);
}

/** Allowed excess of the wall over its minimum: tol = max(0.020 in, 0.12 t).
 *  minimumWall t [m]   -> tolerance [m]
 *  Findings: none. Throws: never.
 *  Valid: ASTM D1785 pipe; the standard prints the result rounded to 0.001 in, this function does not round.
 *  Source: ASTM D1785, wall thickness and tolerance table.
 *  Example: astmWallTolerance(0.0085598)  ->  0.00102718                                                       */
export function astmWallTolerance(minimumWall: number): number {
  return Math.max(leastTolerance, toleranceShare * minimumWall);
}

/** Bore at minimum wall, as metric size tables print it: D = OD - 2 t.
 *  outerDiameter [m]   minimumWall t [m]   -> bore [m]
 *  Findings: none. Throws: never.
 *  Valid: any pipe; the real bore is smaller by up to the wall tolerance.
 *  Source: geometry.
 *  Example: boreAtMinimumWall(0.032, 0.0024)  ->  0.0272                                                       */
export function boreAtMinimumWall(outerDiameter: number, minimumWall: number): number {
  return outerDiameter - 2 * minimumWall;
}
