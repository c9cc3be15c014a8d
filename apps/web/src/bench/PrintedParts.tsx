import { valueAt } from "@tidewright/design";
import { useEffect, useState } from "react";
import { flushSync } from "react-dom";
import { partForm } from "../document/partForm.ts";
import { partTree } from "../document/partTree.ts";
import { useFormat } from "../format/useFormat.ts";
import { useBench } from "../state/bench.ts";
import { showVersions } from "../versions/versionsState.ts";
import { useWords } from "../words/useWords.ts";

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
  const states = useBench((state) => state.assessed?.assessment.parts);
  const format = useFormat();
  const flows = new Map(states?.map((part) => [part.path, part]));
  return (
    <section className="print-parts">
      <h2>{say("keeping.print.parts")}</h2>
      <table className="print-table">
        <tbody>
          {partTree(design)
            .filter(({ path }) => path !== "")
            .map(({ path, title, depth }) => {
              const state = flows.get(path);
              return (
                <tr key={path} data-depth={depth}>
                  <th scope="row">{title}</th>
                  <td>{fieldsOf(path)}</td>
                  <td className="number">{state === undefined ? "" : format(state.flow, "flow")}</td>
                  <td className="number">{state === undefined ? "" : format(state.headLoss, "head")}</td>
                </tr>
              );
            })}
        </tbody>
      </table>
      <p className="quiet">{say("keeping.printedFrom", { name: design.name, at: instant(new Date()) })}</p>
    </section>
  );

  /** What was typed for a part, in the units in which it was typed. */
  function fieldsOf(path: string): string {
    return (partForm(design, path)?.fields ?? [])
      .flatMap((field) => {
        if (field.kind !== "quantity" || field.key === "") return [];
        const value = valueAt(design, `${path}/${field.key}`) as { value: number; unit: string } | undefined;
        return value === undefined ? [] : [`${field.label} ${words.decimal(String(value.value))} ${value.unit}`];
      })
      .join(", ");
  }
}
