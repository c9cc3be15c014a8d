import { shortened } from "../problem.ts";
import { valueAt } from "../read/jsonPointer.ts";
import { listed, nearest } from "../read/nearest.ts";
import type { Design } from "../schema/design.ts";
import { hasCheckValve, hasSiphonBreak } from "./breaksAndChecks.ts";
import { type Add, asTyped, fieldOf, listOf, numberOf, siOf, textOf } from "./loose.ts";

/** Adds what in a scenario does not fit together or does not fit the design: times out of order or past the end, parts
 *  that are not there, events that cannot happen to this design. */
export function scenarioProblems(scenario: unknown, design: Design, add: Add): void {
  const events = listOf(scenario, "events");
  timeProblems(scenario, events, add);
  events.forEach((event, i) => {
    const path = `/scenario/events/${i}/do`;
    const action = fieldOf(event, "do");
    const kind = typeof action === "string" ? action : textOf(action, "kind");
    if (kind?.startsWith("topOff") && design.topOff === undefined)
      add({
        path,
        message: "the design has no top-off that this could happen to",
        value: action,
        fix: 'leave the event out, or give the design its "topOff"',
      });
    if (kind === "overflowSiphonDrawsAir" && design.overflow.kind !== "hangOn")
      add({
        path,
        message: "the overflow has no siphon that could draw air",
        value: action,
        fix: 'leave the event out: only an overflow of the kind "hangOn" has one',
      });
    drainProblem(action, design, path, add);
    loopProblems(action, kind, design, path, add);
  });
}

function timeProblems(scenario: unknown, events: readonly unknown[], add: Add): void {
  let latest = Number.NEGATIVE_INFINITY;
  let latestAt: unknown;
  events.forEach((event, i) => {
    const at = siOf(event, "time", "at");
    if (at === undefined) return;
    if (at < latest)
      add({
        path: `/scenario/events/${i}/at`,
        message: `${asTyped(fieldOf(event, "at"))} comes before ${asTyped(latestAt)} of an event above it`,
        value: fieldOf(event, "at"),
        fix: "put the events in the order of their time",
      });
    else {
      latest = at;
      latestAt = fieldOf(event, "at");
    }
  });
  const duration = siOf(scenario, "time", "duration");
  if (duration === undefined || latest <= duration) return;
  add({
    path: "/scenario/duration",
    message: `the scenario ends after ${asTyped(fieldOf(scenario, "duration"))}, before its last event at ${asTyped(latestAt)}`,
    value: fieldOf(scenario, "duration"),
    fix: "follow the system for longer than that, so that the event can show what it does",
  });
}

/** Returns the index of a drain or loop by its name or JSON Pointer; undefined where there is none. */
export function partIndex(design: Design, list: "drains" | "loops", name: string): number | undefined {
  const parts: readonly { readonly name: string }[] = design[list];
  const named = parts.findIndex((part) => part.name === name);
  if (named >= 0) return named;
  const place = new RegExp(`^/${list}/(0|[1-9]\\d{0,3})$`).exec(name)?.[1];
  return place !== undefined && valueAt(design, name) !== undefined ? Number(place) : undefined;
}

/** Adds that a part is not there, with the nearest name there is. */
function unknownPart(design: Design, list: "drains" | "loops", name: string, path: string, add: Add): void {
  const names = design[list].map((part) => part.name);
  const like = nearest(name, names);
  const what = list === "drains" ? "drain" : "loop";
  const known = `the design has ${listed(names, 20)}`;
  add({
    path,
    message: `there is no ${what} "${shortened(name)}" in the design`,
    value: name,
    fix: like === undefined ? known : `did you mean "${like}"? ${known}`,
  });
}

function drainProblem(action: unknown, design: Design, path: string, add: Add): void {
  const name = textOf(action, "drain");
  if (name !== undefined && partIndex(design, "drains", name) === undefined)
    unknownPart(design, "drains", name, `${path}/drain`, add);
}

function loopProblems(action: unknown, kind: string | undefined, design: Design, path: string, add: Add): void {
  const name = textOf(action, "loop");
  if (name === undefined) return;
  const loop = design.loops[partIndex(design, "loops", name) ?? -1];
  if (loop === undefined) return unknownPart(design, "loops", name, `${path}/loop`, add);
  const called = `loop "${shortened(loop.name)}"`;
  const count = loop.pumps.length;
  const pump = numberOf(action, "pump");
  const numbers = count === 1 ? "give 1, or leave the number out" : `give 1 to ${count}`;
  if (pump !== undefined && pump > count)
    add({ path: `${path}/pump`, message: `${called} has no pump ${pump}`, value: pump, fix: numbers });
  if (pump === undefined && kind?.startsWith("pump") && count > 1)
    add({
      path: `${path}/pump`,
      message: `${called} has ${count} pumps and it is not said which is meant`,
      fix: `add "pump" with 1 to ${count}`,
    });
  if (kind === "checkValvesLeak" && !hasCheckValve(loop))
    add({
      path,
      message: `${called} has no check valve that could leak`,
      value: action,
      fix: "leave the event out: water runs back through this loop in any case",
    });
  if (kind === "siphonBreaksClog" && !hasSiphonBreak(loop))
    add({
      path,
      message: `${called} has no siphon break that could clog`,
      value: action,
      fix: "leave the event out: a siphon through this loop runs until its outlet is bare in any case",
    });
}
