import { type Design, fromPointer, type Part, toPointer, valueAt } from "@tidewright/design";
import {
  type Addition,
  addThing,
  choiceLooks,
  insertPart,
  type PartChoice,
  partChoiceNames,
  plainPart,
  removePart,
} from "@tidewright/editor";
import { memo, useState } from "react";
import { useCatalogue } from "../catalogue/currentCatalogue.ts";
import type { Field, PartList } from "../document/fields.ts";
import { newEntry } from "../document/newParts.ts";
import { fieldsOfPart, partForm } from "../document/partForm.ts";
import { perform } from "../drawing/perform.ts";
import { PartField } from "../fields/PartField.tsx";
import { edit, presentDesign, select } from "../state/bench.ts";
import { problemWords } from "../words/problemWords.ts";
import { useWords, words } from "../words/useWords.ts";

interface Props {
  readonly design: Design;
  readonly list: PartList;
  readonly selection: string | undefined;
}

/** A list of the design in its order: each entry can be taken in hand, moved, and taken out; new ones are added anywhere. */
export const RunList = memo(function RunList({ design, list, selection }: Props) {
  const { say } = useWords();
  // Titles are names of the catalogue.
  useCatalogue();
  const [why, setWhy] = useState<string>();
  const entries = (valueAt(design, list.path) ?? []) as readonly unknown[];
  const remove = (place: number) => {
    if (list.of !== "circuit" && list.of !== "zone") {
      setWhy(perform(removePart(presentDesign(), `${list.path}/${place}`)));
      return;
    }
    const path = entries.length === 1 ? list.path : `${list.path}/${place}`;
    if (edit([{ op: "remove", path }], { label: say("drawing.step.remove") }) === undefined)
      select(parentOf(list.path));
  };
  const move = (place: number, to: number) =>
    edit([{ op: "move", from: `${list.path}/${place}`, path: `${list.path}/${to}` }], {
      label: say("drawing.step.move", { what: say(`drawing.list.${list.of}`) }),
    });
  const add = () => {
    const what = additions[list.of];
    if (what !== undefined) {
      setWhy(perform(addThing(presentDesign(), what, list.path)));
      return;
    }
    const value = newEntry(presentDesign(), list);
    const missing = valueAt(design, list.path) === undefined;
    const label = say("drawing.list.add", { what: say(`drawing.list.${list.of}`) });
    const made = missing
      ? edit([{ op: "set", path: list.path, value: [value] }], { label })
      : edit([{ op: "insert", path: `${list.path}/${entries.length}`, value }], { label });
    if (made === undefined) select(`${list.path}/${entries.length}`);
  };
  return (
    <section className="run" aria-label={list.label}>
      <h3 className="run-title">{list.label}</h3>
      <ol className="run-list">
        {entries.map((entry, place) => {
          const path = `${list.path}/${place}`;
          const title = partForm(design, path)?.title ?? path;
          const key = mainField(design, list, entry);
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: the place is what tells two equal parts of a run apart
            <li key={place} className="run-part" data-selected={selection === path ? "" : undefined}>
              <button
                type="button"
                className="run-name"
                aria-current={selection === path ? "true" : undefined}
                onClick={() => select(path)}
              >
                <span className="run-place">{place + 1}</span> {title}
              </button>
              <span className="run-main">
                {key === undefined ? null : <PartField design={design} part={path} field={key} bare />}
              </span>
              <span className="run-hands">
                <button
                  type="button"
                  className="hand"
                  aria-label={say("drawing.table.up", { part: title })}
                  disabled={place === 0}
                  onClick={() => move(place, place - 1)}
                >
                  ↑
                </button>
                <button
                  type="button"
                  className="hand"
                  aria-label={say("drawing.table.down", { part: title })}
                  disabled={place === entries.length - 1}
                  onClick={() => move(place, place + 1)}
                >
                  ↓
                </button>
                <button
                  type="button"
                  className="hand"
                  aria-label={say("drawing.table.remove", { part: title })}
                  onClick={() => remove(place)}
                >
                  ×
                </button>
              </span>
            </li>
          );
        })}
      </ol>
      {why === undefined ? null : (
        <p className="field-problem" role="alert">
          {why}
        </p>
      )}
      {list.of === "run" ? (
        <RunAdder
          list={list.path}
          entries={entries as readonly Part[]}
          selected={placeIn(list.path, selection)}
          tell={setWhy}
        />
      ) : (
        <button type="button" className="action" onClick={add}>
          {say("drawing.list.add", { what: say(`drawing.list.${list.of}`) })}
        </button>
      )}
    </section>
  );
}, sameList);

