/** Metres in a foot, cubic metres per second in a US gallon per minute: for formulas published in US units. */
const foot = 0.3048;
const inch = 0.0254;
const gallonPerMinute = 3.785411784e-3 / 60;

/** Water share [-] of a vented stack's section up to which it runs quietly, as plumbing codes take it.
 *  Source: R. S. Wyly and H. N. Eaton, Capacities of stacks in sanitary drainage systems for buildings, NBS Monograph 31 (1961).
 *  Example: quietStackShare  ->  0.29167 */
export const quietStackShare = 7 / 24;

/** Smallest bore [m] in the tables on which the stack formula rests; below it is an extrapolation.
 *  Source: National Standard Plumbing Code 2006 table 13.6.1 begins at 2 in.
 *  Example: smallestTabulatedStack  ->  0.0508 */
export const smallestTabulatedStack = 0.0508;

/** Returns the flow that runs down the wall of an upright vented pipe filled to a share of its section:
 *  q = 27.8 r^(5/3) d^(8/3) in US gal/min and inches; in SI Q = 31.46 r^(5/3) D^(8/3).
 *  diameter D [m] inside   share r [-] of the section that is water   -> flow [m3/s]
 *  Findings: none. Throws: never.
 *  Valid: 2 to 15 in, share up to about 1/3, fall long enough for terminal speed; smaller pipes are an extrapolation.
 *  Source: R. S. Wyly and H. N. Eaton, NBS Monograph 31 (1961); F. M. Dawson and A. A. Kalinske 1937; table 13.6.1 of the National
 *  Standard Plumbing Code 2006 is this formula at 7/24.
 *  Example: ventedStackFlow(0.1016) / 6.30902e-5  ->  143.8 */
export function ventedStackFlow(diameter: number, share: number = quietStackShare): number {
  if (!(diameter > 0) || !(share > 0)) return 0;
  return 27.8 * gallonPerMinute * share ** (5 / 3) * (diameter / inch) ** (8 / 3);
}

/** Returns the speed that water on the wall of a vented stack settles to: V = 3.0 (q/d)^0.4, in ft/s, US gal/min and inches.
 *  flow [m3/s]   diameter [m] inside   -> speed [m/s]
 *  Findings: none. Throws: never.
 *  Valid: as ventedStackFlow, with which it agrees to 2 %.
 *  Source: R. S. Wyly and H. N. Eaton, NBS Monograph 31 (1961); coefficients from memory.
 *  Example: terminalVelocity(ventedStackFlow(0.0762), 0.0762) / 0.3048  ->  10.4 */
export function terminalVelocity(flow: number, diameter: number): number {
  if (!(flow > 0) || !(diameter > 0)) return 0;
  return 3 * foot * (flow / gallonPerMinute / (diameter / inch)) ** 0.4;
}

/** Returns the fall after which water in a vented stack has reached its terminal speed: L = 0.052 V^2, in ft and ft/s.
 *  flow [m3/s]   diameter [m] inside   -> length [m]
 *  Findings: none. Throws: never.
 *  Valid: as ventedStackFlow. A shorter drop runs slower and thus fuller than the stack formula says.
 *  Source: R. S. Wyly and H. N. Eaton, NBS Monograph 31 (1961); coefficient from memory.
 *  Example: terminalLength(ventedStackFlow(0.0762), 0.0762) / 0.3048  ->  5.6 */
export function terminalLength(flow: number, diameter: number): number {
  return 0.052 * foot * (terminalVelocity(flow, diameter) / foot) ** 2;
}
