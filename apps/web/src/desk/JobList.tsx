import { type Job, type JobStage, jobStages } from "@tidewright/protocol";
import { useDeferredValue, useMemo, useState } from "react";
import { mayWork, useSession } from "../state/session.ts";
import { useWords } from "../words/useWords.ts";
import { jobHash } from "./deskAddress.ts";
import { ImportDesign } from "./ImportDesign.tsx";
import { InviteCustomer } from "./InviteCustomer.tsx";
import { jobOrder, stageCounts } from "./jobOrder.ts";
import { KeptChoice } from "./KeptField.tsx";
import { ListPage } from "./list/ListPage.tsx";
import { SearchedList } from "./list/SearchedList.tsx";
import { useNarrow } from "./list/useNarrow.ts";
import { foldedOnce, matchWords } from "./matchWords.ts";
import { StageMark } from "./StageMark.tsx";
import { useJobs } from "./shopLists.ts";
import { whenWords } from "./whenWords.ts";

const searched = foldedOnce<Job>((job) => `${job.name} ${job.customerName ?? ""} ${job.notes}`);
/** Height of one row [px], as desk.css has it: on a narrow screen a row has two lines. */
const rowHeight = { narrow: 64, wide: 44 };

/** What was looked for stays while the page does: back from a job the list is as it was left. */
let lastSearch = "";
let lastStage: JobStage | undefined;

/** The first screen of a shop's day: every job, those to review first, then the latest change first. */
export function JobList() {
  const words = useWords();
  const { say } = words;
  const list = useJobs();
  const { items, total, state } = list;
  const { session } = useSession();
  const [search, setSearch] = useState(lastSearch);
  const [stage, setStage] = useState(lastStage);
  lastSearch = search;
  lastStage = stage;
  const looked = useDeferredValue(search);
  const ordered = useMemo(() => jobOrder(items), [items]);
  const matching = useMemo(() => matchWords(ordered, searched, looked), [ordered, looked]);
  const shown = useMemo(
    () => (stage === undefined ? matching : matching.filter((job) => job.stage === stage)),
    [matching, stage],
  );
  const height = useNarrow() ? rowHeight.narrow : rowHeight.wide;
  const works = mayWork(session);
  return (
    <ListPage
      name="jobs"
      title={say("desk.jobs")}
      state={state}
      hands={works ? <NewJobs /> : null}
      instead={
        state === "whole" && total === 0 ? (
          <Nothing works={works} />
        ) : state === "unreachable" && items.length === 0 ? (
          <p className="list-empty">{say("desk.nothingKept")}</p>
        ) : null
      }
    >
      <SearchedList
        list={list}
        search={search}
        searchHint={say("desk.searchHint")}
        onSearch={setSearch}
        tools={<Stages of={matching} stage={stage} onStage={setStage} />}
        count={
          items.length < total
            ? say("desk.countSoFar", { shown: shown.length, loaded: items.length, total })
            : say("desk.count", { shown: shown.length, total })
        }
        shown={shown}
        height={height}
        head={<RowHead />}
        row={(job, index) => <JobRow job={job} index={index} />}
      />
    </ListPage>
  );
}

interface StagesProps {
  readonly of: readonly Job[];
  readonly stage: JobStage | undefined;
  readonly onStage: (stage: JobStage | undefined) => void;
}

/** How many jobs are at each stage, to choose one: buttons, or a list of choices on a narrow screen. */
function Stages({ of, stage, onStage }: StagesProps) {
  const words = useWords();
  const { say } = words;
  const counts = useMemo(() => stageCounts(of), [of]);
  return (
    <>
      <KeptChoice
        className="stage-choice"
        label={say("desk.stage")}
        value={stage ?? ""}
        onChange={(value) => onStage(value === "" ? undefined : (value as JobStage))}
      >
        <option value="">{`${say("desk.allStages")} (${words.number(of.length)})`}</option>
        {jobStages.map((each) => (
          <option key={each} value={each}>
            {`${say(`desk.stage.${each}`)} (${words.number(counts[each])})`}
          </option>
        ))}
      </KeptChoice>
      <fieldset className="stages" aria-label={say("desk.byStage")}>
        <button type="button" aria-pressed={stage === undefined} onClick={() => onStage(undefined)}>
          {say("desk.allStages")} <span className="count">{words.number(of.length)}</span>
        </button>
        {jobStages.map((each) =>
          counts[each] === 0 && stage !== each ? null : (
            <button key={each} type="button" aria-pressed={stage === each} onClick={() => onStage(each)}>
              <StageMark stage={each} />
              {say(`desk.stage.${each}`)} <span className="count">{words.number(counts[each])}</span>
            </button>
          ),
        )}
      </fieldset>
    </>
  );
}

function NewJobs() {
  const { say } = useWords();
  return (
    <div className="list-actions">
      <a className="action action-strong" href="./#/start">
        {say("desk.newJob")}
      </a>
      <InviteCustomer />
      <ImportDesign />
      <a className="action" href="./?try">
        {say("desk.tryDemo")}
      </a>
    </div>
  );
}

function Nothing({ works }: { readonly works: boolean }) {
  const { say } = useWords();
  return (
    <div className="list-empty">
      <StageMark stage="designing" />
      <p>{say("desk.noJobs")}</p>
      {works ? <p className="quiet">{say("desk.noJobsHint")}</p> : null}
    </div>
  );
}

function RowHead() {
  const { say } = useWords();
  return (
    <div className="row row-head" aria-hidden="true">
      <span className="row-name">{say("desk.job")}</span>
      <span className="row-customer">{say("desk.customer")}</span>
      <span className="row-stage">{say("desk.stage")}</span>
      <span className="row-when">{say("desk.changed")}</span>
    </div>
  );
}

function JobRow({ job, index }: { readonly job: Job; readonly index: number }) {
  const words = useWords();
  const { say } = words;
  return (
    <a
      className="row"
      href={jobHash(job.id)}
      data-row={index}
      data-job={job.id}
      data-review={job.stage === "intake" ? "" : undefined}
    >
      <span className="row-name">{job.name}</span>
      <span className="row-customer">{job.customerName ?? say("desk.noCustomer")}</span>
      <span className="row-stage">
        <StageMark stage={job.stage} />
        {say(`desk.stage.${job.stage}`)}
      </span>
      <time className="row-when" dateTime={job.updatedAt}>
        {whenWords(job.updatedAt, new Date(), words)}
      </time>
    </a>
  );
}
