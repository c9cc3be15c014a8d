/** Widths in thousandths of an em, set for the widest of the faces that the page falls back to. */
const narrow = new Set("ijl.,:;'|!()[]ftI1r ·");
const wide = new Set("mwMWGOQ%@…×→");

/** Returns how wide a text will be at most when drawn, without asking a browser.
 *  text   size of the type [px]   -> width [px]
 *  Findings: none. Throws: never.
 *  Valid: Latin text in a sans-serif face; errs to the wide side so that labels keep apart.
 *  Source: own measure over common sans-serif faces.
 *  Example: textWidth("", 12)  ->  0 */
export function textWidth(text: string, size: number): number {
  let em = 0;
  for (const letter of text)
    em += narrow.has(letter) ? 0.34 : wide.has(letter) ? 0.86 : letter >= "A" && letter <= "Z" ? 0.68 : 0.565;
  return em * size;
}
