import { type RevisionEntry, routes } from "@tidewright/protocol";
import { useCallback, useEffect, useRef, useState } from "react";
import { ask } from "../api/ask.ts";
import { onChange } from "../keeping/changes.ts";
import { reasonOf } from "../keeping/reasonOf.ts";

/** The history of a design as far as it is loaded, newest first. */
export interface Revisions {
  readonly entries: readonly RevisionEntry[];
  readonly state: "loading" | "more" | "whole" | "unreachable" | "refused";
  readonly why: string | undefined;
  loadMore(): void;
  /** Puts an entry in that the server has just answered with. */
  put(entry: RevisionEntry): void;
}

const pageSize = 60;

/** The history of a design, read page by page and followed as it grows. */
export function useRevisions(designId: string): Revisions {
  const [entries, setEntries] = useState<readonly RevisionEntry[]>([]);
  const [state, setState] = useState<Revisions["state"]>("loading");
  const [why, setWhy] = useState<string>();
  const round = useRef(0);

  const load = useCallback(
    async (before?: number) => {
      round.current += 1;
      const mine = round.current;
      const answer = await ask(routes.revisions, {
        params: { designId },
        query: { limit: pageSize, ...(before === undefined ? {} : { before }) },
      });
      if (mine !== round.current) return;
      if (!answer.ok) {
        setState(answer.reason);
        setWhy(reasonOf(answer));
        return;
      }
      const { items } = answer.value;
      setEntries((known) => joined(known, items));
      if (before !== undefined || items.length < pageSize) setState(items.length < pageSize ? "whole" : "more");
      else setState((present) => (present === "whole" ? "whole" : "more"));
    },
    [designId],
  );

  useEffect(() => {
    setEntries([]);
    setState("loading");
    void load();
    return onChange((told) => {
      if ((told.kind === "design" && told.id === designId) || told.kind === "lineBack") void load();
    });
  }, [designId, load]);

  return {
    entries,
    state,
    why,
    loadMore: () => void load(entries.at(-1)?.number),
    put: (entry) => setEntries((known) => joined(known, [entry])),
  };
}

/** Both lists by number, newest first; what is newly read counts. */
function joined(known: readonly RevisionEntry[], read: readonly RevisionEntry[]): readonly RevisionEntry[] {
  const byNumber = new Map([...known, ...read].map((entry) => [entry.number, entry]));
  return [...byNumber.values()].sort((a, b) => b.number - a.number);
}
