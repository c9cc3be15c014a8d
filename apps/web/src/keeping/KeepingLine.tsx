import { saveFile } from "../document/files.ts";
import { useBench } from "../state/bench.ts";
import { useSession } from "../state/session.ts";
import { useWords } from "../words/useWords.ts";
import { lookForAnothers } from "./anothersWork.ts";
import { tellKeeping, useKeeping } from "./keepingState.ts";
import { keepingWord } from "./keepingWord.ts";
import { TrialLine } from "./TrialLine.tsx";

/** The one quiet word on what is kept, and what helps where something is not. */
export function KeepingLine() {
  const kept = useKeeping((state) => state.kept);
  const durable = useKeeping((state) => state.durable);
  const lookOnly = useBench((state) => state.lookOnly !== undefined);
  const { session } = useSession();
  const words = useWords();
  if (kept === undefined) return <TrialLine />;
  if (lookOnly && kept.outbox.phase === "kept")
    return (
      <p className="keeping" data-tone="well" data-keeping="lookOnly" role="status">
        {words.say("keeping.lookOnlyShort")}
      </p>
    );
  const word = keepingWord(kept, durable, session?.who === "nobody", words);
  return (
    <p className="keeping" data-tone={word.tone} data-keeping={kept.outbox.phase}>
      <span role="status" aria-live="polite">
        {word.text}
      </span>
      {word.help === "signIn" ? (
        <button type="button" className="keeping-help" onClick={() => tellKeeping({ signingIn: true })}>
          {words.say("keeping.signIn")}
        </button>
      ) : null}
      {word.help === "another" ? (
        <button type="button" className="keeping-help" onClick={() => void lookForAnothers({ ask: true })}>
          {words.say("keeping.anothersDecide")}
        </button>
      ) : null}
      {word.help === "file" ? (
        <button type="button" className="keeping-help" onClick={saveFile}>
          {words.say("keeping.bar.save")}
        </button>
      ) : null}
    </p>
  );
}
