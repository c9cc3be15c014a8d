import type { Design } from "@tidewright/design";
import { type Frame, layoutFrame } from "../elevation/frame.ts";
import { partAt } from "../elevation/hitTest.ts";
import type { Point, Scene } from "../elevation/scene.ts";
import { spotOnRun } from "../elevation/spotOnRun.ts";
import type { View } from "../elevation/view.ts";
import type { RunEnd } from "./drawRun.ts";
import { runPartAt } from "./runPart.ts";

/** What is needed to tell the ends of lines apart. */
interface Sheet {
  readonly design: Design;
  readonly scene: Scene;
  readonly view: View;
}

/** Returns where a line could begin at a point of the picture: at a pump, an outlet, a tee or a spot of a line under
 *  pressure, in the display, in a chamber, or in the overflow box.
 *  sheet   point [px]   reach [px]   -> end, if there is one
 *  Source: own construction. */
export function runEndAt(sheet: Sheet, point: Point, reach: number): RunEnd | undefined {
  const part = partAt(sheet.scene, sheet.view, point, reach);
  const at = sheet.view.toScene(point);
  if (part === undefined) return runTargetAt(sheet, point);
  const spot = spotOnRun(sheet.scene, sheet.view, point, reach);
  const end = runEndOf(sheet, part.path, false);
  if (end?.kind === "place") return { ...end, at };
  if (end?.kind === "line" && spot?.path === end.path && isPipe(sheet.design, end.path))
    return { ...end, share: spot.share, at: spot.at };
  return end;
}

/** Returns the place that holds the water at a point of the picture, or that lies straight below it in the stand.
 *  sheet   point [px]   -> end, if there is one
 *  Source: own construction. */
export function runTargetAt(sheet: Sheet, point: Point): RunEnd | undefined {
  const at = sheet.view.toScene(point);
  const place = placeOf(layoutFrame(sheet.design, undefined), at);
  return place === undefined ? undefined : { kind: "place", place, at };
}

/** Returns the end of a line that a part stands for.
 *  sheet   path of the part   ending true where only places count   -> end, if it is one
 *  Source: own construction. */
export function runEndOf(sheet: Pick<Sheet, "design" | "scene">, path: string, ending: boolean): RunEnd | undefined {
  const { design } = sheet;
  const at = sheet.scene.parts.find((part) => part.path === path)?.anchor;
  const place = (name: string): RunEnd => ({ kind: "place", place: name });
  if (path === "/display" || path.startsWith("/tankPumps")) return place("display");
  if (path.startsWith("/overflow")) return place("overflowBox");
  const chamber = /^\/sump\/chambers\/(\d+)$/.exec(path);
  if (chamber) return place(`sump.${design.sump.chambers[Number(chamber[1])]!.id}`);
  const there = runPartAt(design, path);
  if (ending) return there?.part.kind === "outlet" ? place(there.part.to) : undefined;
  if (path.startsWith("/drains") && there?.part.kind !== "outlet") return place("overflowBox");
  if (there === undefined && !/^\/loops\/\d+\/pumps\/\d+$/.test(path)) return undefined;
  if (there?.side === "suction" || at === undefined) return undefined;
  return { kind: "line", path, share: 1, at };
}

const isPipe = (design: Design, path: string): boolean => runPartAt(design, path)?.part.kind === "pipe";

function placeOf(frame: Frame, { x, y }: Point): string | undefined {
  const { display, box, sump, chambers } = frame;
  const inside = (e: { x0: number; x1: number; y0: number; y1: number }) =>
    x > e.x0 && x < e.x1 && y > e.y0 && y < e.y1 + 0.08;
  if (inside(box)) return "overflowBox";
  if (inside(display)) return "display";
  const near =
    x > sump.x0 - 0.04 &&
    x < sump.x1 + 0.04 &&
    y > sump.y0 - 0.05 &&
    y < Math.max(sump.y1 + 0.02, frame.standTop - 0.03);
  if (!near) return undefined;
  const away = (one: (typeof chambers)[number]) => Math.max(one.x0 - x, x - one.x1);
  const chamber = chambers.reduce((best, one) => (away(one) < away(best) ? one : best));
  return `sump.${chamber.id}`;
}
