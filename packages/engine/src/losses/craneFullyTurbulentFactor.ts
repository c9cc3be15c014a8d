import { colebrook } from "./colebrook.ts";

/** Friction factor fT of clean commercial steel pipe in fully rough flow, by which Crane's fitting losses K = n fT are scaled,
 *  whatever the pipe is made of: Colebrook at Re = 7.5e6 D with e/D = 3.4126825e-5 D^-1.0112, a smooth curve that rounds
 *  to Crane's table at every size.
 *  diameter D inner [m]   -> fT [-]
 *  Findings: none. Throws: never.
 *  Valid: 10 to 600 mm; the table itself has two digits.
 *  Source: Crane TP-410, 2009 edition, appendix A, table by nominal size; curve: C. Bell, fluids 1.0.22, ft_Crane.
 *  Example: craneFullyTurbulentFactor(0.02664)  ->  0.022252 */
export function craneFullyTurbulentFactor(diameter: number): number {
  return colebrook(7.5e6 * diameter, 3.4126825352925e-5 * diameter ** -1.0112);
}
