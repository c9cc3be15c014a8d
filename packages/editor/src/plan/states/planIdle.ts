import type { Point } from "../../elevation/scene.ts";
import { gripOf, planNudge } from "../planEdits.ts";
import type { PlanPart } from "../planScene.ts";
import { type PlanContext, type PlanEvent, type PlanStep, planIdle, planTo } from "./planState.ts";

/** A finger may miss by more than a mouse, and rolls before it moves [px]. */
const reach = { touch: 22, mouse: 14 };
const slack = { touch: 8, mouse: 3 };

/** Nothing is going on: a pointer takes a grip or a part, an arrow key moves what has the focus. */
export function inPlanIdle(event: PlanEvent, context: PlanContext): PlanStep {
  if (event.kind === "escape") return planTo(planIdle, { kind: "select", path: undefined });
  if (event.kind === "arrow") {
    const own = context.scene.handles.filter(({ part }) => part === event.focus);
    const handle = event.second ? own[1] : own[0];
    if (handle === undefined) return planTo(planIdle);
    const edits = planNudge(handle, event.way, event.large);
    return planTo(planIdle, { kind: "edit", edits, dragKey: `nudge-${event.focus}-${event.at}`, done: true });
  }
  if (event.kind !== "down") return planTo(planIdle);
  const { view, scene } = context;
  const kind = event.touch ? "touch" : "mouse";
  const handle = nearest(context.handles, (one) => view.toScreen(gripOf(one)), event.point, reach[kind]);
  if (handle !== undefined)
    return planTo(
      {
        kind: "PointingGrip",
        pointer: event.pointer,
        handle,
        from: event.point,
        slack: slack[kind],
        view,
        dragKey: `plan-${handle.part}-${event.at}`,
      },
      { kind: "select", path: handle.part },
    );
  const part = nearest<PlanPart>(scene.parts, ({ anchor }) => view.toScreen(anchor), event.point, reach[kind] * 1.5);
  return planTo(planIdle, { kind: "select", path: part?.path });
}

function nearest<Thing>(
  things: readonly Thing[],
  placeOf: (thing: Thing) => Point,
  point: Point,
  within: number,
): Thing | undefined {
  let best: Thing | undefined;
  let least = within;
  for (const thing of things) {
    const place = placeOf(thing);
    const away = Math.hypot(place.x - point.x, place.y - point.y);
    if (away >= least) continue;
    least = away;
    best = thing;
  }
  return best;
}
