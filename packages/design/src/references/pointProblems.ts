import type { Dimension } from "@tidewright/units";
import { type Add, asTyped, fieldOf, siOf } from "./loose.ts";

/** Adds pump points whose flows do not rise or whose heads do; each names both points. */
export function pumpPointProblems(points: readonly unknown[], path: string, add: Add): void {
  eachPair(points, (before, point, i) => {
    flowProblem(before, point, `${path}/${i}`, i, add);
    const fall = difference(before, point, "head", "head");
    if (fall !== undefined && fall > 0)
      add({
        path: `${path}/${i}/head`,
        message: `the head rises from ${asTyped(fieldOf(before, "head"))} at ${asTyped(fieldOf(before, "flow"))} (point ${i}) to ${asTyped(fieldOf(point, "head"))} at ${asTyped(fieldOf(point, "flow"))} (point ${i + 1})`,
        value: fieldOf(point, "head"),
        fix: "a pump gives less head at more flow: check both points, or leave the rising one out",
      });
  });
}

/** Adds loss points whose flows do not rise, whose losses fall, or that lose head without flow. */
export function lossPointProblems(points: readonly unknown[], path: string, add: Add): void {
  points.forEach((point, i) => {
    const loss = siOf(point, "head", "headLoss");
    if (siOf(point, "flow", "flow") === 0 && loss !== undefined && loss > 0)
      add({
        path: `${path}/${i}/headLoss`,
        message: `a loss of ${asTyped(fieldOf(point, "headLoss"))} without any flow`,
        value: fieldOf(point, "headLoss"),
        fix: "still water loses no head: give 0 there, or leave the point out",
      });
    if (points.length === 1 && siOf(point, "flow", "flow") === 0)
      add({
        path: `${path}/${i}/flow`,
        message: "the only point lies at no flow, so it tells nothing",
        value: fieldOf(point, "flow"),
        fix: "give the loss at a flow",
      });
  });
  eachPair(points, (before, point, i) => {
    flowProblem(before, point, `${path}/${i}`, i, add);
    const rise = difference(before, point, "headLoss", "head");
    if (rise !== undefined && rise < 0)
      add({
        path: `${path}/${i}/headLoss`,
        message: `the loss falls from ${asTyped(fieldOf(before, "headLoss"))} (point ${i}) to ${asTyped(fieldOf(point, "headLoss"))} (point ${i + 1})`,
        value: fieldOf(point, "headLoss"),
        fix: "more flow loses more head: check both points",
      });
  });
}

function flowProblem(before: unknown, point: unknown, path: string, i: number, add: Add): void {
  const step = difference(before, point, "flow", "flow");
  if (step === undefined || step > 0) return;
  const flow = fieldOf(point, "flow");
  add({
    path: `${path}/flow`,
    message:
      step === 0
        ? `points ${i} and ${i + 1} have the same flow, ${asTyped(flow)}`
        : `the flow falls from ${asTyped(fieldOf(before, "flow"))} (point ${i}) to ${asTyped(flow)} (point ${i + 1})`,
    value: flow,
    fix: step === 0 ? "keep one of them" : "give the points in the order of rising flow",
  });
}

/** `i` is the place of the later point from 0, so that point counts i + 1 from 1. */
function eachPair(points: readonly unknown[], look: (before: unknown, point: unknown, i: number) => void): void {
  for (let i = 1; i < points.length; i++) look(points[i - 1], points[i], i);
}

function difference(before: unknown, point: unknown, field: string, dimension: Dimension): number | undefined {
  const first = siOf(before, dimension, field);
  const second = siOf(point, dimension, field);
  return first === undefined || second === undefined ? undefined : second - first;
}
