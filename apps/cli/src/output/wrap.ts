/** Returns a text broken at blanks to lines of at most `width` characters, indent included: those after the first begin
 *  with it, and the first is thought to stand behind as much already. */
export function wrap(text: string, width: number, indent = ""): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/[ \t\n]+/).filter((each) => each !== "")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && longer.length > width - indent.length) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  lines.push(line);
  return lines.join(`\n${indent}`);
}
