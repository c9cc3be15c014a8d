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

/** Returns a text broken at its spaces into lines that fit a width, the last cut short where it must be.
 *  text   room for each line [px]   most lines   -> lines
 *  Findings: none. Throws: never.
 *  Valid: type of 11 px.
 *  Source: own construction.
 *  Example: fitWords("chiller", 200, 2)  ->  ["chiller"] */
export function fitWords(text: string, room: number, most: number): string[] {
  const lines: string[] = [];
  // A number keeps its unit: "36 W" is one word.
  for (const word of text.replace(/(\d) (\S{1,3})(?=\s|$)/g, "$1\u00a0$2").split(" ")) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && (textWidth(longer, 11) <= room || lines.length === most))
      lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines.map((line) => {
    let cut = line;
    while (cut.length > 1 && textWidth(cut, 11) > room)
      cut = cut.endsWith("…") ? `${cut.slice(0, -2).trimEnd()}…` : `${cut.slice(0, -1)}…`;
    return cut;
  });
}
