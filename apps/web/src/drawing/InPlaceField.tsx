import { type Design, valueAt } from "@tidewright/design";
import { type MainQuantity, mainQuantity, type PlacedLabel, type Point, type View } from "@tidewright/editor";
import type { Quantity } from "@tidewright/units";
import type { Words } from "@tidewright/words";
import { type ReactNode, useEffect, useRef, useState } from "react";
import { readShare } from "../fields/readShare.ts";
import { sentence } from "../fields/setField.ts";
import { readNumber } from "../fields/TypedField.tsx";
import { readQuantity, typedText } from "../format/quantityText.ts";
import type { ScreenFormat } from "../format/screenFormat.ts";
import { useFormat } from "../format/useFormat.ts";
import { useWords } from "../words/useWords.ts";
import type { SheetHands } from "./sheetHands.ts";

interface Props {
  readonly design: Design;
  readonly path: string;
  readonly label: PlacedLabel | undefined;
  readonly anchor: Point;
  readonly view: View;
  readonly hands: SheetHands;
  /** `back` is true where the keyboard goes back to the part. */
  onClose(back: boolean): void;
}

/** The main quantity of a part as a field at its label: Enter takes the text, Escape drops it, and what is wrong with it is
 *  told right here. */
export function InPlaceField(props: Props): ReactNode {
  const { design, path, label, anchor, view, hands, onClose } = props;
  const words = useWords();
  const { say } = words;
  const format = useFormat();
  const quantity = mainQuantity(design, path);
  const value = quantity && valueAt(design, quantity.path);
  const [text, setText] = useState(() => (quantity ? shown(value, quantity, format) : ""));
  const [problem, setProblem] = useState<string>();
  const input = useRef<HTMLInputElement>(null);
  const closed = useRef(false);
  useEffect(() => input.current?.select(), []);
  if (quantity === undefined) return null;
  const close = (back: boolean) => {
    if (closed.current) return;
    closed.current = true;
    onClose(back);
  };
  /** Returns why the text cannot be taken. */
  const take = (): string | undefined => {
    if (text === shown(value, quantity, format)) return undefined;
    const label_ = { key: "drawing.step.type", named: { what: quantity.name } } as const;
    if (text.trim() === "" && quantity.optional) {
      if (value === undefined) return undefined;
      const why = hands.edit([{ op: "remove", path: quantity.path }], { label: label_, done: true });
      return sentence(why);
    }
    const reading = read(text, value, quantity, format, words);
    if (!reading.ok) return reading.problem;
    const why = hands.edit([{ op: "set", path: quantity.path, value: reading.value }], { label: label_, done: true });
    return sentence(why);
  };
  const rect = label?.rect ?? { x: anchor.x + 8, y: anchor.y - 16, width: 120, height: 32 };
  const width = Math.max(132, rect.width);
  const x = Math.max(8, Math.min(rect.x, view.width - width - 8));
  const y = Math.max(48, Math.min(rect.y, view.height - 96));
  return (
    <form
      className="tw-inPlace"
      style={{ transform: `translate(${Math.round(x)}px, ${Math.round(y)}px)`, width }}
      onSubmit={(event) => {
        event.preventDefault();
        const why = take();
        setProblem(why);
        if (why === undefined) close(true);
      }}
    >
      <label>
        <span>{say(quantity.name)}</span>
        <input
          ref={input}
          className="figure-input"
          // biome-ignore lint/a11y/noAutofocus: the field opens because the person asked to type here
          autoFocus
          type="text"
          autoComplete="off"
          spellCheck={false}
          data-draft=""
          value={text}
          aria-invalid={problem !== undefined}
          aria-describedby={problem === undefined ? undefined : "tw-inPlaceProblem"}
          onChange={(event) => {
            setText(event.target.value);
            setProblem(undefined);
          }}
          onKeyDown={(event) => {
            event.stopPropagation();
            if (event.key === "Escape") close(true);
          }}
          onBlur={() => {
            // Left for something else: a text that makes sense is taken, another one dropped.
            if (!closed.current) take();
            close(false);
          }}
        />
      </label>
      {problem === undefined ? null : (
        <p className="field-problem" id="tw-inPlaceProblem" role="alert">
          {problem}
        </p>
      )}
    </form>
  );
}

function shown(value: unknown, { kind, dimension }: MainQuantity, { decimalSign }: ScreenFormat): string {
  if (kind === "quantity") return value === undefined ? "" : typedText(value as Quantity, dimension, decimalSign);
  if (kind === "share")
    return value === undefined
      ? "100 %"
      : `${Number(((value as number) * 100).toFixed(2))} %`.replace(".", decimalSign);
  return String(value ?? 1).replace(".", decimalSign);
}

function read(text: string, value: unknown, { kind, dimension }: MainQuantity, format: ScreenFormat, words: Words) {
  const { say } = words;
  if (kind === "quantity") {
    const reading = readQuantity(
      text,
      dimension,
      (value as Quantity | undefined)?.unit ?? format.unitOf(dimension),
      words,
    );
    return reading.ok ? ({ ok: true, value: reading.quantity } as const) : reading;
  }
  if (kind === "share") return readShare(text, say);
  return readNumber(text, say("fields.digitsOnly"), say);
}
