import { problemDetails, routes } from "@tidewright/protocol";
import { useState } from "react";
import { useWords } from "../words/useWords.ts";
import { problemWords } from "./refusalWords.ts";

/** Everything as of now in one file, and how it comes back. */
export function Backup() {
  const words = useWords();
  const { say } = words;
  const [state, setState] = useState<{ readonly busy: boolean; readonly said: string; readonly wrong?: true }>({
    busy: false,
    said: "",
  });
  const save = async () => {
    setState({ busy: true, said: say("desk.backupBusy") });
    setState({ busy: false, ...(await download(words)) });
  };
  return (
    <section className="desk-block">
      <h2>{say("desk.backup")}</h2>
      <p>{say("desk.backupExplain")}</p>
      <p className="block-hands">
        <button type="button" className="action action-strong" disabled={state.busy} onClick={() => void save()}>
          {say("desk.backupNow")}
        </button>
        <span role="status" className={state.wrong ? "field-problem" : "quiet"}>
          {state.said}
        </span>
      </p>
      <h3>{say("desk.restore")}</h3>
      <p>{say("desk.restoreExplain")}</p>
      <pre className="command">
        <code>tidewright-server restore FILE --data FOLDER</code>
      </pre>
    </section>
  );
}

/** A shop of many photos takes longer than any answer that `ask` waits for. */
async function download(words: ReturnType<typeof useWords>): Promise<{ said: string; wrong?: true }> {
  const { method, path } = routes.backup;
  try {
    const response = await fetch(path.slice(1), { method, headers: { "X-Tidewright": "1" } });
    if (!response.ok) {
      const problem = problemDetails.safeParse(await response.json());
      return {
        said: problem.success ? problemWords(problem.data, words) : words.say("refusals.unreachable"),
        wrong: true,
      };
    }
    const link = document.createElement("a");
    link.href = URL.createObjectURL(await response.blob());
    const named = /filename="([^"]+)"/.exec(response.headers.get("Content-Disposition") ?? "")?.[1];
    link.download = named ?? `tidewright-${new Date().toISOString().slice(0, 10)}.backup`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
    return { said: words.say("desk.backupDone", { name: link.download }) };
  } catch {
    return { said: words.say("refusals.unreachable"), wrong: true };
  }
}