/** A list is described anew each time; what counts is which list it is, what it holds and which places it may name. */
function sameList(before: Props, now: Props): boolean {
  const { list: a } = before;
  const { list: b } = now;
  return (
    valueAt(before.design, a.path) === valueAt(now.design, b.path) &&
    before.design.sump.chambers === now.design.sump.chambers &&
    before.selection === now.selection &&
    a.path === b.path &&
    a.label === b.label &&
    a.of === b.of
  );
}

interface AdderProps {
  readonly list: string;
  readonly entries: readonly Part[];
  readonly selected: number | undefined;
  tell(why: string | undefined): void;
}

/** Adds after the part in hand; else before the closing outlet or tee, since nothing can follow those. */
function RunAdder({ list, entries, selected, tell }: AdderProps) {
  const { say } = useWords();
  const place = selected ?? entries.length - 1;
  const add = (choice: PartChoice) => {
    if (entries.length > 0) return perform(insertPart(presentDesign(), { path: `${list}/${place}`, share: 1 }, choice));
    // A line that is not there yet begins with its first part.
    const part = plainPart(choice, "pn16-32", presentDesign().display.length.unit);
    const problem =
      part &&
      edit([{ op: "set", path: list, value: [part] }], {
        label: say("drawing.step.insert", { part: say(choiceLooks[choice].name) }),
      });
    return problem && say("drawing.why.notSound", problemWords(problem));
  };
  return (
    <label className="adder">
      <span>
        {selected === undefined ? say("drawing.list.addToLine") : say("drawing.list.addAfter", { place: selected + 1 })}
      </span>
      <select className="select" value="" onChange={(event) => tell(add(event.target.value as PartChoice))}>
        <option value="">{say("drawing.table.choose")}</option>
        {partChoiceNames.map((choice) => (
          <option key={choice} value={choice}>
            {say(choiceLooks[choice].name)}
          </option>
        ))}
      </select>
    </label>
  );
}

/** What is added to a list as the drawing adds it; the rest is made from the drawer. */
const additions: Readonly<Partial<Record<PartList["of"], Addition>>> = {
  pump: "pumpBeside",
  chamber: "chamber",
  drain: "drain",
  loop: "sideLoop",
  tankPump: "tankPump",
};

/** The one field of an entry that is changed most, for its line in the list. */
function mainField(design: Design, list: PartList, entry: unknown): Field | undefined {
  if (list.of === "run") {
    const field = fieldsOfPart(entry as Part, design)[0];
    return field?.kind === "choice" ? undefined : field;
  }
  if (list.of === "pump" || list.of === "tankPump")
    return { kind: "share", key: "speed", label: words().say("drawing.quantity.speed"), optional: true };
  if (list.of === "chamber")
    return { kind: "quantity", key: "length", label: words().say("drawing.quantity.length"), dimension: "length" };
  if (list.of === "circuit")
    return { kind: "quantity", key: "rating", label: words().say("drawing.quantity.rating"), dimension: "current" };
  if (list.of === "zone")
    return { kind: "share", key: "share", label: words().say("drawing.quantity.share"), optional: true };
  return undefined;
}

const parentOf = (path: string) => toPointer((fromPointer(path) ?? []).slice(0, -1));

function placeIn(list: string, selection: string | undefined): number | undefined {
  if (selection === undefined || !selection.startsWith(`${list}/`)) return undefined;
  const place = Number(selection.slice(list.length + 1));
  return Number.isInteger(place) ? place : undefined;
}
