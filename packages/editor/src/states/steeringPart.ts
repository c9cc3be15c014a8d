import { type Design, valueAt } from "@tidewright/design";
import { type Quantity, toSI } from "@tidewright/units";
import { steeredEdits } from "../elevation/gripEdits.ts";
import type { BoundTarget, Handle, Point } from "../elevation/scene.ts";
import { type Answer, idle, type SheetContext, type SteeringPart, type Step, to } from "./sheet.ts";

/** Arrow keys steer what one key has chosen: the place of a part, or its aim. */
export const inSteeringPart: Answer<SteeringPart> = (state, event, context) => {
  if (event.kind === "move") return to(state);
  if (event.kind === "keyUp") return rest(state);
  if (event.kind !== "key" || event.alt) return undefined;
  const { dragKey, ...still } = state;
  if (event.key === "Escape") return dragKey === undefined ? to(idle) : to(still, { kind: "drop", dragKey });
  if ((event.focus ?? context.selection) !== state.part) return undefined;
  if (event.key === "Enter") return to(idle, ...rest(state).effects);
  const other = gripKeys[event.key];
  if (other !== undefined) {
    const steered = steerStep(context, state.part, other);
    return to(steered.state, ...rest(state).effects, ...steered.effects);
  }
  const way = ways[event.key];
  const handle = gripOf(context, state);
  if (way === undefined || handle === undefined) return to(state);
  const key = dragKey ?? `steer-${state.part}-${event.at}`;
  return to(
    { ...state, dragKey: key },
    {
      kind: "edit",
      edits: steeredEdits(asItIs(handle, context.design), way, event.shift === true),
      label: { key: "drawing.step.move", values: { what: handle.label } },
      dragKey: key,
      done: false,
      hold: null,
    },
  );
};

/** Keys that choose what is steered. */
export const gripKeys: Readonly<Record<string, SteeringPart["grip"]>> = { m: "place", a: "aim" };

/** Returns the step by which a part's place or aim is steered by arrow keys, or why it cannot be.
 *  context   path of the part   grip which of the two   -> Step
 *  Source: own construction. */
export function steerStep(context: SheetContext, path: string, grip: SteeringPart["grip"]): Step {
  const select = { kind: "select", path } as const;
  return gripOf(context, { part: path, grip }) === undefined
    ? to(idle, select, { kind: "refuse", why: { key: "drawing.why.fixed" } })
    : to({ kind: "SteeringPart", part: path, grip }, select);
}

const gripOf = (context: SheetContext, { part, grip }: Pick<SteeringPart, "part" | "grip">) =>
  context.scene.parts.find(({ path }) => path === part)?.grips?.find(({ axis }) => axis === grip);

/** Keys can be faster than the picture: a step goes from what the document says, not from what was drawn last. */
function asItIs(handle: Handle, design: Design): Handle {
  const now = (path: string) => valueAt(design, path) as Quantity | undefined;
  if (handle.axis === "aim") {
    const pitch = now(`${handle.path}/pitch`);
    return pitch === undefined ? handle : { ...handle, pitch: toSI(pitch, "angle") };
  }
  if (handle.axis !== "place") return handle;
  const target = (one: BoundTarget): BoundTarget => ({ ...one, ...now(one.path) });
  return { ...handle, along: target(handle.along), up: target(handle.up) };
}

/** The presses so far are a step of the history. */
function rest(state: SteeringPart): Step {
  const { dragKey, ...still } = state;
  if (dragKey === undefined) return to(state);
  return to(still, {
    kind: "edit",
    edits: [],
    label: { key: "drawing.step.move", values: { what: "" } },
    dragKey,
    done: true,
    hold: null,
  });
}

const ways: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: 1 },
  ArrowDown: { x: 0, y: -1 },
};
