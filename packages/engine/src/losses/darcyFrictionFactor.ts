import { colebrook, colebrookSlope } from "./colebrook.ts";

/** Up to here flow counts as laminar, from `turbulentReynolds` on as turbulent. */
const laminarReynolds = 2000;
const turbulentReynolds = 4000;

const width = turbulentReynolds - laminarReynolds;
const laminarValue = 64 / laminarReynolds;
const laminarSlope = (-laminarValue / laminarReynolds) * width; // per unit of the cubic's variable

/** Darcy friction factor for any flow: 64/Re up to Re 2000, Colebrook-White from 4000 on, and between them the cubic in Re
 *  that has the values and slopes of both.
 *  reynolds Re [-], above 0   relativeRoughness e/D [-]   -> Darcy friction factor [-]; Infinity at Re 0
 *  Findings: none. Throws: never.
 *  Valid: e/D 0 to 0.05. From 2000 to 4000 published curves differ by 30 %: the cubic keeps f smooth, it does not make it certain.
 *  Source: Hagen-Poiseuille; C. F. Colebrook 1939; cubic after E. J. Dunlop, WADI Users Manual (1991), as in L. A. Rossman,
 *  EPANET 2.2 manual, section 12.1, here with the exact Colebrook value and slope at 4000.
 *  Example: darcyFrictionFactor(1000, 0)  ->  0.064
 *  Example: darcyFrictionFactor(1e5, 1e-3)  ->  0.022175 */
export function darcyFrictionFactor(reynolds: number, relativeRoughness: number): number {
  if (reynolds >= turbulentReynolds) return colebrook(reynolds, relativeRoughness);
  if (reynolds <= laminarReynolds) return 64 / reynolds;
  const t = (reynolds - laminarReynolds) / width;
  const end = colebrook(turbulentReynolds, relativeRoughness);
  const endSlope = colebrookSlope(turbulentReynolds, relativeRoughness) * width;
  const square = 3 * (end - laminarValue) - 2 * laminarSlope - endSlope;
  const cube = 2 * (laminarValue - end) + laminarSlope + endSlope;
  return laminarValue + t * (laminarSlope + t * (square + t * cube));
}

/** Slope df/dRe of `darcyFrictionFactor`: -64/Re^2 laminar; -2 f w/(Re (1 + w)) turbulent; that of the cubic between.
 *  reynolds Re [-], above 0   relativeRoughness e/D [-]   -> df/dRe [-]
 *  Findings: none. Throws: never.
 *  Valid: as `darcyFrictionFactor`; continuous at 2000 and 4000, exact to rounding.
 *  Source: analytic derivative.
 *  Example: darcyFrictionFactorSlope(1000, 0)  ->  -0.000064 */
export function darcyFrictionFactorSlope(reynolds: number, relativeRoughness: number): number {
  if (reynolds >= turbulentReynolds) return colebrookSlope(reynolds, relativeRoughness);
  if (reynolds <= laminarReynolds) return -64 / (reynolds * reynolds);
  const t = (reynolds - laminarReynolds) / width;
  const end = colebrook(turbulentReynolds, relativeRoughness);
  const endSlope = colebrookSlope(turbulentReynolds, relativeRoughness) * width;
  const square = 3 * (end - laminarValue) - 2 * laminarSlope - endSlope;
  const cube = 2 * (laminarValue - end) + laminarSlope + endSlope;
  return (laminarSlope + t * (2 * square + t * 3 * cube)) / width;
}
