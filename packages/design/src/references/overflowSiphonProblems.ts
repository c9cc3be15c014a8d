import { type Add, asTyped, fieldOf, siOf, textOf } from "./loose.ts";

// Lengths typed in different units for the same height may differ in the last digit.
const slack = 1e-6;

/** Adds what cannot be in the siphon of a hang-on overflow: a siphon that is missing or where none belongs, a crest that is not over the
 *  glass, mouths outside their boxes, tubes too short for their way. */
export function overflowSiphonProblems(design: unknown, add: Add): void {
  const kind = textOf(design, "overflow", "kind");
  const siphon = fieldOf(design, "overflow", "siphon");
  if (siphon === undefined) {
    if (kind === "hangOn")
      add({
        path: "/overflow/siphon",
        message: "the overflow hangs on the glass, but nothing is said of its siphon",
        fix: 'add "siphon" with its tubes, bore, length, crest, mouth and inner box, or give another "kind"',
      });
    return;
  }
  if (kind !== undefined && kind !== "hangOn") {
    add({
      path: "/overflow/siphon",
      message: "only an overflow that hangs on the glass has a siphon",
      value: siphon,
      fix: 'remove "siphon", or give the kind "hangOn"',
    });
    return;
  }
  const crest = siOf(siphon, "length", "crest");
  const height = siOf(design, "length", "display", "height");
  if (crest !== undefined && height !== undefined && crest < height - slack)
    add({
      path: "/overflow/siphon/crest",
      message: `the siphon's crest at ${asTyped(fieldOf(siphon, "crest"))} is below the display's rim at ${asTyped(fieldOf(design, "display", "height"))}`,
      value: fieldOf(siphon, "crest"),
      fix: "lead the tubes over the rim, or give the kind of an overflow in drilled glass",
    });
  const mouth = siOf(siphon, "length", "mouth");
  /** The tubes end under water: below the crest and above the floors of both boxes. */
  const ends = (limit: readonly string[], what: string, side: 1 | -1) => {
    const bound = siOf(design, "length", ...limit);
    if (mouth === undefined || bound === undefined || side * (mouth - bound) <= slack) return;
    add({
      path: "/overflow/siphon/mouth",
      message: `the tubes end at ${asTyped(fieldOf(siphon, "mouth"))}, ${side > 0 ? "above" : "below"} ${what} at ${asTyped(fieldOf(design, ...limit))}`,
      value: fieldOf(siphon, "mouth"),
      fix: "let the tubes end under water in both boxes, over their floors",
    });
  };
  ends(["overflow", "weir", "crest"], "the weir's crest", 1);
  ends(["overflow", "siphon", "innerBox", "floor"], "the floor of the box inside", -1);
  ends(["overflow", "box", "floor"], "the floor of the box outside", -1);
  const length = siOf(siphon, "length", "length");
  if (crest === undefined || mouth === undefined || length === undefined || length >= 2 * (crest - mouth) - slack)
    return;
  add({
    path: "/overflow/siphon/length",
    message: `tubes of ${asTyped(fieldOf(siphon, "length"))} do not reach from mouth to mouth over the crest`,
    value: fieldOf(siphon, "length"),
    fix: "give the whole way along the middle of a tube: up, over and down",
  });
}
