import { type CSSProperties, useEffect, useState } from "react";
import { flushSync } from "react-dom";
import { useFormat } from "../format/useFormat.ts";
import { useBench } from "../state/bench.ts";
import { showVersions } from "../versions/versionsState.ts";
import { useWords } from "../words/useWords.ts";
import { printedLines } from "./printedLines.ts";

/** The parts of the design as plain text for paper, made when somebody prints and at no other time. */
export function PrintedParts() {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    // The page is painted for paper right after this, so React must not wait for its own time.
    const before = () =>
      flushSync(() => {
        // The findings belong on the sheet, and they stand where the list of versions is.
        showVersions({ open: false });
        setPrinting(true);
      });
    const after = () => setPrinting(false);
    addEventListener("beforeprint", before);
    addEventListener("afterprint", after);
    return () => {
      removeEventListener("beforeprint", before);
      removeEventListener("afterprint", after);
    };
  }, []);
  return printing ? <Parts /> : null;
}

function Parts() {
  const words = useWords();
  const { say, instant } = words;
  const design = useBench((state) => state.history.present);
  const assessment = useBench((state) => state.assessed?.assessment);
  const format = useFormat();
  return (
    <section className="print-parts">
      <h2>{say("keeping.print.parts")}</h2>
      <table className="print-table">
        <thead>
          <tr>
            <th scope="col">{say("drawing.table.part")}</th>
            <th scope="col">{say("drawing.table.built")}</th>
            <th scope="col" className="number">
              {say("drawing.table.flow")}
            </th>
            <th scope="col" className="number">
              {say("drawing.table.lost")}
            </th>
          </tr>
        </thead>
        <tbody>
          {printedLines(design, assessment, words, format).map((line) => (
            <tr
              key={line.heads ? `${line.path} over` : line.path}
              data-level={line.level}
              data-heads={line.heads ? "" : undefined}
            >
              <th scope="row" colSpan={line.heads ? 4 : undefined} style={{ "--level": line.level } as CSSProperties}>
                {line.title}
              </th>
              {line.heads ? null : (
                <>
                  <td>
                    {line.built.map(({ label, value }) => (
                      <span key={`${label} ${value}`} className="print-field">
                        {label === "" ? null : <span className="print-label">{label} </span>}
                        {value}{" "}
                      </span>
                    ))}
                  </td>
                  <td className="number">{line.flow}</td>
                  <td className="number">{line.headLost}</td>
                </>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">{say("keeping.printedFrom", { name: design.name, at: instant(new Date()) })}</p>
    </section>
  );
}
