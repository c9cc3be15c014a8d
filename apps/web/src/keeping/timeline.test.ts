import { endDrag, record, startHistory, undo } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { timelineChange, timelineOf } from "./timeline.ts";

const set = (value: number) => ({ op: "set" as const, path: "/a", value });

describe("the line of steps of a history", () => {
  it("grows at its end alone as steps are made", () => {
    const one = record(startHistory({ a: 0 }), set(1), "one").history;
    const two = record(one, set(2), "two").history;
    const change = timelineChange(timelineOf(one), timelineOf(two));
    expect(change).toMatchObject({ from: 1, steps: [{ label: "two" }] });
  });

  it("writes the last step of a drag anew and nothing before it", () => {
    const one = record(startHistory({ a: 0 }), set(1), "one").history;
    const pulled = record(one, set(2), "pull", "key").history;
    const ended = endDrag(record(pulled, set(3), "pull", "key").history);
    const change = timelineChange(timelineOf(pulled), timelineOf(ended));
    expect(change.from).toBe(1);
    expect(change.steps).toHaveLength(1);
  });

  it("forgets what was undone once another step is made", () => {
    const two = record(record(startHistory({ a: 0 }), set(1), "one").history, set(2), "two").history;
    const other = record(undo(two), set(5), "other").history;
    const change = timelineChange(timelineOf(two), timelineOf(other));
    expect(change).toMatchObject({ from: 1, steps: [{ label: "other" }] });
    expect(timelineOf(other)).toHaveLength(2);
  });
});
