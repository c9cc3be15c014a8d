// Every factor that is exact by definition, with its source. Derived ones are built from these in the tables.

/** Returns the inch, 0.0254 m exactly: 1 in = 25.4 mm by the international yard and pound agreement of 1959.
 *  no arguments   -> metres per inch [m]
 *  Findings: none. Throws: never.
 *  Valid: exact by definition.
 *  Source: NIST Special Publication 811 (2008), appendix B.8, "inch (in)", printed bold (exact).
 *  Example: inch * 12  ->  0.3048 */
export const inch = 0.0254;

/** Returns the US liquid gallon in litres: 231 cubic inches = 231 * 0.254^3 L (0.254 m being ten inches) = 3.785411784 L.
 *  no arguments   -> litres per US gallon [L]
 *  Findings: none. Throws: never.
 *  Valid: exact by definition.
 *  Source: NIST Handbook 44, appendix C, "gallon = 231 cubic inches"; NIST SP 811 (2008), appendix B.8.
 *  Example: usGallonLitres  ->  3.785411784 */
export const usGallonLitres = 3.785411784;

/** Returns the imperial gallon in litres: 4.54609 L exactly.
 *  no arguments   -> litres per imperial gallon [L]
 *  Findings: none. Throws: never.
 *  Valid: exact by definition.
 *  Source: UK Units of Measurement Regulations 1995; NIST SP 811 (2008), appendix B.8, "gallon [Canadian and U.K.]".
 *  Example: imperialGallonLitres  ->  4.54609 */
export const imperialGallonLitres = 4.54609;

/** Returns the avoirdupois pound: 0.45359237 kg exactly.
 *  no arguments   -> kilograms per pound [kg]
 *  Findings: none. Throws: never.
 *  Valid: exact by definition.
 *  Source: NIST SP 811 (2008), appendix B.8, "pound (avoirdupois) (lb)".
 *  Example: pound  ->  0.45359237 */
export const pound = 0.45359237;

/** Returns the standard acceleration of free fall: g0 = 9.80665 m/s2 exactly.
 *  no arguments   -> acceleration [m/s2]
 *  Findings: none. Throws: never.
 *  Valid: conventional value; real g is within 0.3 % of it everywhere at sea level.
 *  Source: 3rd CGPM (1901); BIPM SI Brochure, 9th edition; NIST SP 811 (2008), appendix B.8.
 *  Example: standardGravity  ->  9.80665 */
export const standardGravity = 9.80665;

/** Returns the pound-force per square inch in pascals: psi = lb * g0 / in^2 = 6894.757293168 Pa.
 *  no arguments   -> pascals per psi [Pa]
 *  Findings: none. Throws: never.
 *  Valid: exact but for the rounding of the last binary digit.
 *  Source: from pound, g0 and inch; NIST SP 811 (2008), appendix B.8 prints 6.894 757 E+03.
 *  Example: poundPerSquareInch  ->  6894.757293 */
export const poundPerSquareInch = (pound * standardGravity) / (inch * inch);

/** Returns the International Table British thermal unit in joules: 1055.05585262 J exactly.
 *  no arguments   -> joules per Btu [J]
 *  Findings: none. Throws: never.
 *  Valid: exact by definition (5th International Conference on the Properties of Steam, 1956).
 *  Source: NIST SP 811 (2008), appendix B.8, "British thermal unit_IT".
 *  Example: britishThermalUnit / 3600  ->  0.2930710702 */
export const britishThermalUnit = 1055.05585262;

/** Returns the mechanical horsepower: 550 ft lbf/s = 550 * 0.3048 * lb * g0 = 745.69987 W.
 *  no arguments   -> watts per horsepower [W]
 *  Findings: none. Throws: never.
 *  Valid: exact but for the rounding of the last binary digit.
 *  Source: NIST SP 811 (2008), appendix B.8, "horsepower (550 ft lbf/s)" prints 7.456 999 E+02.
 *  Example: mechanicalHorsepower  ->  745.69987158 */
export const mechanicalHorsepower = 550 * 0.3048 * pound * standardGravity;
