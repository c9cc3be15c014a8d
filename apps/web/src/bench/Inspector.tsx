import type { Assessment } from "@tidewright/advice";
import { type Design, fromPointer, toPointer } from "@tidewright/design";
import { useEffect, useRef } from "react";
import type { PartForm, PartList } from "../document/fields.ts";
import { partForm } from "../document/partForm.ts";
import { PartField } from "../fields/PartField.tsx";
import { sentence } from "../fields/setField.ts";
import { select, useBench } from "../state/bench.ts";
import { useWords, words } from "../words/useWords.ts";
import { cautionsFor } from "./cautions.ts";
import { PartReadings } from "./PartReadings.tsx";
import { RunList } from "./RunList.tsx";

/** Everything about the part in hand: what it does, what it measures, what it is made of, what to beware of. */
export function Inspector() {
  const selection = useBench((state) => state.selection);
  const design = useBench((state) => state.history.present);
  const assessment = useBench((state) => state.assessed?.assessment);
  // The form is put together in the language of the moment.
  useWords();
  const form = selection === undefined ? undefined : partForm(design, selection);
  if (form === undefined) return null;
  return <InspectorSheet key={form.path} design={design} form={form} assessment={assessment} />;
}

interface Props {
  readonly design: Design;
  readonly form: PartForm;
  readonly assessment: Assessment | undefined;
}

function InspectorSheet({ design, form, assessment }: Props) {
  const refused = useBench((state) => state.refusedEdit);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    // On one column the sheet may lie below the fold; on a wide screen it is there already.
    heading.current?.scrollIntoView({ block: "nearest" });
  }, []);
  const around = runAround(form);
  const lists = around === undefined ? form.lists : [...form.lists, around];
  const { say } = useWords();
  const cautions = cautionsFor(form);
  return (
    <section className="inspector" aria-labelledby="inspector-title" data-part={form.path}>
      <header className="sheet-head">
        <div>
          {form.within === undefined ? null : (
            <button type="button" className="within" onClick={() => select(form.within!.path)}>
              {form.within.title} ›
            </button>
          )}
          <h2 id="inspector-title" ref={heading}>
            {form.title}
          </h2>
        </div>
        <button
          type="button"
          className="icon-button"
          aria-label={say("parts.layDown")}
          onClick={() => select(undefined)}
        >
          ×
        </button>
      </header>
      {assessment === undefined ? null : <PartReadings assessment={assessment} path={form.path} />}
      {refused === undefined ? null : (
        <p className="field-problem" role="alert">
          {say("parts.notDone", { problem: sentence(refused) ?? "" })}
        </p>
      )}
      {form.fields.length === 0 ? null : (
        <div className="field-list">
          {form.fields.map((field) => (
            <PartField key={field.key} design={design} part={form.path} field={field} />
          ))}
        </div>
      )}
      {lists.map((list) => (
        <RunList key={list.path} design={design} list={list} selection={form.path} />
      ))}
      {cautions.length === 0 ? null : (
        <aside className="cautions" aria-label={say("parts.takeCare")}>
          <h3>{say("parts.takeCare")}</h3>
          {cautions.map((key) => (
            <p key={key}>{say(key)}</p>
          ))}
        </aside>
      )}
    </section>
  );
}

/** The list that a part of a run stands in, so that its neighbours are at hand. */
function runAround(form: PartForm): PartList | undefined {
  const keys = fromPointer(form.path) ?? [];
  if (keys.length < 4 || !(keys.includes("run") || keys.includes("suction"))) return undefined;
  return { path: toPointer(keys.slice(0, -1)), label: words().say("parts.lineAround"), of: "run" };
}
