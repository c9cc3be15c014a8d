import { routes } from "@tidewright/protocol";
import { useState } from "react";
import { ask } from "../api/ask.ts";
import { designAddress } from "../state/address.ts";
import { presentDesign, say as sayOnBench, useBench } from "../state/bench.ts";
import { mayWork, useSession } from "../state/session.ts";
import { useWords } from "../words/useWords.ts";
import { newId } from "./newId.ts";
import { reasonOf } from "./reasonOf.ts";

/** On a trial nothing is kept: it says so, and offers to make a job of it. The server is asked no sooner than that. */
export function TrialLine() {
  const { say } = useWords();
  const changed = useBench((state) => state.history.present !== state.savedDesign);
  const { session } = useSession();
  const [busy, setBusy] = useState(false);
  const keep = async () => {
    setBusy(true);
    const why = await keepAsJob();
    setBusy(false);
    if (why !== undefined) sayOnBench(say("keeping.tryKeepFailed", { why }));
  };
  if (!changed) return null;
  return (
    <p className="keeping" data-tone="well">
      <span className="unsaved">{say("keeping.notSaved")}</span>
      {mayWork(session) ? (
        <button type="button" className="keeping-help" disabled={busy} onClick={keep}>
          {say("keeping.tryKeep")}
        </button>
      ) : null}
    </p>
  );
}

/** Makes a job of what is on the table and goes there; returns why not where it cannot be done. */
async function keepAsJob(): Promise<string | undefined> {
  const design = presentDesign();
  const name = design.name.slice(0, 200) || "Tidewright";
  const job = await ask(routes.createJob, { body: { id: newId(), name, stage: "designing" } });
  if (!job.ok) return reasonOf(job);
  const made = await ask(routes.createDesign, {
    params: { jobId: job.value.id },
    body: { id: newId(), name, document: design },
  });
  if (!made.ok) return reasonOf(made);
  leaving = true;
  location.assign(designAddress(made.value.id));
  return undefined;
}

let leaving = false;

/** Whether the trial has just become a job, so that nothing is lost by leaving it. */
export function isTrialKept(): boolean {
  return leaving;
}
