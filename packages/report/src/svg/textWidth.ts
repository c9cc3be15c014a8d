const narrow = new Set("ijl.,:;'|!()[]ftI1r ·\u202f“”");
const wide = new Set("mwMWGOQ%@…×→");

/** Returns how wide a text will be at most when drawn, without asking a browser.
 *  text   size of the type [px]   -> width [px]
 *  Source: own measure over common sans-serif faces; Latin text, to the wide side so that labels keep apart.
 *  Example: textWidth("", 12)  ->  0 */
export function textWidth(text: string, size: number): number {
  let em = 0;
  for (const letter of text)
    em += narrow.has(letter) ? 0.31 : wide.has(letter) ? 0.82 : letter >= "A" && letter <= "Z" ? 0.64 : 0.535;
  return em * size;
}

/** Returns a text broken at its blanks into lines that fit a width, the last cut short where it must be.
 *  text   size of the type [px]   room for each line [px]   most lines   -> lines, at least one
 *  Source: own construction.
 *  Example: fitLines("mains fail", 12, 200, 2)  ->  ["mains fail"] */
export function fitLines(text: string, size: number, room: number, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && (textWidth(longer, size) <= room || lines.length === most))
      lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines.map((line) => cutToFit(line, size, room));
}

function cutToFit(line: string, size: number, room: number): string {
  if (textWidth(line, size) <= room) return line;
  const letters = [...line];
  while (letters.length > 1 && textWidth(`${letters.join("")}…`, size) > room) letters.pop();
  return `${letters.join("").trimEnd()}…`;
}
