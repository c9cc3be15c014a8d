import "./partTools.css";
import { type Design, fromPointer, toPointer, valueAt } from "@tidewright/design";
import {
  type Addition,
  actionsFor,
  actOn,
  additionNames,
  addThing,
  choiceLooks,
  insertPart,
  type PartAction,
  type PartChoice,
  partChoiceNames,
  removePart,
  runPartAt,
} from "@tidewright/editor";
import { useState } from "react";
import { placeChoices } from "../document/choices.ts";
import { partTree } from "../document/partTree.ts";
import { drawBetween, perform } from "../drawing/perform.ts";
import { edit, presentDesign, rankLoop, select, show } from "../state/bench.ts";
import { problemWords } from "../words/problemWords.ts";
import { useWords } from "../words/useWords.ts";

/** Says why something was not done. */
export type Tell = (why: string | undefined) => void;

interface Props {
  readonly design: Design;
  readonly path: string;
  readonly title: string;
  readonly tell: Tell;
}

/** What the drawing does with a part, as buttons: insert behind it, move it along its line, take it out, and the rest. */
export function PartTools({ design, path, title, tell }: Props) {
  const { say } = useWords();
  const list = listOf(path);
  const inRun = runPartAt(design, path) !== undefined;
  const more = actionsFor(design, path).filter(({ action }) => !ownControls.has(action));
  const removable = list !== undefined;
  if (!inRun && !removable && more.length === 0) return null;
  return (
    <span className="part-tools">
      <select
        className="select part-more"
        aria-label={say("drawing.table.moreOf", { part: title })}
        value=""
        onChange={(event) => tell(act(path, event.target.value))}
      >
        <option value="">{say("drawing.table.more")}</option>
        {more.map(({ action, name }) => (
          <option key={action} value={action}>
            {say(name)}
          </option>
        ))}
        {inRun ? (
          <optgroup label={say("drawing.act.insertAfter")}>
            {partChoiceNames.map((choice) => (
              <option key={choice} value={`${putIn}${choice}`}>
                {say(choiceLooks[choice].name)}
              </option>
            ))}
          </optgroup>
        ) : null}
      </select>
      {list === undefined ? null : (
        <>
          <Mover design={design} list={list} by={-1} title={title} tell={tell} />
          <Mover design={design} list={list} by={1} title={title} tell={tell} />
          <button
            type="button"
            className="hand"
            aria-label={say("drawing.table.remove", { part: title })}
            onClick={() => tell(perform(removePart(presentDesign(), path)))}
          >
            ×
          </button>
        </>
      )}
    </span>
  );
}

const putIn = "insert ";

/** Actions that have a control of their own in a table, or a field. */
const ownControls: ReadonlySet<PartAction> = new Set(["edit", "insertAfter", "insertBefore", "route", "remove"]);

function act(path: string, chosen: string): string | undefined {
  if (chosen.startsWith(putIn)) {
    const choice = chosen.slice(putIn.length) as PartChoice;
    return perform(insertPart(presentDesign(), { path, share: 1 }, choice));
  }
  const action = chosen as PartAction;
  if (action === "branch") return perform(insertPart(presentDesign(), { path, share: 1 }, "tee"));
  if (action === "choosePump") {
    rankLoop(Number(/^\/loops\/(\d+)/.exec(path)?.[1] ?? 0));
    show({ tab: "pumps", drawerOpen: true });
    return undefined;
  }
  const outcome = actOn(presentDesign(), path, action);
  return outcome === undefined ? undefined : perform(outcome);
}

interface Listed {
  readonly base: string;
  readonly place: number;
}

function Mover(props: {
  readonly design: Design;
  readonly list: Listed;
  readonly by: 1 | -1;
  readonly title: string;
  readonly tell: Tell;
}) {
  const { design, list, by, title, tell } = props;
  const { say } = useWords();
  const count = ((valueAt(design, list.base) ?? []) as readonly unknown[]).length;
  const to = list.place + by;
  return (
    <button
      type="button"
      className="hand"
      aria-label={say(by < 0 ? "drawing.table.up" : "drawing.table.down", { part: title })}
      disabled={to < 0 || to >= count}
      onClick={() => {
        const problem = edit([{ op: "move", from: `${list.base}/${list.place}`, path: `${list.base}/${to}` }], {
          label: say("drawing.step.move", { what: title }),
        });
        tell(problem && say("drawing.why.notSound", problemWords(problem)));
        if (problem === undefined) select(`${list.base}/${to}`);
      }}
    >
      {by < 0 ? "↑" : "↓"}
    </button>
  );
}

/** The list that a part stands in, where it is one of several. */
function listOf(path: string): Listed | undefined {
  const keys = fromPointer(path) ?? [];
  const place = Number(keys.at(-1));
  if (keys.length < 2 || !Number.isInteger(place)) return undefined;
  return { base: toPointer(keys.slice(0, -1)), place };
}

/** Adds to the design as a whole, and draws lines from place to place. */
export function DesignTools({ design, tell }: { readonly design: Design; readonly tell: Tell }) {
  const { say } = useWords();
  const places = placeChoices(design);
  const [from, setFrom] = useState("");
  const [to, setTo] = useState("");
  return (
    <form
      className="design-tools"
      onSubmit={(event) => {
        event.preventDefault();
        tell(drawBetween(from, to));
      }}
    >
      <label>
        <span>{say("drawing.add.title")}</span>
        <select
          className="select design-add"
          value=""
          onChange={(event) => tell(perform(addThing(presentDesign(), event.target.value as Addition, "/loops/0")))}
        >
          <option value="">{say("drawing.table.add")}</option>
          {additionNames.map((what) => (
            <option key={what} value={what}>
              {say(`drawing.add.${what}`)}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span>{say("drawing.table.drawFrom")}</span>
        <select className="select line-from" value={from} onChange={(event) => setFrom(event.target.value)}>
          <option value="">–</option>
          {places.map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
          <optgroup label={say("drawing.table.parts")}>
            {beginnings(design).map(({ path, title }) => (
              <option key={path} value={path}>
                {title}
              </option>
            ))}
          </optgroup>
        </select>
      </label>
      <label>
        <span>{say("drawing.table.drawTo")}</span>
        <select className="select line-to" value={to} onChange={(event) => setTo(event.target.value)}>
          <option value="">–</option>
          {places.map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <button type="submit" className="action" disabled={from === "" || to === ""}>
        {say("drawing.table.draw")}
      </button>
    </form>
  );
}

/** Parts that a line can begin at: pumps, tees and outlets, told apart by the line they stand in. */
function beginnings(design: Design): { readonly path: string; readonly title: string }[] {
  return partTree(design).flatMap(({ path, title }) => {
    const kind = runPartAt(design, path)?.part.kind;
    const line = /^\/(?:loops|drains)\/\d+/.exec(path)?.[0];
    if (line === undefined || !(kind === "outlet" || kind === "tee" || /\/pumps\/\d+$/.test(path))) return [];
    return [{ path, title: `${(valueAt(design, line) as { name: string }).name}: ${title}` }];
  });
}
