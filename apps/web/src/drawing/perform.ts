import type { Outcome, RunEnd } from "@tidewright/editor";
import { drawRun, layoutElevation, runEndOf } from "@tidewright/editor";
import { presentDesign } from "../state/bench.ts";
import { problemWords } from "../words/problemWords.ts";
import { words } from "../words/useWords.ts";
import { benchHands, said } from "./sheetHands.ts";

/** Carries an operation out on the design that lies on the bench and takes the outcome in hand; returns why it cannot be.
 *  outcome of an operation of the editor   -> text, or undefined where it was done */
export function perform(outcome: Outcome): string | undefined {
  if (!outcome.ok) return said(words(), outcome.why);
  const problem = benchHands.edit(outcome.edits, { label: outcome.label, done: true });
  if (problem !== undefined) return words().say("drawing.why.notSound", problemWords(problem));
  benchHands.select(outcome.select);
  return undefined;
}

/** Draws a line from a place or a part to a place; returns why it cannot be drawn.
 *  from "display", "overflowBox", "sump.<chamber id>", or the path of a pump, a tee or an outlet   to place   -> text, or
 *  undefined where it was drawn */
export function drawBetween(from: string, to: string): string | undefined {
  const design = presentDesign();
  const place = (name: string): RunEnd => ({ kind: "place", place: name });
  const part = from.startsWith("/")
    ? runEndOf({ design, scene: layoutElevation(design, undefined) }, from, false)
    : place(from);
  return part === undefined ? words().say("drawing.why.noBeginning") : perform(drawRun(design, part, place(to)));
}
