import { useWindowVirtualizer } from "@tanstack/react-virtual";
import { type Job, type JobStage, jobStages } from "@tidewright/protocol";
import { type KeyboardEvent, useDeferredValue, useEffect, useLayoutEffect, useMemo, useRef, useState } from "react";
import { mayWork, useSession } from "../state/session.ts";
import { useWords } from "../words/useWords.ts";
import { jobHash } from "./deskAddress.ts";
import { ImportDesign } from "./ImportDesign.tsx";
import { InviteCustomer } from "./InviteCustomer.tsx";
import { jobOrder, stageCounts } from "./jobOrder.ts";
import { KeptChoice } from "./KeptField.tsx";
import { foldedOnce, matchWords } from "./matchWords.ts";
import { StageMark } from "./StageMark.tsx";
import { useJobs } from "./shopLists.ts";
import { useListKeys } from "./useListKeys.ts";
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
  const { items, total, state } = useJobs();
  const { session } = useSession();
  const [search, setSearch] = useState(lastSearch);
  const [stage, setStage] = useState(lastStage);
  lastSearch = search;
  lastStage = stage;
  const looked = useDeferredValue(search);
  const ordered = useMemo(() => jobOrder(items), [items]);
  const matching = useMemo(() => matchWords(ordered, searched, looked), [ordered, looked]);
  const counts = useMemo(() => stageCounts(matching), [matching]);
  const shown = useMemo(
    () => (stage === undefined ? matching : matching.filter((job) => job.stage === stage)),
    [matching, stage],
  );
  const input = useRef<HTMLInputElement>(null);
  const works = mayWork(session);
  return (
    <section className="job-list" aria-labelledby="jobs-title">
      <header className="list-head">
        <h1 id="jobs-title">{say("desk.jobs")}</h1>
        {works ? <NewJobs /> : null}
      </header>
      {state === "refused" ? <p className="field-problem">{say("desk.listRefused")}</p> : null}
      {state === "whole" && total === 0 ? (
        <Nothing works={works} />
      ) : state === "unreachable" && items.length === 0 ? (
        <p className="list-empty">{say("desk.nothingKept")}</p>
      ) : (
        <>
          <div className="list-tools">
            <label className="search-field">
              <span className="field-label">{say("desk.search")}</span>
              <input
                ref={input}
                className="text-input"
                type="search"
                autoComplete="off"
                placeholder={say("desk.searchHint")}
                value={search}
                onChange={(event) => setSearch(event.target.value)}
              />
            </label>
            <KeptChoice
              className="stage-choice"
              label={say("desk.stage")}
              value={stage ?? ""}
              onChange={(value) => setStage(value === "" ? undefined : (value as JobStage))}
            >
              <option value="">{`${say("desk.allStages")} (${words.number(matching.length)})`}</option>
              {jobStages.map((each) => (
                <option key={each} value={each}>
                  {`${say(`desk.stage.${each}`)} (${words.number(counts[each])})`}
                </option>
              ))}
            </KeptChoice>
            <fieldset className="stages" aria-label={say("desk.byStage")}>
              <button type="button" aria-pressed={stage === undefined} onClick={() => setStage(undefined)}>
                {say("desk.allStages")} <span className="count">{words.number(matching.length)}</span>
              </button>
              {jobStages.map((each) =>
                counts[each] === 0 && stage !== each ? null : (
                  <button key={each} type="button" aria-pressed={stage === each} onClick={() => setStage(each)}>
                    <StageMark stage={each} />
                    {say(`desk.stage.${each}`)} <span className="count">{words.number(counts[each])}</span>
                  </button>
                ),
              )}
            </fieldset>
          </div>
          <p className="list-count quiet" role="status">
            {state === "loading" && items.length === 0
              ? say("desk.loading")
              : items.length < total
                ? say("desk.countSoFar", { shown: shown.length, loaded: items.length, total })
                : say("desk.count", { shown: shown.length, total })}
          </p>
          <Rows shown={shown} input={input} />
          {shown.length === 0 && items.length > 0 ? <p className="list-none">{say("desk.noneFound")}</p> : null}
        </>
      )}
    </section>
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

interface RowsProps {
  readonly shown: readonly Job[];
  readonly input: { readonly current: HTMLInputElement | null };
}

/** The rows in sight, of however many there are. */
function Rows({ shown, input }: RowsProps) {
  const words = useWords();
  const { say } = words;
  const list = useRef<HTMLOListElement>(null);
  const [top, setTop] = useState(0);
  const narrow = useNarrow();
  const height = narrow ? rowHeight.narrow : rowHeight.wide;
  useLayoutEffect(() => setTop(list.current?.offsetTop ?? 0), []);
  const rows = useWindowVirtualizer({
    count: shown.length,
    estimateSize: () => height,
    overscan: 8,
    scrollMargin: top,
    getItemKey: (index) => shown[index]?.id ?? index,
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: another height is another list
  useEffect(() => rows.measure(), [rows, height]);
  const keys = useListKeys({ count: shown.length, list, input, reveal: (index) => rows.scrollToIndex(index) });
  const now = new Date();
  return (
    <>
      <div className="row row-head" aria-hidden="true">
        <span className="row-name">{say("desk.job")}</span>
        <span className="row-customer">{say("desk.customer")}</span>
        <span className="row-stage">{say("desk.stage")}</span>
        <span className="row-when">{say("desk.changed")}</span>
      </div>
      <ol
        className="rows"
        ref={list}
        style={{ height: rows.getTotalSize() }}
        onKeyDown={(event: KeyboardEvent) => keys(event)}
      >
        {rows.getVirtualItems().map(({ index, start, key }) => {
          const job = shown[index];
          if (job === undefined) return null;
          return (
            <li
              key={key}
              aria-setsize={shown.length}
              aria-posinset={index + 1}
              style={{ height, transform: `translateY(${start - top}px)` }}
            >
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
                  {whenWords(job.updatedAt, now, words)}
                </time>
              </a>
            </li>
          );
        })}
      </ol>
    </>
  );
}

const narrowQuery = typeof matchMedia === "undefined" ? undefined : matchMedia("(max-width: 44rem)");
function useNarrow(): boolean {
  const [narrow, setNarrow] = useState(narrowQuery?.matches ?? false);
  useEffect(() => {
    const changed = () => setNarrow(narrowQuery?.matches ?? false);
    narrowQuery?.addEventListener("change", changed);
    return () => narrowQuery?.removeEventListener("change", changed);
  }, []);
  return narrow;
}
