import { useState } from "react";
import { useWords } from "../../words/useWords.ts";
import { refusalWords } from "../refusalWords.ts";
import { nameOf, putPump, tellNews, usePumpNews } from "./ownPumps.ts";

/** What just happened to a pump; a removed one can be put back. */
export function PumpNewsLine({ works }: { readonly works: boolean }) {
  const words = useWords();
  const { say } = words;
  const news = usePumpNews();
  const [problem, setProblem] = useState<string>();
  if (news === undefined) return null;
  const { kind, pump } = news;
  const putBack = async () => {
    const answer = await putPump(pump, 0);
    setProblem(answer.ok ? undefined : refusalWords(answer, words));
    if (answer.ok) tellNews({ kind: "back", pump });
  };
  const said = { added: "pumps.added", removed: "pumps.removed", back: "pumps.isBack" } as const;
  return (
    <div className="pump-note pump-news" role="status">
      <span>{say(said[kind], { name: nameOf(pump) })}</span>
      {kind === "removed" && works ? (
        <button type="button" className="tool" onClick={() => void putBack()}>
          {say("pumps.putBack")}
        </button>
      ) : null}
      {problem === undefined ? null : <span className="field-problem">{problem}</span>}
    </div>
  );
}
