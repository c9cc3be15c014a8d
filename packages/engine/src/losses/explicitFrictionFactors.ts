/** Darcy friction factor by Haaland: 1/sqrt f = -1.8 log10((e/3.7D)^1.11 + 6.9/Re).
 *  reynolds Re [-]   relativeRoughness e/D [-]   -> Darcy friction factor [-]
 *  Findings: none. Throws: never.
 *  Valid: Re 4000 to 1e8, e/D 1e-6 to 0.05; within 1.5 % of Colebrook.
 *  Source: S. E. Haaland, J. Fluids Engineering 105 (1983) 89-90.
 *  Example: haaland(1e5, 1e-3)  ->  0.021966 */
export function haaland(reynolds: number, relativeRoughness: number): number {
  const x = -1.8 * Math.log10((relativeRoughness / 3.7) ** 1.11 + 6.9 / reynolds);
  return 1 / (x * x);
}

/** Darcy friction factor by Swamee and Jain: f = 0.25 / log10(e/3.7D + 5.74/Re^0.9)^2.
 *  reynolds Re [-]   relativeRoughness e/D [-]   -> Darcy friction factor [-]
 *  Findings: none. Throws: never.
 *  Valid: Re 5000 to 1e8, e/D 1e-6 to 0.05; within about 3 % of Colebrook.
 *  Source: P. K. Swamee and A. K. Jain, J. Hydraulics Division ASCE 102 (1976) 657-664.
 *  Example: swameeJain(1e5, 1e-3)  ->  0.022342 */
export function swameeJain(reynolds: number, relativeRoughness: number): number {
  const x = Math.log10(relativeRoughness / 3.7 + 5.74 / reynolds ** 0.9);
  return 0.25 / (x * x);
}

/** Darcy friction factor by Churchill, one formula for all flow: f = 8 ((8/Re)^12 + (A + B)^-1.5)^(1/12),
 *  A = (2.457 ln(1/((7/Re)^0.9 + 0.27 e/D)))^16, B = (37530/Re)^16.
 *  reynolds Re [-]   relativeRoughness e/D [-]   -> Darcy friction factor [-]
 *  Findings: none. Throws: never.
 *  Valid: any Re, e/D 0 to 0.05; about 2 % of Colebrook above 4000; between 2000 and 4000 no curve is certain.
 *  Source: S. W. Churchill, Chemical Engineering 84(24) (1977) 91-92.
 *  Example: churchill(2300, 0)  ->  0.03084 */
export function churchill(reynolds: number, relativeRoughness: number): number {
  const a = (2.457 * Math.log(1 / ((7 / reynolds) ** 0.9 + 0.27 * relativeRoughness))) ** 16;
  const b = (37530 / reynolds) ** 16;
  return 8 * ((8 / reynolds) ** 12 + (a + b) ** -1.5) ** (1 / 12);
}
