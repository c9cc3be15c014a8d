import type { ReactNode } from "react";
import { FieldNote } from "./FieldNote.tsx";

interface Props {
  readonly id: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly problem?: string | undefined;
  /** The same value in the units of the screen, where it was typed in others. */
  readonly also?: string | undefined;
  readonly children: ReactNode;
}

/** Label, control, and below them what is wrong or what it means. */
export function FieldFrame({ id, label, hint, problem, also, children }: Props) {
  return (
    <div className="field" data-problem={problem === undefined ? undefined : ""}>
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <div className="field-control">
        {children}
        {also === undefined ? null : <span className="field-also">= {also}</span>}
      </div>
      <FieldNote id={id} hint={hint} problem={problem} />
    </div>
  );
}
