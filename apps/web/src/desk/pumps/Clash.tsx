import type { PumpRow } from "@tidewright/catalogue";
import type { CatalogueRow } from "@tidewright/protocol";
import { useEffect, useRef } from "react";
import { useFormat } from "../../format/useFormat.ts";
import { useWords } from "../../words/useWords.ts";
import { pumpOf } from "./ownPumps.ts";
import { differences } from "./pumpValues.ts";

interface Props {
  readonly mine: PumpRow;
  /** Undefined where somebody removed the pump. */
  readonly theirs: CatalogueRow | undefined;
  readonly onMine: (over: number) => void;
  readonly onTheirs: (theirs: PumpRow, version: number) => void;
  readonly onLetGo: () => void;
}

/** Two people changed one pump: every entry that differs, both values, and a choice. */
export function Clash({ mine, theirs, onMine, onTheirs, onLetGo }: Props) {
  const words = useWords();
  const { say } = words;
  const format = useFormat();
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    head.current?.focus();
    head.current?.scrollIntoView({ block: "start" });
  }, []);
  const pump = theirs && pumpOf(theirs);
  if (theirs === undefined || pump === undefined)
    return (
      <section className="conflicts" aria-labelledby="clash-title">
        <h2 id="clash-title" ref={head} tabIndex={-1}>
          {say("pumps.clash.gone")}
        </h2>
        <p>{say("pumps.clash.goneExplain")}</p>
        <p className="clash-hands">
          <button type="button" className="action" onClick={() => onMine(theirs?.version ?? 0)}>
            {say("pumps.clash.addAgain")}
          </button>
          <button type="button" className="action" onClick={onLetGo}>
            {say("pumps.clash.letGo")}
          </button>
        </p>
      </section>
    );
  const differ = differences(mine, pump, words, format);
  return (
    <section className="conflicts" aria-labelledby="clash-title">
      <h2 id="clash-title" ref={head} tabIndex={-1}>
        {say("pumps.clash.title")}
      </h2>
      <p>{say(differ.length === 0 ? "pumps.clash.same" : "pumps.clash.explain")}</p>
      {differ.length === 0 ? null : (
        <table className="clash-table">
          <thead>
            <tr>
              <th scope="col">{say("pumps.clash.field")}</th>
              <th scope="col">{say("pumps.clash.mine")}</th>
              <th scope="col">{say("pumps.clash.theirs")}</th>
            </tr>
          </thead>
          <tbody>
            {differ.map(({ field, before, after }) => (
              <tr key={field}>
                <th scope="row">{field}</th>
                <td>{before}</td>
                <td>{after}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p className="clash-hands">
        <button type="button" className="action" onClick={() => onMine(theirs.version)}>
          {say("pumps.clash.keepMine")}
        </button>
        <button type="button" className="action" onClick={() => onTheirs(pump, theirs.version)}>
          {say("pumps.clash.takeTheirs")}
        </button>
      </p>
    </section>
  );
}
