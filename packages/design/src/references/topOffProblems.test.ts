import { describe, expect, it } from "vitest";
import type { Problem } from "../problem.ts";
import { topOffProblems } from "./topOffProblems.ts";

const problems = (band: number): Problem[] => {
  const found: Problem[] = [];
  topOffProblems(
    { sump: { operatingLevel: { value: 20, unit: "cm" } }, topOff: { band: { value: band, unit: "mm" } } },
    (problem) => found.push(problem),
  );
  return found;
};

describe("the top-off", () => {
  it("may not wait until the return chamber is empty", () => {
    expect(problems(199)).toEqual([]);
    expect(problems(200)).toMatchObject([{ path: "/topOff/band", value: { value: 200, unit: "mm" } }]);
  });
});
