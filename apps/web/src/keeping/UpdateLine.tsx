import { useState } from "react";
import { useWords } from "../words/useWords.ts";
import { useNewerVersion } from "./installed.ts";
import { useKeeping } from "./keepingState.ts";

/** Offers a newer version of the pages; never while something waits to be kept, and never by itself. */
export function UpdateLine() {
  const { say } = useWords();
  const letIn = useNewerVersion();
  const waits = useKeeping(({ kept }) => kept !== undefined && (kept.writing || kept.outbox.phase !== "kept"));
  const [later, setLater] = useState(false);
  if (letIn === undefined || later) return null;
  return (
    <div className="update-line" role="status">
      <span>{waits ? `${say("keeping.update")} ${say("keeping.updateWaits")}` : say("keeping.update")}</span>
      <button type="button" className="action action-strong" disabled={waits} onClick={letIn}>
        {say("keeping.updateNow")}
      </button>
      <button type="button" className="action" onClick={() => setLater(true)}>
        {say("keeping.updateLater")}
      </button>
    </div>
  );
}
