/** Returns a text broken at blanks to lines of at most `width` characters, those after the first indented. */
export function wrap(text: string, width: number, indent = ""): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/[ \t\n]+/).filter((each) => each !== "")) {
    const longer = line === "" ? word : `${line} ${word}`;
    const room = width - (lines.length === 0 ? 0 : indent.length);
    if (line !== "" && longer.length > room) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  lines.push(line);
  return lines.join(`\n${indent}`);
}
