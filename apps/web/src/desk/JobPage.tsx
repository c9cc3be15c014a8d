import { type Job, type JobFields, type JobStage, jobStages } from "@tidewright/protocol";
import { useMemo } from "react";
import { mayWork, useSession } from "../state/session.ts";
import { useWords } from "../words/useWords.ts";
import { CustomerChoice } from "./CustomerChoice.tsx";
import { JobDesigns } from "./JobDesigns.tsx";
import { JobEnds } from "./JobEnds.tsx";
import { JobFiles } from "./JobFiles.tsx";
import { JobLinks } from "./JobLinks.tsx";
import { KeptChoice, KeptText } from "./KeptField.tsx";
import { Missing } from "./Missing.tsx";
import { RecordTitle } from "./RecordTitle.tsx";
import type { RecordKeeper } from "./recordKeeper.ts";
import { jobSource } from "./recordSources.ts";
import { StageMark } from "./StageMark.tsx";
import { customers } from "./shopLists.ts";
import { shownField, useKeeper, useKept } from "./useKeeper.ts";

/** One job: its title block, designs, files, links, and how it ends. */
export function JobPage({ jobId }: { readonly jobId: string }) {
  const source = useMemo(() => jobSource(jobId), [jobId]);
  const { keeper, missing } = useKeeper(source);
  const { say } = useWords();
  if (keeper === undefined)
    return <Missing missing={missing} notFound={say("desk.missing.job")} back="#/jobs" all={say("desk.allJobs")} />;
  return <JobSheet keeper={keeper} />;
}

function JobSheet({ keeper }: { readonly keeper: RecordKeeper<Job, JobFields> }) {
  const { say } = useWords();
  const kept = useKept(keeper);
  const { session } = useSession();
  const readOnly = !mayWork(session);
  const { record: job } = kept;
  const stage = shownField(kept, "stage");
  const customerId = shownField(kept, "customerId");
  const change = (fields: Partial<JobFields>) => keeper.change(fields);
  return (
    <article className="job-page">
      <RecordTitle
        of="job"
        keeper={keeper}
        kept={kept}
        readOnly={readOnly}
        wordsOf={(field, value) => conflictWords(field, value, say)}
      >
        <CustomerChoice
          customerId={customerId}
          customerName={customerId === job.customerId ? job.customerName : undefined}
          readOnly={readOnly}
          onChoose={(id) => {
            change({ customerId: id });
            void keeper.flush();
          }}
        />
        <div className="title-stage">
          <StageMark stage={stage} />
          <KeptChoice
            label={say("desk.stage")}
            value={stage}
            disabled={readOnly}
            onChange={(value) => {
              change({ stage: value as JobStage });
              void keeper.flush();
            }}
          >
            {jobStages.map((each) => (
              <option key={each} value={each}>
                {say(`desk.stage.${each}`)}
              </option>
            ))}
          </KeptChoice>
        </div>
      </RecordTitle>
      {stage === "intake" ? <Review readOnly={readOnly} onReviewed={() => change({ stage: "designing" })} /> : null}
      <div className="job-columns">
        <div className="job-main">
          <JobDesigns job={job} readOnly={readOnly} />
          <JobLinks jobId={job.id} readOnly={readOnly} />
        </div>
        <div className="job-side">
          <section className="desk-block">
            <h2>{say("desk.notes")}</h2>
            <KeptText
              label={say("desk.notesLabel")}
              className="bare-label"
              value={shownField(kept, "notes")}
              lines={4}
              most={20_000}
              readOnly={readOnly}
              onChange={(text) => change({ notes: text })}
              onLeave={() => void keeper.flush()}
            />
          </section>
          <JobFiles jobId={job.id} readOnly={readOnly} />
        </div>
      </div>
      {readOnly ? null : <JobEnds job={job} />}
    </article>
  );
}

/** What to do with a job that a customer's intake brought. */
function Review({ readOnly, onReviewed }: { readonly readOnly: boolean; readonly onReviewed: () => void }) {
  const { say } = useWords();
  return (
    <section className="review">
      <p>{say("desk.reviewExplain")}</p>
      {readOnly ? null : (
        <button type="button" className="action action-strong" onClick={onReviewed}>
          {say("desk.reviewed")}
        </button>
      )}
    </section>
  );
}

function conflictWords(field: string, value: unknown, say: ReturnType<typeof useWords>["say"]): string | undefined {
  if (field === "stage") return say(`desk.stage.${value as JobStage}`);
  if (field === "customerId")
    return value === null
      ? say("desk.noCustomer")
      : (customers.store.get().items.find(({ id }) => id === value)?.name ?? String(value));
  return undefined;
}
