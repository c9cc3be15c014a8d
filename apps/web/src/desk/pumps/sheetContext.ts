import { createContext, useContext } from "react";
import type { FieldProblem } from "./judgePump.ts";
import type { PumpForm } from "./pumpForm.ts";

/** What every field of a sheet knows. */
export interface Sheet {
  readonly form: PumpForm;
  readonly readOnly: boolean;
  /** Whether the short name may still be chosen. */
  readonly isNew: boolean;
  change(make: (form: PumpForm) => PumpForm): void;
  /** What is to be told at a place; empty fields are told of only once saving was tried. */
  at(place: string): readonly FieldProblem[];
}

const SheetContext = createContext<Sheet | undefined>(undefined);
export const SheetProvider = SheetContext.Provider;

/** The sheet that a field stands on. */
export function useSheet(): Sheet {
  const sheet = useContext(SheetContext);
  if (sheet === undefined) throw new Error("a field stands outside its sheet");
  return sheet;
}

/** Puts the focus into a field of the sheet, once it is on the page. */
export function goTo(place: string): void {
  let tries = 5;
  const find = () => {
    const field =
      document.querySelector<HTMLElement>(`[data-place="${CSS.escape(place)}"]`) ??
      document.querySelector<HTMLElement>(`[data-place^="${CSS.escape(place)}."]`);
    if (field !== null) {
      field.focus({ preventScroll: true });
      field.scrollIntoView({ block: "center" });
    } else if (tries-- > 0) requestAnimationFrame(find);
  };
  find();
}
