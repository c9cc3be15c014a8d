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

/** Asks when the component comes and when news concern it.
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
  const latest = useRef({ question, concerns, round: 0 });
  latest.current.question = question;
  latest.current.concerns = concerns;
  const again = useCallback(async () => {
    latest.current.round += 1;
    const { round } = latest.current;
    const answer = heedDoor(await latest.current.question());
    if (round !== latest.current.round) return;
    if (answer.ok) setState({ value: answer.value, failed: undefined });
    else setState(({ value }) => ({ value, failed: answer }));
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another key is another question
  useEffect(() => {
    void again();
    return onShopChange((change) => {
      if (change === "everything" || latest.current.concerns?.(change)) void again();
    });
  }, [again, key]);
  return { ...state, again };
}
