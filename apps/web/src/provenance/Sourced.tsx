import type { ReactNode } from "react";
import { show } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import type { ProvenanceId } from "./provenance.ts";

interface Props {
  readonly of: ProvenanceId;
  readonly index?: number;
  readonly children: ReactNode;
}

/** A number that tells where it comes from when it is pressed. */
export function Sourced({ of, index = 0, children }: Props) {
  const { say } = useWords();
  return (
    <button
      type="button"
      className="sourced"
      aria-haspopup="dialog"
      title={say("fields.whereFrom")}
      onClick={(event) => show({ source: { id: of, index, at: event.currentTarget.getBoundingClientRect() } })}
    >
      {children}
    </button>
  );
}
