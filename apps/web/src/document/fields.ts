import type { Dimension } from "@tidewright/units";

interface FieldBase {
  /** Pointer below the part, without the leading slash: "weir/length". */
  readonly key: string;
  readonly label: string;
  /** A field that may be left out; emptying it takes it out of the document. */
  readonly optional?: boolean;
  /** A few words on what it means or what stands in when it is left out. */
  readonly hint?: string;
}

/** One choice of a list. */
export interface Choice {
  readonly value: string;
  readonly label: string;
  readonly group?: string;
  /** What else is set with it, where it is not so already: absolute pointers; undefined takes a field out. */
  readonly also?: readonly { readonly path: string; readonly value: unknown }[];
}

/** How one value of the document is asked for. */
export type Field =
  | (FieldBase & { readonly kind: "quantity"; readonly dimension: Dimension })
  /** Two quantities, lowest and highest. */
  | (FieldBase & { readonly kind: "range"; readonly dimension: Dimension })
  /** A share from 0 to 1, shown in per cent, with a slider. */
  | (FieldBase & { readonly kind: "share" })
  | (FieldBase & { readonly kind: "count" })
  | (FieldBase & { readonly kind: "number" })
  | (FieldBase & { readonly kind: "text" })
  | (FieldBase & { readonly kind: "choice"; readonly choices: readonly Choice[] })
  | (FieldBase & { readonly kind: "check" })
  /** A part that may be there or not; it begins as `start`. Its key is empty: it is the part of the form itself. */
  | (FieldBase & { readonly kind: "presence"; readonly start: unknown });

/** A list of like things below a part, which can be added to, put in order and taken from. */
export interface PartList {
  /** Absolute pointer of the list. */
  readonly path: string;
  readonly label: string;
  readonly of: "run" | "pump" | "chamber" | "drain" | "loop" | "circuit" | "zone" | "tankPump";
}

/** Everything that can be asked about one part of the design. */
export interface PartForm {
  readonly path: string;
  readonly title: string;
  /** Where it belongs: "Return loop". */
  readonly within?: { readonly path: string; readonly title: string };
  readonly fields: readonly Field[];
  readonly lists: readonly PartList[];
}
