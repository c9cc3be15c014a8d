import { routes } from "@tidewright/protocol";
import type { Words } from "@tidewright/words";
import { useState } from "react";
import { ask } from "../../api/ask.ts";
import { designAddress } from "../../state/address.ts";
import { useWords } from "../../words/useWords.ts";
import { type Asked, useAsked } from "../useAsked.ts";
import { whenWords } from "../whenWords.ts";

/** Designs that name a pump, as far as they are known. */
export type PumpUse = Asked<{
  readonly items: readonly { readonly head: DesignNamed; readonly jobName: string }[];
  readonly more: boolean;
}>;

interface DesignNamed {
  readonly id: string;
  readonly name: string;
  readonly updatedAt: string;
}

/** Rows that are shown before somebody asks for all. */
const firstRows = 8;

/** Asks which designs name a pump, and again when a design changes. */
export const usePumpUse = (pumpId: string): PumpUse =>
  useAsked(
    pumpId,
    () => ask(routes.designsWithPump, { params: { pumpId } }),
    (change) => change.kind === "design",
  );

/** How many designs name a pump, as a sentence; undefined while nobody knows yet. */
export function pumpUseWords({ value, failed }: PumpUse, { say }: Pick<Words, "say">): string | undefined {
  if (value === undefined) return failed === undefined ? undefined : say("pumps.usedUnknown");
  const count = value.items.length;
  if (count === 0) return say("pumps.usedNowhere");
  return say(value.more ? "pumps.usedMore" : "pumps.usedSome", { count });
}

/** The designs that a change of this pump concerns, each a way to its bench. */
export function PumpUseList({ use }: { readonly use: PumpUse }) {
  const words = useWords();
  const { say } = words;
  const [all, setAll] = useState(false);
  const items = use.value?.items ?? [];
  const sentence = pumpUseWords(use, words);
  if (sentence === undefined) return null;
  return (
    <section className="pump-use">
      <h2>{say("pumps.usedIn")}</h2>
      <p className="quiet">{sentence}</p>
      {items.length === 0 ? null : (
        <ol className="designs">
          {(all ? items : items.slice(0, firstRows)).map(({ head, jobName }) => (
            <li key={head.id} className="design" data-design={head.id}>
              <a className="design-open" href={designAddress(head.id)}>
                <span className="design-name">{head.name}</span>
                <span className="quiet">
                  {jobName} · {whenWords(head.updatedAt, new Date(), words)}
                </span>
              </a>
            </li>
          ))}
        </ol>
      )}
      {all || items.length <= firstRows ? null : (
        <button type="button" className="action" onClick={() => setAll(true)}>
          {say("pumps.usedAll")}
        </button>
      )}
    </section>
  );
}
