import type { StoreChange } from "@tidewright/protocol";
import { useCallback, useEffect, useRef, useState } from "react";
import type { Answered } from "../api/ask.ts";
import { heedDoor, onShopChange } from "./shopLists.ts";

type Failed = Extract<Answered<unknown>, { ok: false }>;

/** An answer as far as it is there. `again` asks anew; what is shown stays meanwhile. */
export interface Asked<Value> {
  readonly value: Value | undefined;
  readonly failed: Failed | undefined;
  again(): Promise<void>;
}

/** Pauses before an answer that did not come is asked for again [ms]; the last one holds on. */
const pauses = [2000, 5000, 15_000, 30_000] as const;

/** Asks when the component comes, when news concern it, and again where the server could not be reached.
 *  key what is asked about: another key is another question   question   concerns which news */
export function useAsked<Value>(
  key: string,
  question: () => Promise<Answered<Value>>,
  concerns?: (change: StoreChange) => boolean,
): Asked<Value> {
  const [state, setState] = useState<{ readonly value: Value | undefined; readonly failed: Failed | undefined }>({
    value: undefined,
    failed: undefined,
  });
  const latest = useRef({ question, concerns, round: 0, missed: 0 });
  latest.current.question = question;
  latest.current.concerns = concerns;
  const again = useCallback(async () => {
    latest.current.round += 1;
    const { round } = latest.current;
    const answer = heedDoor(await latest.current.question());
    if (round !== latest.current.round) return;
    if (answer.ok) setState({ value: answer.value, failed: undefined });
    else setState(({ value }) => ({ value, failed: answer }));
    const reached = answer.ok || answer.reason !== "unreachable";
    latest.current.missed = reached ? 0 : latest.current.missed + 1;
  }, []);
  const { failed } = state;
  useEffect(() => {
    if (failed?.reason !== "unreachable") return;
    const pause = pauses[Math.min(latest.current.missed, pauses.length) - 1] ?? pauses[0];
    const later = setTimeout(() => void again(), pause);
    return () => clearTimeout(later);
  }, [again, failed]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another key is another question
  useEffect(() => {
    void again();
    return onShopChange((change) => {
      if (change === "everything" || latest.current.concerns?.(change)) void again();
    });
  }, [again, key]);
  return { ...state, again };
}
