import type { Figure, Format, ScenePart } from "./scene.ts";

/** Returns a figure in words: "fall 182 mm", "72 % open".
 *  figure one number   format the user's units   -> text
 *  Findings: none. Throws: never.
 *  Valid: any figure; a share is told in per cent.
 *  Source: own construction. */
export function figureText(figure: Figure, format: Format): string {
  const number =
    figure.dimension === "share" ? `${Math.round(figure.value * 100)} %` : format(figure.value, figure.dimension);
  return [figure.before, number, figure.after].filter(Boolean).join(" ");
}

/** Returns what a screen reader says of a part: its name, its state and every number that belongs to it.
 *  part of the scene   format the user's units   -> sentence
 *  Findings: none. Throws: never.
 *  Valid: any part.
 *  Source: own construction. */
export function spokenText(part: ScenePart, format: Format): string {
  return [part.name, part.state, ...part.figures.map((figure) => figureText(figure, format))]
    .filter(Boolean)
    .join(", ");
}

/** How much a label says: one number, a few, a few with the state, or all. */
export type Detail = "brief" | "short" | "normal" | "full";

/** Returns the lines of a part's label: its name, then its numbers.
 *  part of the scene   format the user's units   detail how much it says
 *  lettered true where the drawing bears the name   -> lines, the first is the name (empty
 *  where the drawing bears it already)
 *  Findings: none. Throws: never.
 *  Valid: any part.
 *  Source: own construction. */
export function labelLines(part: ScenePart, format: Format, detail: Detail, lettered = false): string[] {
  const figures = part.figures.map((figure) => figureText(figure, format));
  const name = lettered && detail !== "full" && detail !== "brief" ? "" : part.name;
  if (figures.length === 0) return part.state ? [name, part.state] : [name];
  if (detail === "brief") return [name, figures[0]!];
  const shown =
    detail === "full" ? figures : figures.slice(0, part.shown ?? (part.rank === 1 && detail === "normal" ? 4 : 2));
  const lines = [name];
  if (part.state && detail !== "short") lines.push(part.state);
  // Numbers stand two to a line where they are short.
  for (let i = 0; i < shown.length; i += 2) {
    const pair = shown.slice(i, i + 2);
    if (pair.join("  ").length <= 24 && !part.narrow) lines.push(pair.join(" · "));
    else lines.push(...pair);
  }
  return lines;
}
