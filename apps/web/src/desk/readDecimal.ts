/** Returns the number that a person typed, with a point or a comma, or undefined where it is none.
 *  Example: readDecimal("0,31")  ->  0.31 */
export function readDecimal(text: string): number | undefined {
  const plain = text.trim().replace(",", ".");
  if (!/^\d{1,9}(\.\d{0,9})?$/.test(plain)) return undefined;
  return Number(plain);
}
