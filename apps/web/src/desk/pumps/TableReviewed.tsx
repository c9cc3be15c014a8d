import { type CatalogueProblem, demoCatalogue, findPump } from "@tidewright/catalogue";
import { sayAgain } from "@tidewright/words";
import { type ReactNode, useEffect, useRef, useState } from "react";
import { useFormat } from "../../format/useFormat.ts";
import { useWords } from "../../words/useWords.ts";
import { refusalWords } from "../refusalWords.ts";
import { nameOf, ownPumps, sendPump } from "./ownPumps.ts";
import { differences } from "./pumpValues.ts";
import type { Arriving, TableReview } from "./reviewTable.ts";

interface Props {
  readonly name: string;
  readonly review: TableReview;
  /** Compares the table with what is kept now. */
  onAgain(): void;
  onClose(): void;
}

type Keeping =
  | { readonly is: "asking" }
  | { readonly is: "keeping"; readonly done: number; readonly total: number }
  | { readonly is: "kept"; readonly count: number; readonly failed: number; readonly why: string };

/** What a table would do to the shop's pumps, and the word that it may. */
export function TableReviewed({ name, review, onAgain, onClose }: Props) {
  const words = useWords();
  const { say } = words;
  const [keeping, setKeeping] = useState<Keeping>({ is: "asking" });
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), []);
  const good = [...review.added, ...review.changed];
  const keep = async () => {
    let count = 0;
    let failed = 0;
    let why = "";
    setKeeping({ is: "keeping", done: 0, total: good.length });
    for (const { pump, version } of good) {
      const answer = await sendPump(pump, version);
      if (answer.ok) count += 1;
      else {
        failed += 1;
        why = refusalWords(answer, words);
        // Without the server every other row would wait for nothing.
        if (answer.reason === "unreachable") {
          failed = good.length - count;
          break;
        }
      }
      setKeeping({ is: "keeping", done: count + failed, total: good.length });
    }
    await ownPumps.refresh();
    setKeeping({ is: "kept", count, failed, why });
    onAgain();
  };
  const count = good.length;
  return (
    <section className="table-review" aria-labelledby="review-title">
      <h3 id="review-title" ref={head} tabIndex={-1}>
        {say("pumps.table.read", { name })}
      </h3>
      {count === 0 && review.same.length === 0 ? <p>{say("pumps.table.nothing")}</p> : null}
      <Problems title={say("pumps.table.wrong", { count: review.wrong.length })} problems={review.wrong} open />
      <Pumps title={say("pumps.table.newPumps", { count: review.added.length })} pumps={review.added} />
      <Changes title={say("pumps.table.changedPumps", { count: review.changed.length })} pumps={review.changed} />
      <Problems title={say("pumps.table.doubtful", { count: review.doubts.length })} problems={review.doubts} />
      {review.same.length === 0 ? null : (
        <p className="quiet">
          {say("pumps.table.samePumps", { count: review.same.length })}: {review.same.map(nameOf).join(", ")}
        </p>
      )}
      <p className="review-said" role="status">
        {keeping.is === "keeping" ? say("pumps.table.keeping", { done: keeping.done, total: keeping.total }) : ""}
        {keeping.is === "kept" && keeping.count > 0 ? say("pumps.table.kept", { count: keeping.count }) : ""}
        {keeping.is === "kept" && keeping.failed > 0 ? (
          <span className="field-problem">
            {say("pumps.table.notKept", { count: keeping.failed, why: keeping.why })}
          </span>
        ) : null}
      </p>
      <p className="block-hands">
        {count === 0 ? (
          <a className="action" href="#/pumps">
            {say("pumps.all")}
          </a>
        ) : (
          <>
            <button
              type="button"
              className="action action-strong"
              disabled={keeping.is === "keeping"}
              onClick={() => void keep()}
            >
              {say("pumps.table.keep", { count })}
            </button>
            <button type="button" className="tool" disabled={keeping.is === "keeping"} onClick={onClose}>
              {say("pumps.table.cancel")}
            </button>
          </>
        )}
      </p>
    </section>
  );
}

/** A part of the review; long ones are opened by hand. */
function Part({
  title,
  open,
  children,
}: {
  readonly title: string;
  readonly open: boolean;
  readonly children: ReactNode;
}) {
  return (
    <details open={open}>
      <summary>{title}</summary>
      {children}
    </details>
  );
}

/** How many entries a part shows without being asked. */
const few = 20;

function Pumps({ title, pumps }: { readonly title: string; readonly pumps: readonly Arriving[] }) {
  const { say } = useWords();
  if (pumps.length === 0) return null;
  return (
    <Part title={title} open={pumps.length <= few}>
      <ul className="review-list">
        {pumps.map(({ pump }) => (
          <li key={pump.id}>
            <span className="review-name">{nameOf(pump)}</span> <span className="quiet">{pump.id}</span>
            {pump.placements.map((placement) => (
              <span key={placement} className="quiet">
                {" "}
                · {say(`pumps.place.${placement}`)}
              </span>
            ))}
            {findPump(demoCatalogue, pump.id) === undefined ? null : (
              <p className="field-doubt">{capital(say("pumps.doubt.shadows"))}.</p>
            )}
          </li>
        ))}
      </ul>
    </Part>
  );
}

function Changes({ title, pumps }: { readonly title: string; readonly pumps: readonly Arriving[] }) {
  const words = useWords();
  const format = useFormat();
  if (pumps.length === 0) return null;
  return (
    <Part title={title} open={pumps.length <= few}>
      <ul className="review-list">
        {pumps.map(({ pump, before }) => (
          <li key={pump.id}>
            <span className="review-name">{nameOf(pump)}</span> <span className="quiet">{pump.id}</span>
            <ul>
              {(before === undefined ? [] : differences(before, pump, words, format)).map((difference) => (
                <li key={difference.field}>
                  {difference.before === difference.after
                    ? `${difference.field}: ${difference.after}`
                    : words.say("pumps.table.was", { ...difference })}
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
    </Part>
  );
}

interface ProblemsProps {
  readonly title: string;
  readonly problems: readonly CatalogueProblem[];
  readonly open?: boolean;
}

/** Problems by row and column, all of them. */
function Problems({ title, problems, open = false }: ProblemsProps) {
  const words = useWords();
  const { say } = words;
  if (problems.length === 0) return null;
  const again = (text: string) => sayAgain(text, words, "pumpProblems");
  return (
    <Part title={title} open={open}>
      <ul className="review-list review-problems">
        {problems.map(({ row, column, value, problem, fix, id, severity }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two problems may be alike to the letter, and the list never changes
          <li key={index}>
            <span className="review-where">
              {row === 1 ? say("pumps.table.wholeTable") : say("pumps.table.row", { row })}
              {column === "" ? "" : ` · ${column}`}
              {id === "" || row === 1 ? "" : ` · ${id}`}
            </span>
            <span className={severity === "doubt" ? "field-doubt" : "field-problem"}>
              {value === "" || value === column
                ? say("pumps.table.problemAlone", { problem: capital(again(problem)), fix: capital(again(fix)) })
                : say("pumps.table.problem", {
                    value: again(value),
                    problem: again(problem),
                    fix: capital(again(fix)),
                  })}
            </span>
          </li>
        ))}
      </ul>
    </Part>
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
