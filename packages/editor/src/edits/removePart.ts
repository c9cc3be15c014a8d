import type { Design, Edit, Part, Run } from "@tidewright/design";
import { fromPointer, valueAt } from "@tidewright/design";
import { type Outcome, refused } from "./outcome.ts";
import { type RunPart, runPartAt, teeAbove } from "./runPart.ts";
import { joinPipes } from "./splitPipe.ts";

const label = { key: "drawing.step.remove" } as const;

/** Returns the edits that take what is at a path out of the design: in a run its neighbours close up and equal pipes become
 *  one; a tee left with one branch goes with it. What the design cannot be without stays, and the outcome says why.
 *  design checked design   path JSON Pointer of a part   -> Outcome
 *  Source: own construction. */
export function removePart(design: Design, path: string): Outcome {
  const there = runPartAt(design, path);
  if (there !== undefined) return fromRun(design, there);
  const [section, second, third, fourth] = fromPointer(path) ?? [];
  if (valueAt(design, path) === undefined) return refused("drawing.why.nothingHere");
  if (section === "drains" && third === undefined && second !== undefined)
    return design.drains.length > 1 ? without(path, "/overflow/box") : refused("drawing.why.lastDrain");
  if (section === "loops" && third === "pumps" && fourth !== undefined)
    return design.loops[Number(second)]!.pumps.length > 1
      ? without(path, `/loops/${second}/pumps/0`)
      : refused("drawing.why.lastPump");
  if (section === "loops" && third === undefined && second !== undefined)
    return design.loops.length > 1 ? without(path, undefined) : refused("drawing.why.lastLoop");
  if (section === "tankPumps" && second !== undefined)
    return design.tankPumps?.length === 1 ? without("/tankPumps", "/display") : without(path, "/display");
  if (section === "sump" && second === "chambers" && third !== undefined) return withoutChamber(design, Number(third));
  return refused("drawing.why.cannotGo");
}

const without = (path: string, select: string | undefined): Outcome => ({
  ok: true,
  edits: [{ op: "remove", path }],
  select,
  label,
});

/** Lines that end or begin in a chamber hold it in place; only a chamber nothing runs to can go. */
function withoutChamber(design: Design, place: number): Outcome {
  const { chambers } = design.sump;
  const chamber = chambers[place]!;
  if (chambers.length === 1) return refused("drawing.why.lastChamber");
  const to = `sump.${chamber.id}`;
  const ends = (run: Run): boolean =>
    run.some(
      (part) =>
        (part.kind === "outlet" && part.to === to) || (part.kind === "tee" && part.branches.some((one) => ends(one))),
    );
  const users = [
    ...design.drains.filter(({ run }) => ends(run)).map(({ name }) => name),
    ...design.loops.filter(({ run, from }) => from.place === to || ends(run)).map(({ name }) => name),
  ];
  if (users.length > 0) return refused("drawing.why.chamberUsed", { lines: users.join(", ") });
  return without(`/sump/chambers/${place}`, "/sump");
}

function fromRun(design: Design, there: RunPart): Outcome {
  const { part, base, run, index } = there;
  if (part.kind === "outlet") return withoutBranch(design, there);
  if (part.kind === "tee") {
    const rest = closedUp([...run.slice(0, index), ...part.branches[0]!]);
    return { ok: true, edits: [{ op: "set", path: base, value: rest }], select: holdIn(base, rest, index), label };
  }
  if (run.length === 1) {
    if (there.side !== "suction") return refused("drawing.why.lastOfRun");
    return without(base, `/loops/${there.line}/pumps/0`);
  }
  const before = run[index - 1];
  const after = run[index + 1];
  const joined = before?.kind === "pipe" && after?.kind === "pipe" ? joinPipes(before, after) : undefined;
  const edits: Edit[] = [{ op: "remove", path: there.path }];
  if (joined !== undefined)
    edits.push({ op: "remove", path: there.path }, { op: "set", path: `${base}/${index - 1}`, value: joined });
  const left = run.length - edits.filter(({ op }) => op === "remove").length;
  return { ok: true, edits, select: `${base}/${Math.min(Math.max(0, index - (joined ? 1 : 0)), left - 1)}`, label };
}

/** Taking the end of a branch away takes the branch; the last end of a line stays. */
function withoutBranch(design: Design, there: RunPart): Outcome {
  const above = teeAbove(there.base);
  if (above === undefined) return refused("drawing.why.lastOutlet");
  const tee = runPartAt(design, above.tee);
  if (tee?.part.kind !== "tee") return refused("drawing.why.nothingHere");
  const { branches } = tee.part;
  if (branches.length > 2) return { ok: true, edits: [{ op: "remove", path: there.base }], select: above.tee, label };
  const rest = closedUp([...tee.run.slice(0, tee.index), ...branches[1 - above.branch]!]);
  return {
    ok: true,
    edits: [{ op: "set", path: tee.base, value: rest }],
    select: holdIn(tee.base, rest, tee.index),
    label,
  };
}

/** Equal pipes that have come to lie one behind the other become one. */
function closedUp(run: Run): Run {
  const closed: Part[] = [];
  for (const part of run) {
    const last = closed.at(-1);
    const joined = last?.kind === "pipe" && part.kind === "pipe" ? joinPipes(last, part) : undefined;
    if (joined === undefined) closed.push(part);
    else closed[closed.length - 1] = joined;
  }
  return closed;
}

const holdIn = (base: string, run: Run, index: number): string =>
  `${base}/${Math.min(Math.max(0, index - 1), run.length - 1)}`;
