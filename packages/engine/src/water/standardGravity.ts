/** Standard acceleration of free fall [m/s2], used to turn pressure into head.
 *  Result: g [m/s2].
 *  Findings: none. Throws: never.
 *  Valid: local gravity differs by up to 0.3 % over the Earth's surface.
 *  Source: 3rd General Conference on Weights and Measures, 1901; ISO 80000-3 (exact by convention).
 *  Example: standardGravity  ->  9.80665 */
export const standardGravity = 9.80665;
