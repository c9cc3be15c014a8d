import { type Customer, type CustomerFields, type Erasure, routes } from "@tidewright/protocol";
import { useMemo, useState } from "react";
import { ask } from "../api/ask.ts";
import { Sheet } from "../bench/Sheet.tsx";
import { Problem } from "../fields/Problem.tsx";
import { mayRule } from "../state/mayRule.ts";
import { mayWork, useSession } from "../state/session.ts";
import { useWords } from "../words/useWords.ts";
import { jobHash } from "./deskAddress.ts";
import { jobOrder } from "./jobOrder.ts";
import { KeptText } from "./KeptField.tsx";
import { Missing } from "./Missing.tsx";
import { RecordTitle } from "./RecordTitle.tsx";
import type { RecordKeeper } from "./recordKeeper.ts";
import { customerSource } from "./recordSources.ts";
import { refusalWords } from "./refusalWords.ts";
import { StageMark } from "./StageMark.tsx";
import { customers, jobs, useJobs } from "./shopLists.ts";
import { dropDrafts } from "./typedDrafts.ts";
import { shownField, useKeeper, useKept } from "./useKeeper.ts";
import { whenWords } from "./whenWords.ts";

/** One customer: how to reach them, what to know, their jobs, and the end of their data. */
export function CustomerPage({ customerId }: { readonly customerId: string }) {
  const source = useMemo(() => customerSource(customerId), [customerId]);
  const { keeper, missing } = useKeeper(source);
  const { say } = useWords();
  if (keeper === undefined)
    return (
      <Missing
        missing={missing}
        notFound={say("desk.missing.customer")}
        back="#/customers"
        all={say("desk.allCustomers")}
      />
    );
  return <CustomerSheet keeper={keeper} />;
}

function CustomerSheet({ keeper }: { readonly keeper: RecordKeeper<Customer, CustomerFields> }) {
  const { say } = useWords();
  const kept = useKept(keeper);
  const { session } = useSession();
  const readOnly = !mayWork(session);
  const owns = mayRule(session);
  const { record: customer } = kept;
  const leave = () => void keeper.flush();
  return (
    <article className="job-page">
      <RecordTitle of="customer" keeper={keeper} kept={kept} readOnly={readOnly} />
      <div className="job-columns">
        <div className="job-main">
          <JobsOf customer={customer} readOnly={readOnly} />
        </div>
        <div className="job-side">
          <section className="desk-block">
            <h2>{say("desk.aboutCustomer")}</h2>
            <div className="field-list">
              <KeptText
                label={say("desk.contact")}
                hint={say("desk.contactHint")}
                value={shownField(kept, "contact")}
                lines={3}
                most={2000}
                readOnly={readOnly}
                onChange={(text) => keeper.change({ contact: text })}
                onLeave={leave}
              />
              <KeptText
                label={say("desk.notes")}
                value={shownField(kept, "notes")}
                lines={4}
                most={20_000}
                readOnly={readOnly}
                onChange={(text) => keeper.change({ notes: text })}
                onLeave={leave}
              />
            </div>
          </section>
        </div>
      </div>
      {owns ? <Erasing customer={customer} /> : null}
    </article>
  );
}

function JobsOf({ customer, readOnly }: { readonly customer: Customer; readonly readOnly: boolean }) {
  const words = useWords();
  const { say } = words;
  const { items } = useJobs();
  const [problem, setProblem] = useState<string>();
  const theirs = useMemo(
    () => jobOrder(items.filter(({ customerId }) => customerId === customer.id)),
    [items, customer.id],
  );
  const begin = async () => {
    const answer = await ask(routes.createJob, {
      body: {
        name: say("desk.jobFor", { name: customer.name }).slice(0, 200),
        customerId: customer.id,
        stage: "designing",
      },
    });
    if (!answer.ok) {
      setProblem(refusalWords(answer, words));
      return;
    }
    jobs.put(answer.value);
    location.hash = jobHash(answer.value.id);
  };
  return (
    <section className="desk-block">
      <div className="block-head">
        <h2>{say("desk.jobs")}</h2>
        {readOnly ? null : (
          <button type="button" className="action" onClick={() => void begin()}>
            {say("desk.newJob")}
          </button>
        )}
      </div>
      <Problem text={problem} />
      {theirs.length === 0 ? <p className="quiet">{say("desk.noJobsOfCustomer")}</p> : null}
      <ul className="plain-list">
        {theirs.map((job) => (
          <li key={job.id}>
            <a className="row row-short" href={jobHash(job.id)}>
              <span className="row-name">{job.name}</span>
              <span className="row-stage">
                <StageMark stage={job.stage} />
                {say(`desk.stage.${job.stage}`)}
              </span>
              <span className="row-when">{whenWords(job.updatedAt, new Date(), words)}</span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Erasing({ customer }: { readonly customer: Customer }) {
  const words = useWords();
  const { say } = words;
  const [open, setOpen] = useState(false);
  const [sure, setSure] = useState(false);
  const [done, setDone] = useState<Erasure>();
  const [problem, setProblem] = useState<string>();
  const erase = async () => {
    const answer = await ask(routes.eraseCustomer, { params: { customerId: customer.id } });
    if (!answer.ok) {
      setProblem(refusalWords(answer, words));
      return;
    }
    try {
      dropDrafts(localStorage, "customer", customer.id);
    } catch {
      // Storage that is closed holds nothing of them either.
    }
    setDone(answer.value);
    await Promise.all([customers.refresh(), jobs.refresh()]);
  };
  return (
    <footer className="job-ends">
      <button type="button" className="action action-warn" onClick={() => setOpen(true)}>
        {say("desk.erase")}
      </button>
      <Sheet
        name="erase"
        title={say("desk.eraseTitle", { name: customer.name })}
        open={open}
        onClose={() => {
          setOpen(false);
          if (done !== undefined) location.hash = "#/customers";
        }}
      >
        {done === undefined ? (
          <form
            className="field-list"
            onSubmit={(event) => {
              event.preventDefault();
              void erase();
            }}
          >
            <h3>{say("desk.eraseGoes")}</h3>
            <p>{say("desk.eraseGoesText")}</p>
            <h3>{say("desk.eraseStays")}</h3>
            <p>{say("desk.eraseStaysText")}</p>
            <p className="caution">{say("desk.eraseBackups")}</p>
            <label className="field-check">
              <input type="checkbox" checked={sure} onChange={(event) => setSure(event.target.checked)} />
              {say("desk.eraseSure")}
            </label>
            <Problem text={problem} />
            <p className="sheet-actions">
              <button type="submit" className="action action-warn" disabled={!sure}>
                {say("desk.eraseNow")}
              </button>
            </p>
          </form>
        ) : (
          <div role="status" className="field-list">
            <p>
              {say("desk.erased", {
                jobs: done.jobsUnnamed,
                files: done.filesErased,
                links: done.linksRemoved,
                designs: done.designsKept,
              })}
            </p>
            <p className="sheet-actions">
              <a className="action action-strong" href="#/customers">
                {say("desk.allCustomers")}
              </a>
            </p>
          </div>
        )}
      </Sheet>
    </footer>
  );
}
