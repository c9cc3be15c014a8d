import { type Design, valueAt } from "@tidewright/design";
import type { Quantity } from "@tidewright/units";
import type { Field } from "../document/fields.ts";
import { CheckField } from "./CheckField.tsx";
import { ChoiceField } from "./ChoiceField.tsx";
import { NumberField } from "./NumberField.tsx";
import { QuantityField } from "./QuantityField.tsx";
import { RangeField } from "./RangeField.tsx";
import { ShareField } from "./ShareField.tsx";
import { TextField } from "./TextField.tsx";

interface Props {
  readonly design: Design;
  /** Pointer of the part that the field belongs to. */
  readonly part: string;
  readonly field: Field;
  readonly bare?: boolean;
}

/** The control for one field of a part, whatever its kind. */
export function PartField({ design, part, field, bare = false }: Props) {
  const path = field.key === "" ? part : `${part}/${field.key}`;
  const value = valueAt(design, path);
  const { label, hint, optional } = field;
  const common = { path, label, hint, optional };
  switch (field.kind) {
    case "quantity":
      return (
        <QuantityField {...common} bare={bare} dimension={field.dimension} value={value as Quantity | undefined} />
      );
    case "range":
      return (
        <RangeField
          {...common}
          dimension={field.dimension}
          value={value as readonly [Quantity, Quantity] | undefined}
        />
      );
    case "share":
      return <ShareField {...common} bare={bare} value={value as number | undefined} />;
    case "count":
      return <NumberField {...common} bare={bare} counts value={value as number | undefined} />;
    case "number":
      return <NumberField {...common} bare={bare} value={value as number | undefined} />;
    case "text":
      return <TextField {...common} bare={bare} value={value as string | undefined} />;
    case "choice":
      return <ChoiceField {...common} bare={bare} choices={field.choices} value={value as string | undefined} />;
    case "check":
      return <CheckField path={path} label={label} value={value as boolean | undefined} />;
    case "presence":
      return <CheckField path={path} label={label} value={value !== undefined} start={field.start} />;
  }
}
