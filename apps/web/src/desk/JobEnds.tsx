import { type Job, routes } from "@tidewright/protocol";
import { useState } from "react";
import { ask } from "../api/ask.ts";
import { Sheet } from "../bench/Sheet.tsx";
import { useWords } from "../words/useWords.ts";
import { jobHash } from "./deskAddress.ts";
import { KeptText } from "./KeptField.tsx";
import { NameForm } from "./NameForm.tsx";
import { refusalWords } from "./refusalWords.ts";
import { jobs } from "./shopLists.ts";

/** Print, double, remove: what is done with a job as a whole. */
export function JobEnds({ job }: { readonly job: Job }) {
  const { say } = useWords();
  const [open, setOpen] = useState<"double" | "remove">();
  const close = () => setOpen(undefined);
  return (
    <footer className="job-ends">
      <button type="button" className="action" onClick={() => print()}>
        {say("desk.print")}
      </button>
      <button type="button" className="action" onClick={() => setOpen("double")}>
        {say("desk.double")}
      </button>
      <button type="button" className="action action-warn" onClick={() => setOpen("remove")}>
        {say("desk.removeJob")}
      </button>
      <Sheet name="double" title={say("desk.doubleTitle")} open={open === "double"} onClose={close}>
        <Doubling job={job} />
      </Sheet>
      <Sheet
        name="remove"
        title={say("desk.removeJobTitle", { name: job.name })}
        open={open === "remove"}
        onClose={close}
      >
        <Removing job={job} />
      </Sheet>
    </footer>
  );
}

function Doubling({ job }: { readonly job: Job }) {
  const words = useWords();
  const { say } = words;
  const double = async (name: string) => {
    const designs = await ask(routes.designsOfJob, { params: { jobId: job.id } });
    if (!designs.ok) return refusalWords(designs, words);
    const made = await ask(routes.createJob, {
      body: { name, customerId: job.customerId, stage: "designing", notes: job.notes },
    });
    if (!made.ok) return refusalWords(made, words);
    for (const head of designs.value.items) {
      const variant = await ask(routes.createVariant, {
        params: { designId: head.id },
        body: { name: head.name, jobId: made.value.id },
      });
      if (!variant.ok) return refusalWords(variant, words);
    }
    jobs.put(made.value);
    location.hash = jobHash(made.value.id);
    return undefined;
  };
  return (
    <>
      <p>{say("desk.doubleExplain")}</p>
      <NameForm
        label={say("desk.jobName")}
        initial={say("desk.doubleDefault", { name: job.name })}
        done={say("desk.double")}
        onDone={double}
      />
    </>
  );
}

function Removing({ job }: { readonly job: Job }) {
  const words = useWords();
  const { say } = words;
  const [typed, setTyped] = useState("");
  const [problem, setProblem] = useState<string>();
  const same = typed.trim() === job.name.trim();
  const remove = async () => {
    if (!same) {
      setProblem(say("desk.typeTheName", { name: job.name }));
      return;
    }
    const answer = await ask(routes.removeJob, { params: { jobId: job.id }, ifMatch: job.version });
    if (!answer.ok) {
      setProblem(refusalWords(answer, words));
      return;
    }
    jobs.drop(job.id);
    location.hash = "#/jobs";
  };
  return (
    <form
      className="field-list"
      onSubmit={(event) => {
        event.preventDefault();
        void remove();
      }}
    >
      <p className="caution">{say("desk.removeJobExplain")}</p>
      <KeptText
        begin
        label={say("desk.typeTheName", { name: job.name })}
        value={typed}
        problem={problem}
        onChange={(text) => {
          setTyped(text);
          setProblem(undefined);
        }}
      />
      <p className="sheet-actions">
        <button type="submit" className="action action-warn" disabled={!same}>
          {say("desk.removeForGood")}
        </button>
      </p>
    </form>
  );
}
