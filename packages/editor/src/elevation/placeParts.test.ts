import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Bead, placeParts } from "./placeParts.ts";

const pipe = (length: number, rise = 0): Bead => ({ kind: "pipe", length, half: 0, rise });
const point: Bead = { kind: "point", length: 0, half: 0.02 };
const elbow: Bead = { kind: "elbow", length: 0, half: 0.02 };
const end: Bead = { kind: "end", length: 0, half: 0.01 };
const corner = [
  { x: 0, y: 0 },
  { x: 0, y: 1 },
  { x: 0.5, y: 1 },
];

describe("parts along a drawn line", () => {
  it("put an elbow on the corner whatever the pipes' lengths say", () => {
    const placed = placeParts(corner, [pipe(3), elbow, pipe(1), end]);
    expect(placed[1]!.at).toBeCloseTo(1, 9);
    expect(placed[0]!.from).toBe(0);
    expect(placed[3]!.to).toBeCloseTo(1.5, 9);
  });

  it("put a valve on an upright pipe at its true elevation", () => {
    const placed = placeParts(corner, [pipe(0.4, 0.4), point, pipe(0.6, 0.6), elbow, pipe(0.9), end]);
    expect(placed[1]!.at).toBeCloseTo(0.4, 9);
  });

  it("follow each other without gaps, in order, over the whole line", () => {
    const kinds = fc.constantFrom(point, elbow, pipe(0.3), pipe(0.8, 0.2), pipe(0));
    fc.assert(
      fc.property(
        fc.array(kinds, { minLength: 1, maxLength: 14 }),
        fc.double({ min: 0.05, max: 3, noNaN: true }),
        (beads, size) => {
          const line = corner.map(({ x, y }) => ({ x: x * size, y: y * size }));
          const placed = placeParts(line, [...beads, end]);
          expect(placed[0]!.from).toBe(0);
          expect(placed.at(-1)!.to).toBeCloseTo(1.5 * size, 9);
          placed.slice(1).forEach((place, i) => {
            expect(place.from).toBe(placed[i]!.to);
            expect(place.to).toBeGreaterThanOrEqual(place.from);
          });
        },
      ),
      { seed: 20260101 },
    );
  });
});
