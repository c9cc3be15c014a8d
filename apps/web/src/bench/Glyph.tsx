import type { Severity } from "@tidewright/advice";

const shapes: Readonly<Record<Severity, string>> = {
  danger: "M8 1.5 15 14.5H1Z",
  warning: "M8 1.5 15 14.5H1Z",
  notice: "M8 2a6 6 0 1 1 0 12a6 6 0 1 1 0-12Z",
};

/** The mark of a severity: filled triangle, open triangle, open circle; a word always stands beside it. */
export function Glyph({ severity }: { readonly severity: Severity }) {
  return (
    <svg className={`glyph glyph-${severity}`} viewBox="0 0 16 16" width="14" height="14" aria-hidden="true">
      <path d={shapes[severity]} />
    </svg>
  );
}
