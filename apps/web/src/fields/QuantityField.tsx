import type { Dimension, Quantity } from "@tidewright/units";
import { memo } from "react";
import { alsoInUnits, readQuantity, stepped, typedText } from "../format/quantityText.ts";
import { useFormat } from "../format/useFormat.ts";
import { useWords } from "../words/useWords.ts";
import { type FieldProps, TypedField } from "./TypedField.tsx";

interface Props extends FieldProps<Quantity> {
  readonly dimension: Dimension;
}

/** One quantity with its unit as it was typed; takes any text that names a unit of the dimension. */
export const QuantityField = memo(function QuantityField({ dimension, ...field }: Props) {
  const { value } = field;
  const format = useFormat();
  const words = useWords();
  return (
    <TypedField
      {...field}
      shown={value === undefined ? "" : typedText(value, dimension, format.decimalSign)}
      read={(text) => {
        const reading = readQuantity(text, dimension, value?.unit ?? format.unitOf(dimension), words);
        return reading.ok ? { ok: true, value: reading.quantity } : reading;
      }}
      next={(by) => value && stepped(value, by)}
      also={alsoInUnits(value, dimension, format)}
    />
  );
});
