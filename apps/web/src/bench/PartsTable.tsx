import type { Assessment } from "@tidewright/advice";
import { type Design, valueAt } from "@tidewright/design";
import { memo, useCallback, useMemo, useState } from "react";
import { useCatalogue } from "../catalogue/currentCatalogue.ts";
import type { Field } from "../document/fields.ts";
import { partForm } from "../document/partForm.ts";
import { partTree } from "../document/partTree.ts";
import { PartField } from "../fields/PartField.tsx";
import { useFormat } from "../format/useFormat.ts";
import { select, useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { DesignTools, PartTools, type Tell } from "./PartTools.tsx";

const fieldsInLine = 4;
/** What is placed by hand on the drawing has all of its places in the table. */
const placed = /^\/(overflow|tankPumps\/\d+)$/;

/** Every part of the design as a plain table: what the drawing does by pointer, this does by keyboard. */
export function PartsTable() {
  const design = useBench((state) => state.history.present);
  const assessment = useBench((state) => state.assessed?.assessment);
  const selection = useBench((state) => state.selection);
  const { say, language } = useWords();
  const catalogue = useCatalogue();
  // biome-ignore lint/correctness/useExhaustiveDependencies: titles are put together in the language of the moment, with names of the catalogue
  const lines = useMemo(() => partTree(design), [design, language, catalogue]);
  const [why, setWhy] = useState<string>();
  const tell: Tell = useCallback((text) => setWhy(text), []);
  const states = useMemo(() => new Map(assessment?.parts.map((part) => [part.path, part])), [assessment]);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className="table-scroll" tabIndex={0} aria-label={say("drawing.table.name")}>
      <DesignTools design={design} tell={tell} />
      <div role="alert">{why === undefined ? null : <p className="field-problem table-why">{why}</p>}</div>
      <table className="parts-table">
        <thead>
          <tr>
            <th scope="col">{say("drawing.table.part")}</th>
            <th scope="col">{say("drawing.table.built")}</th>
            <th scope="col" className="number">
              {say("drawing.table.flow")}
            </th>
            <th scope="col" className="number">
              {say("drawing.table.speed")}
            </th>
            <th scope="col" className="number">
              {say("drawing.table.lost")}
            </th>
            <th scope="col" className="tools-cell">
              {say("drawing.table.actions")}
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ path, title, depth }) => (
            <PartRow
              key={path}
              design={design}
              path={path}
              title={title}
              depth={depth}
              selected={selection === path}
              state={states.get(path)}
              tell={tell}
            />
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface RowProps {
  readonly design: Design;
  readonly path: string;
  readonly title: string;
  readonly depth: number;
  readonly selected: boolean;
  readonly state: Assessment["parts"][number] | undefined;
  readonly tell: Tell;
}

const PartRow = memo(function PartRow({ design, path, title, depth, selected, state, tell }: RowProps) {
  const format = useFormat();
  const { say } = useWords();
  // What may be chosen is the catalogue's.
  useCatalogue();
  return (
    <tr data-part={path} data-depth={depth} data-selected={selected ? "" : undefined}>
      <th scope="row">
        <button
          type="button"
          className="part-name"
          aria-current={selected ? "true" : undefined}
          onClick={() => select(path)}
        >
          {title}
        </button>
      </th>
      <td className="part-fields">
        {inLine(design, path).map((field) => (
          <span className="part-field" key={field.key}>
            <span className="part-field-label">{field.label}</span>
            <PartField design={design} part={path} field={field} bare />
          </span>
        ))}
      </td>
      <td className="number" data-name={say("drawing.table.flow")}>
        {state ? format(state.flow, "flow") : ""}
      </td>
      <td className="number" data-name={say("drawing.table.speed")}>
        {state ? format(state.velocity, "velocity") : ""}
      </td>
      <td className="number" data-name={say("drawing.table.lost")}>
        {state ? format(state.headLoss, "head") : ""}
      </td>
      <td className="tools-cell">
        <PartTools design={design} path={path} title={title} tell={tell} />
      </td>
    </tr>
  );
});

/** The few fields that fit on a line: those that must be given, and the optional ones that are. The rest is one press away. */
function inLine(design: Design, path: string): readonly Field[] {
  const fields = partForm(design, path)?.fields ?? [];
  return fields
    .filter(
      (field) =>
        field.kind === "quantity" || field.kind === "count" || field.kind === "share" || field.kind === "choice",
    )
    .filter(
      (field) => !field.optional || field.kind === "count" || valueAt(design, `${path}/${field.key}`) !== undefined,
    )
    .slice(0, placed.test(path) ? undefined : fieldsInLine);
}
