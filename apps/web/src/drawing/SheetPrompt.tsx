import { type Design, valueAt } from "@tidewright/design";
import { choiceLooks, type SheetState } from "@tidewright/editor";
import type { Quantity } from "@tidewright/units";
import type { Words } from "@tidewright/words";
import { memo, type ReactNode } from "react";
import { typedText } from "../format/quantityText.ts";
import { useFormat } from "../format/useFormat.ts";
import { useWords } from "../words/useWords.ts";
import type { Sheet } from "./useSheet.ts";

interface Props {
  readonly sheet: Sheet;
  /** Needed only while something is in the hand. */
  readonly design: Design | undefined;
}

/** What the hand has to do next, or why something was not done. */
export const SheetPrompt = memo(function SheetPrompt({ sheet, design }: Props): ReactNode {
  const words = useWords();
  const { state, refused } = sheet;
  const { decimalSign } = useFormat();
  const prompt = promptOf(state, design, words, decimalSign);
  return (
    <div className="tw-prompt" data-busy={prompt === undefined ? undefined : ""}>
      <div role="status">{prompt === undefined ? null : <p>{prompt}</p>}</div>
      <div role="alert">{refused === undefined ? null : <p className="tw-refused">{refused}</p>}</div>
      {prompt === undefined ? null : (
        <button type="button" onClick={() => sheet.send({ kind: "tool", tool: "stop" })}>
          {words.say("drawing.prompt.stop")}
        </button>
      )}
    </div>
  );
});

function promptOf(state: SheetState, design: Design | undefined, words: Words, sign: "." | ","): string | undefined {
  if (state.kind === "SteeringPart" && design !== undefined) {
    const typed = (key: string, dimension: "length" | "angle") =>
      typedText((valueAt(design, `${state.part}/${key}`) ?? level) as Quantity, dimension, sign);
    return state.grip === "aim"
      ? words.say("drawing.prompt.aim", { up: typed("aim/pitch", "angle") })
      : words.say("drawing.prompt.move", { along: typed("at/0", "length"), up: typed("at/2", "length") });
  }
  if (state.kind === "InsertingPart")
    return words.say(state.spot === undefined ? "drawing.prompt.insert" : "drawing.prompt.insertHere", {
      part: words.say(choiceLooks[state.choice].name),
    });
  if (state.kind !== "RoutingRun" || design === undefined) return undefined;
  if (state.from === undefined) return words.say("drawing.prompt.routeFrom");
  return words.say("drawing.prompt.routeTo", {
    from: placeName(state.from.kind === "place" ? state.from.place : undefined, design, words),
  });
}

/** An aim of which nothing is said. */
const level = { value: 0, unit: "deg" };

function placeName(place: string | undefined, design: Design, { say }: Words): string {
  if (place === undefined) return say("drawing.place.line");
  if (place === "display" || place === "overflowBox") return say(`drawing.place.${place}`);
  const chamber = design.sump.chambers.find(({ id }) => `sump.${id}` === place);
  return say("drawing.place.chamber", { name: chamber?.name ?? chamber?.id ?? "" });
}
