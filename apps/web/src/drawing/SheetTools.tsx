import {
  type Addition,
  choiceLooks,
  flowSlowing,
  type PartChoice,
  partChoiceNames,
  type SheetState,
} from "@tidewright/editor";
import { memo, type ReactNode, useEffect, useId, useRef, useState } from "react";
import { useWords } from "../words/useWords.ts";
import { ChoiceGlyph, ToolGlyph } from "./glyphs.tsx";
import type { Sheet } from "./useSheet.ts";

const additions: readonly Addition[] = [
  "drain",
  "chamber",
  "returnLoop",
  "closedLoop",
  "sideLoop",
  "pumpBeside",
  "tankPump",
];

interface Props {
  readonly sheet: Sheet;
  readonly editable: boolean;
  readonly narrow: boolean;
  /** Whether marks move with the water; undefined where the page keeps still. */
  readonly flow: boolean | undefined;
  onFlow(on: boolean): void;
}

/** The tools that lie on the sheet's upper edge: what is put into the hand on the left, how it is looked at on the right. */
export const SheetTools = memo(function SheetTools({ sheet, editable, narrow, flow, onFlow }: Props): ReactNode {
  const { say } = useWords();
  const { state, send } = sheet;
  const [adding, setAdding] = useState(false);
  const choosing = state.kind === "ChoosingPart";
  const inserting = state.kind === "InsertingPart";
  const tool = (
    name: "insert" | "route",
    active: boolean,
    short: "drawing.tool.insertShort" | "drawing.tool.routeShort",
  ) => (
    <button
      type="button"
      className="tw-tool"
      aria-label={narrow ? say(`drawing.tool.${name}`) : undefined}
      title={say(`drawing.tool.${name}`)}
      aria-pressed={active}
      onClick={() => send({ kind: "tool", tool: active ? "stop" : name })}
    >
      <ToolGlyph name={name} />
      {narrow ? null : <span>{say(short)}</span>}
    </button>
  );
  const look = (name: "zoomOut" | "whole" | "zoomIn") => (
    <button
      type="button"
      className="tw-tool"
      aria-label={say(`drawing.tool.${name}`)}
      title={say(`drawing.tool.${name}`)}
      disabled={name !== "zoomIn" && sheet.camera === undefined}
      onClick={() => send({ kind: "tool", tool: name })}
    >
      <ToolGlyph name={name} />
    </button>
  );
  return (
    <div className="tw-tools" data-near={sheet.camera && ""} role="toolbar" aria-label={say("drawing.tool.name")}>
      {editable ? (
        <div className="tw-toolGroup">
          {tool("insert", choosing || inserting, "drawing.tool.insertShort")}
          {tool("route", state.kind === "RoutingRun", "drawing.tool.routeShort")}
          <AddMenu open={adding} setOpen={setAdding} narrow={narrow} sheet={sheet} />
        </div>
      ) : null}
      <div className="tw-toolGroup tw-toolsLook">
        {look("zoomOut")}
        {look("whole")}
        {look("zoomIn")}
        {flow === undefined ? null : (
          <button
            type="button"
            className="tw-tool tw-toolQuiet"
            aria-pressed={flow}
            aria-label={say("drawing.tool.flow")}
            title={say("drawing.flow.scale", { slow: flowSlowing })}
            onClick={() => onFlow(!flow)}
          >
            <ToolGlyph name="flow" />
          </button>
        )}
        <button
          type="button"
          className="tw-tool"
          aria-label={say("drawing.tool.help")}
          title={say("drawing.tool.help")}
          onClick={() => send({ kind: "tool", tool: "help" })}
        >
          ?
        </button>
      </div>
    </div>
  );
});

function AddMenu(props: {
  readonly open: boolean;
  readonly narrow: boolean;
  readonly sheet: Sheet;
  setOpen(open: boolean): void;
}) {
  const { open, setOpen, narrow, sheet } = props;
  const { say } = useWords();
  const id = useId();
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!open) return;
    const away = (event: Event) => {
      if (event instanceof KeyboardEvent ? event.key === "Escape" : !place.current?.contains(event.target as Node))
        setOpen(false);
    };
    document.addEventListener("pointerdown", away);
    document.addEventListener("keydown", away);
    return () => {
      document.removeEventListener("pointerdown", away);
      document.removeEventListener("keydown", away);
    };
  }, [open, setOpen]);
  return (
    <div className="tw-menu" ref={place}>
      <button
        type="button"
        className="tw-tool"
        aria-label={narrow ? say("drawing.tool.add") : undefined}
        title={say("drawing.tool.add")}
        aria-expanded={open}
        aria-controls={id}
        onClick={() => setOpen(!open)}
      >
        <ToolGlyph name="add" />
        {narrow ? null : <span>{say("drawing.tool.addShort")}</span>}
      </button>
      {open ? (
        <div className="tw-menuList" id={id}>
          {additions.map((what) => (
            <button
              key={what}
              type="button"
              data-add={what}
              onClick={() => {
                setOpen(false);
                sheet.send({ kind: "add", what });
              }}
            >
              {say(`drawing.add.${what}`)}
            </button>
          ))}
        </div>
      ) : null}
    </div>
  );
}

/** The parts that can be put into a line, as symbols with their names. */
export function Palette({ sheet, narrow }: { readonly sheet: Sheet; readonly narrow: boolean }): ReactNode {
  const { say } = useWords();
  const { state, send } = sheet;
  const first = useRef<HTMLButtonElement>(null);
  // On a small screen the palette makes room for the drawing once something is in the hand.
  const open = state.kind === "ChoosingPart" || (state.kind === "InsertingPart" && !narrow);
  const choosing = state.kind === "ChoosingPart";
  useEffect(() => {
    // By keyboard the palette is walked through; a pointer does not mind.
    if (choosing) first.current?.focus({ preventScroll: true });
  }, [choosing]);
  if (!open) return null;
  const chosen = state.kind === "InsertingPart" ? state.choice : undefined;
  return (
    <div
      className="tw-palette"
      role="toolbar"
      aria-label={say("drawing.palette.name")}
      onKeyDown={(event) => {
        if (event.key === "Escape") send({ kind: "tool", tool: "stop" });
        const way = event.key === "ArrowRight" ? 1 : event.key === "ArrowLeft" ? -1 : 0;
        if (way === 0) return;
        const buttons = [...event.currentTarget.querySelectorAll("button")];
        const at = buttons.indexOf(document.activeElement as HTMLButtonElement);
        buttons[(at + way + buttons.length) % buttons.length]?.focus();
        event.preventDefault();
      }}
    >
      {choicesOf(state).map((choice, i) => (
        <button
          key={choice}
          ref={i === 0 ? first : undefined}
          type="button"
          className="tw-choice"
          data-choice={choice}
          aria-pressed={choice === chosen}
          onClick={() => send({ kind: "choose", choice })}
        >
          <ChoiceGlyph choice={choice} />
          <span>{say(choiceLooks[choice].name)}</span>
        </button>
      ))}
    </div>
  );
}

/** A plain pipe has no place inside another one; it is put beside a part. */
const choicesOf = (state: SheetState): readonly PartChoice[] =>
  partChoiceNames.filter((choice) => choice !== "pipe" || (state.kind === "ChoosingPart" && state.path !== undefined));
