import { type Design, fromPointer, type Part, toPointer, valueAt } from "@tidewright/design";
import { memo } from "react";
import type { Field, PartList } from "../document/fields.ts";
import { newEntry, newParts, seriesAround } from "../document/newParts.ts";
import { fieldsOfPart, partForm } from "../document/partForm.ts";
import { PartField } from "../fields/PartField.tsx";
import { edit, presentDesign, select } from "../state/bench.ts";

interface Props {
  readonly design: Design;
  readonly list: PartList;
  readonly selection: string | undefined;
}

const nouns: Readonly<Record<PartList["of"], string>> = {
  run: "part",
  pump: "pump",
  chamber: "chamber",
  drain: "drain",
  loop: "loop",
  circuit: "circuit",
  zone: "zone",
  tankPump: "pump",
};

/** A list of the design in its order: each entry can be taken in hand, moved, and taken out; new ones are added anywhere. */
export const RunList = memo(function RunList({ design, list, selection }: Props) {
  const entries = (valueAt(design, list.path) ?? []) as readonly unknown[];
  const remove = (place: number) => {
    const alone = entries.length === 1 && mayVanish(list.path);
    const path = alone ? list.path : `${list.path}/${place}`;
    if (edit([{ op: "remove", path }], { label: `take out ${nouns[list.of]} ${place + 1}` }) === undefined)
      select(parentOf(list.path));
  };
  const move = (place: number, to: number) =>
    edit([{ op: "move", from: `${list.path}/${place}`, path: `${list.path}/${to}` }], {
      label: `move ${nouns[list.of]} ${place + 1}`,
    });
  const add = (value: unknown, place: number) => {
    const missing = valueAt(design, list.path) === undefined;
    const made = missing
      ? edit([{ op: "set", path: list.path, value: [value] }], { label: `add ${nouns[list.of]}` })
      : edit([{ op: "insert", path: `${list.path}/${place}`, value }], { label: `add ${nouns[list.of]}` });
    if (made === undefined) select(`${list.path}/${place}`);
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
                  aria-label={`Move up: ${title}`}
                  disabled={place === 0}
                  onClick={() => move(place, place - 1)}
                >
                  ↑
                </button>
                <button
                  type="button"
                  className="hand"
                  aria-label={`Move down: ${title}`}
                  disabled={place === entries.length - 1}
                  onClick={() => move(place, place + 1)}
                >
                  ↓
                </button>
                <button type="button" className="hand" aria-label={`Take out: ${title}`} onClick={() => remove(place)}>
                  ×
                </button>
              </span>
            </li>
          );
        })}
      </ol>
      {list.of === "run" ? (
        <RunAdder entries={entries as readonly Part[]} selected={placeIn(list.path, selection)} add={add} />
      ) : (
        <button type="button" className="action" onClick={() => add(newEntry(presentDesign(), list), entries.length)}>
          Add a {nouns[list.of]}
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
  readonly entries: readonly Part[];
  readonly selected: number | undefined;
  add(value: unknown, place: number): void;
}

/** Adds after the part in hand; else before the closing outlet or tee, since nothing can follow those. */
function RunAdder({ entries, selected, add }: AdderProps) {
  const last = entries.at(-1);
  const end = last?.kind === "outlet" || last?.kind === "tee" ? entries.length - 1 : entries.length;
  const place = Math.min(selected === undefined ? end : selected + 1, end);
  return (
    <label className="adder">
      <span>{selected === undefined ? "Add to the line" : `Add after part ${Math.min(selected + 1, end)}`}</span>
      <select
        className="select"
        value=""
        onChange={(event) => {
          const part = newParts.find(({ label }) => label === event.target.value);
          if (part !== undefined) add(part.make(seriesAround(entries, place)), place);
        }}
      >
        <option value="">choose…</option>
        {newParts.map(({ label }) => (
          <option key={label}>{label}</option>
        ))}
      </select>
    </label>
  );
}

/** The one field of an entry that is changed most, for its line in the list. */
function mainField(design: Design, list: PartList, entry: unknown): Field | undefined {
  if (list.of === "run") {
    const field = fieldsOfPart(entry as Part, design)[0];
    return field?.kind === "choice" ? undefined : field;
  }
  if (list.of === "pump" || list.of === "tankPump")
    return { kind: "share", key: "speed", label: "Speed", optional: true };
  if (list.of === "chamber") return { kind: "quantity", key: "length", label: "Length", dimension: "length" };
  if (list.of === "circuit") return { kind: "quantity", key: "rating", label: "Breaker rating", dimension: "current" };
  if (list.of === "zone") return { kind: "share", key: "share", label: "Share of the display", optional: true };
  return undefined;
}

const mayVanish = (path: string) => /\/(suction|circuits|zones)$|^\/tankPumps$/.test(path);
const parentOf = (path: string) => toPointer((fromPointer(path) ?? []).slice(0, -1));

function placeIn(list: string, selection: string | undefined): number | undefined {
  if (selection === undefined || !selection.startsWith(`${list}/`)) return undefined;
  const place = Number(selection.slice(list.length + 1));
  return Number.isInteger(place) ? place : undefined;
}
