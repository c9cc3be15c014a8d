import type { PipeShape, Point } from "@tidewright/editor";
import { describe, expect, it } from "vitest";
import { lineColumn, restingColumn } from "./lineColumn.ts";

const pipe = (bore: number, ...points: Point[]): PipeShape => ({
  kind: "pipe",
  path: "/x",
  points,
  bore,
  water: "full",
});

// Expected values are analytic: volumes of upright cylinders.
describe("water in a line that runs empty", () => {
  it("stands in an upright pipe as high as its share", () => {
    const column = lineColumn([pipe(0.03, { x: 0, y: 1 }, { x: 0, y: 3 })]).heightAt;
    expect(column(0.25)).toBeCloseTo(1.5, 9);
  });

  it("fills the wide lower pipe before the narrow upper one", () => {
    const column = lineColumn([
      pipe(0.02, { x: 0, y: 1 }, { x: 0, y: 2 }),
      pipe(0.04, { x: 0, y: 0 }, { x: 0, y: 1 }),
    ]).heightAt;
    // The lower pipe holds four fifths.
    expect(column(0.8)).toBeCloseTo(1, 6);
    expect(column(0.4)).toBeCloseTo(0.5, 6);
    expect(column(0.9)).toBeCloseTo(1.5, 6);
  });

  it("lies along a level pipe within its bore", () => {
    const column = lineColumn([pipe(0.04, { x: 0, y: 1 }, { x: 3, y: 1 })]).heightAt;
    expect(column(0.5)).toBeCloseTo(1, 9);
    expect(column(0.25)).toBeCloseTo(0.99, 9);
  });

  it("is above every pipe when full and below every pipe when empty", () => {
    const column = lineColumn([pipe(0.03, { x: 0, y: 1 }, { x: 0, y: 3 }, { x: 1, y: 3 })]).heightAt;
    expect(column(1)).toBeGreaterThan(3.015);
    expect(column(0)).toBeLessThan(1);
  });

  it("tells how much lies below a height", () => {
    const { shareAt, heightAt } = lineColumn([pipe(0.03, { x: 0, y: 1 }, { x: 0, y: 3 })]);
    expect(shareAt(2.5)).toBeCloseTo(0.75, 9);
    expect(heightAt(shareAt(1.3))).toBeCloseTo(1.3, 9);
  });

  it("rests at the surface it hangs in once the line has run as empty as it gets", () => {
    const height = restingColumn(lineColumn([pipe(0.03, { x: 0, y: 0 }, { x: 0, y: 2 })]), 0.34);
    expect(height(0.34, 0.5)).toBe(0.5);
    expect(height(0.4, 0.6)).toBe(0.6);
    expect(height(0.7, 0.5)).toBeCloseTo(1.25, 9);
    expect(height(1, 0.5)).toBeGreaterThan(2);
  });
});
