/** Returns a length as feet, inches and a reduced fraction, rounded to the nearest 1/denominator inch.
 *  metres length [m]   denominator parts of an inch, a whole number from 1 up, default 16   -> text such as 3' 4 1/2";
 *  a length below one foot is printed in inches alone; "—" where it is not finite
 *  Findings: none. Throws: RangeError where the denominator is not a whole number above zero.
 *  Valid: any length; the rounding error is at most 1/(2 denominator) inch, 0.8 mm at sixteenths.
 *  Source: 1 in = 0.0254 m exactly, NIST Special Publication 811 (2008), appendix B.8.
 *  Example: formatFeetAndInches(1.0287)  ->  "3' 4 1/2\""
 *  Example: formatFeetAndInches(0.0127)  ->  "1/2\"" */
export function formatFeetAndInches(metres: number, denominator = 16): string {
  if (!Number.isInteger(denominator) || denominator < 1)
    throw new RangeError(`denominator ${denominator} must be a whole number above zero, such as 8 or 16`);
  if (!Number.isFinite(metres)) return "—";
  const parts = Math.round((Math.abs(metres) / 0.0254) * denominator);
  const inches = Math.floor(parts / denominator);
  const feet = Math.floor(inches / 12);
  const sign = metres < 0 && parts > 0 ? "−" : "";
  const whole = inches - feet * 12;
  const part = fractionText(parts - inches * denominator, denominator);
  const inchText = part === "" ? `${whole}` : whole === 0 ? part : `${whole} ${part}`;
  return feet === 0 ? `${sign}${inchText}"` : `${sign}${feet}' ${inchText}"`;
}

function fractionText(top: number, bottom: number): string {
  if (top === 0) return "";
  let [a, b] = [top, bottom];
  while (b !== 0) [a, b] = [b, a % b];
  return `${top / a}/${bottom / a}`;
}
