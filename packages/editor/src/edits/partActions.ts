import type { Design } from "@tidewright/design";
import { valueAt } from "@tidewright/design";
import type { MessageKey } from "@tidewright/words";
import { type Addition, addThing, duplicatePart } from "./addThings.ts";
import { giveAim, giveWall } from "./givePlace.ts";
import type { Outcome } from "./outcome.ts";
import { removePart } from "./removePart.ts";
import { runPartAt } from "./runPart.ts";

/** What can be done with a part in hand. "edit" opens its main quantity in place, "insertAfter" and "insertBefore" open the
 *  palette, "branch" puts a tee behind it, "route" draws a line from it, "choosePump" asks the ranking. */
export type PartAction =
  | "edit"
  | "insertAfter"
  | "insertBefore"
  | "branch"
  | "route"
  | "choosePump"
  | "duplicate"
  | "remove"
  | "removeLoop"
  | "giveAim"
  | "giveWall"
  | `add.${Addition}`;

/** One thing that can be done, with its name and the key that does it on the drawing. */
export interface OfferedAction {
  readonly action: PartAction;
  readonly name: MessageKey;
  readonly key?: string;
}

/** Returns what can be done with the part at a path, the most used first.
 *  design checked design   path JSON Pointer   -> actions; none where the path leads nowhere
 *  Source: own construction. */
export function actionsFor(design: Design, path: string): readonly OfferedAction[] {
  const there = runPartAt(design, path);
  if (there !== undefined) {
    const { kind } = there.part;
    const pressure = there.side === "pressure";
    if (kind === "outlet")
      return pressure ? [edit, route, insertBefore, duplicate, remove] : [edit, route, insertBefore];
    if (kind === "tee") return [route, insertBefore, branch, remove];
    return [...(kind === "device" ? [] : [edit]), insertAfter, ...(pressure ? [branch] : []), duplicate, remove];
  }
  if (path !== "" && valueAt(design, path) === undefined) return [];
  if (/^\/loops\/\d+\/pumps\/\d+$/.test(path)) return [edit, choosePump, add("pumpBeside"), route, remove, removeLoop];
  if (/^\/loops\/\d+$/.test(path)) return [add("pumpBeside"), removeLoop];
  if (/^\/drains\/\d+$/.test(path)) return [edit, duplicate, add("drain"), remove];
  if (/^\/sump\/chambers\/\d+$/.test(path)) return [edit, route, add("chamber"), remove];
  if (/^\/tankPumps\/\d+$/.test(path)) {
    const aimed = valueAt(design, `${path}/aim`) !== undefined;
    return [edit, duplicate, add("tankPump"), ...(aimed ? [] : [aim]), remove];
  }
  if (path === "/sump") return [edit, add("chamber"), add("sideLoop"), add("returnLoop")];
  if (path === "/display") return [edit, add("tankPump"), add("closedLoop"), route];
  if (path === "/overflow/weir") return [edit];
  const hung = design.overflow.box.at !== undefined;
  if (path === "/overflow/box") return [edit, add("drain"), route, ...(hung ? [] : [wall])];
  if (path === "/overflow") return hung ? [] : [wall];
  if (path === "/display/standHeight") return [edit];
  return [];
}

/** Returns what an action that needs no further choice does.
 *  design   path of the part in hand   action   -> Outcome; undefined for one that opens something first
 *  Source: own construction. */
export function actOn(design: Design, path: string, action: PartAction): Outcome | undefined {
  if (action === "remove") return removePart(design, path);
  if (action === "duplicate") return duplicatePart(design, path);
  if (action === "removeLoop") return removePart(design, /^\/loops\/\d+/.exec(path)?.[0] ?? path);
  if (action === "giveAim") return giveAim(design, path);
  if (action === "giveWall") return giveWall(design);
  if (action.startsWith("add.")) return addThing(design, action.slice(4) as Addition, path);
  return undefined;
}

const edit: OfferedAction = { action: "edit", name: "drawing.act.edit", key: "Enter" };
const insertAfter: OfferedAction = { action: "insertAfter", name: "drawing.act.insertAfter", key: "I" };
const insertBefore: OfferedAction = { action: "insertBefore", name: "drawing.act.insertBefore", key: "I" };
const branch: OfferedAction = { action: "branch", name: "drawing.act.branch", key: "B" };
const route: OfferedAction = { action: "route", name: "drawing.act.route", key: "P" };
const choosePump: OfferedAction = { action: "choosePump", name: "drawing.act.choosePump" };
const duplicate: OfferedAction = { action: "duplicate", name: "drawing.act.duplicate", key: "D" };
const remove: OfferedAction = { action: "remove", name: "drawing.act.remove", key: "Delete" };
const removeLoop: OfferedAction = { action: "removeLoop", name: "drawing.act.removeLoop" };
const aim: OfferedAction = { action: "giveAim", name: "drawing.act.giveAim" };
const wall: OfferedAction = { action: "giveWall", name: "drawing.act.giveWall" };
const add = (what: Addition): OfferedAction => ({ action: `add.${what}`, name: `drawing.add.${what}` });
