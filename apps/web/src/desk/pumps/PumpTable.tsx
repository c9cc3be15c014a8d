import { writePumpCsv } from "@tidewright/catalogue";
import { useState } from "react";
import { FileDrop } from "../../fields/FileChoice.tsx";
import { mayWork, useSession } from "../../state/session.ts";
import { useWords } from "../../words/useWords.ts";
import { useTitle } from "../useTitle.ts";
import { ownPumps, pumpOf, useOwnPumps } from "./ownPumps.ts";
import { reviewTable, type TableReview } from "./reviewTable.ts";
import { saveText } from "./saveText.ts";
import { decodeTable, sheetText } from "./sheetText.ts";
import { TableReviewed } from "./TableReviewed.tsx";
import { headingMeanings, templateCsv } from "./templatePump.ts";
import "./pumps.css";

/** Largest table that is read [bytes], as the server takes files. */
const largest = 20e6;

type Read =
  | { readonly is: "reading"; readonly name: string }
  | { readonly is: "refused"; readonly why: string }
  | { readonly is: "read"; readonly name: string; readonly text: string; readonly review: TableReview };

/** Pumps as a table: in with a review, out as a file, and what the columns mean. */
export function PumpTable() {
  const words = useWords();
  const { say, language } = words;
  const { session } = useSession();
  const works = mayWork(session);
  const { items } = useOwnPumps();
  const pumps = items.flatMap((row) => pumpOf(row) ?? []);
  useTitle(say("pumps.table.title"));
  return (
    <article className="pump-page pump-table-page">
      <nav className="sheet-path" aria-label={say("desk.path")}>
        <a href="#/pumps">{say("pumps.title")}</a>
      </nav>
      <h1>{say("pumps.table.title")}</h1>
      {works ? <TableIn /> : <p className="pump-note">{say("pumps.mayNotChange")}</p>}
      <section className="desk-block">
        <h2>{say("pumps.table.out")}</h2>
        <p className="quiet">{say("pumps.table.outExplain")}</p>
        <div className="block-hands">
          <button
            type="button"
            className="action"
            disabled={pumps.length === 0}
            onClick={() => saveText("pumps.csv", sheetText(writePumpCsv(pumps), language))}
          >
            {say("pumps.table.save", { count: pumps.length })}
          </button>
          <button
            type="button"
            className="action"
            onClick={() => saveText("pumps-template.csv", sheetText(templateCsv(words), language))}
          >
            {say("pumps.table.template")}
          </button>
        </div>
        <details>
          <summary>{say("pumps.table.headings")}</summary>
          <p className="quiet">{say("pumps.table.headingsExplain")}</p>
          <table className="heading-table">
            <thead>
              <tr>
                <th scope="col">{say("pumps.table.heading")}</th>
                <th scope="col">{say("pumps.table.holds")}</th>
              </tr>
            </thead>
            <tbody>
              {headingMeanings(words).map(({ heading, meaning, needed }) => (
                <tr key={heading}>
                  <th scope="row">
                    {heading}
                    {needed ? <span className="pump-mark">{say("pumps.table.needed")}</span> : null}
                  </th>
                  <td>{say(meaning)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      </section>
    </article>
  );
}

function TableIn() {
  const { say } = useWords();
  const [read, setRead] = useState<Read>();
  const open = async (file: File) => {
    if (file.size > largest) {
      setRead({ is: "refused", why: say("pumps.table.large", { name: file.name }) });
      return;
    }
    setRead({ is: "reading", name: file.name });
    // What is kept may have changed since the page was opened.
    const [bytes] = await Promise.all([file.arrayBuffer(), ownPumps.refresh()]);
    const text = decodeTable(new Uint8Array(bytes));
    setRead(
      text === undefined
        ? { is: "refused", why: say("pumps.table.binary", { name: file.name }) }
        : { is: "read", name: file.name, text, review: reviewTable(text, known()) },
    );
  };
  return (
    <section className="desk-block">
      <h2>{say("pumps.table.in")}</h2>
      <p className="quiet">{say("pumps.table.inExplain")}</p>
      <FileDrop
        label={say("pumps.table.choose")}
        accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain"
        onFiles={([file]) => {
          if (file) void open(file);
        }}
      >
        <span className="quiet">{say("pumps.table.drop")}</span>
      </FileDrop>
      {read === undefined ? null : read.is === "read" ? (
        <TableReviewed
          key={read.text}
          name={read.name}
          review={read.review}
          onAgain={() => setRead({ ...read, review: reviewTable(read.text, known()) })}
          onClose={() => setRead(undefined)}
        />
      ) : (
        <p className={read.is === "refused" ? "field-problem" : "quiet"} role="status">
          {read.is === "refused" ? read.why : say("pumps.table.reading", { name: read.name })}
        </p>
      )}
    </section>
  );
}

/** The shop's own pumps of this moment, to compare a table with. */
const known = () => ownPumps.store.get().items.map((row) => ({ id: row.id, version: row.version, pump: pumpOf(row) }));
