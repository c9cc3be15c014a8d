import type { Design, Part } from "@tidewright/design";
import { partForm } from "./partForm.ts";

/** One line of the plain table of parts. */
export interface PartLine {
  readonly path: string;
  readonly title: string;
  /** How deep it lies below its section, from 0. */
  readonly depth: number;
}

/** Returns every part of the design in the order of the flow, sections first and their parts below them. */
export function partTree(design: Design): PartLine[] {
  const lines: PartLine[] = [];
  const add = (path: string, depth: number, title?: string) =>
    lines.push({ path, depth, title: title ?? partForm(design, path)?.title ?? path });
  const addRun = (run: readonly Part[], path: string, depth: number): void => {
    for (const [place, part] of run.entries()) {
      add(`${path}/${place}`, depth);
      if (part.kind === "tee")
        for (const [branch, parts] of part.branches.entries())
          addRun(parts, `${path}/${place}/branches/${branch}`, depth + 1);
    }
  };
  const addList = (list: readonly unknown[] | undefined, path: string, depth: number) => {
    for (const place of (list ?? []).keys()) add(`${path}/${place}`, depth);
  };

  add("", 0);
  add("/wishes", 0);
  add("/display", 0);
  addList(design.display.zones, "/display/zones", 1);
  add("/overflow", 0);
  for (const [place, drain] of design.drains.entries()) {
    add(`/drains/${place}`, 0);
    addRun(drain.run, `/drains/${place}/run`, 1);
  }
  add("/sump", 0);
  addList(design.sump.chambers, "/sump/chambers", 1);
  if (design.topOff !== undefined) add("/topOff", 0);
  for (const [place, loop] of design.loops.entries()) {
    const path = `/loops/${place}`;
    add(path, 0);
    addRun(loop.suction ?? [], `${path}/suction`, 1);
    addList(loop.pumps, `${path}/pumps`, 1);
    addRun(loop.run, `${path}/run`, 1);
  }
  addList(design.tankPumps, "/tankPumps", 0);
  add("/power", 0);
  addList(design.power.circuits, "/power/circuits", 1);
  add("/water", 0);
  if (design.room !== undefined) add("/room", 0);
  return lines;
}
