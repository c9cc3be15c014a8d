import { describe, expect, it } from "vitest";
import { latestWins } from "./latestWins.ts";

describe("latestWins", () => {
  it("sends the first request at once", () => {
    const sent: number[] = [];
    latestWins<number>((request) => sent.push(request)).ask(1);
    expect(sent).toEqual([1]);
  });

  it("drops every edit of a drag but the newest while one is being worked on", () => {
    const sent: number[] = [];
    const line = latestWins<number>((request) => sent.push(request));
    for (const edit of [1, 2, 3, 4, 5]) line.ask(edit);
    expect(sent).toEqual([1]);
    line.done();
    expect(sent).toEqual([1, 5]);
    line.done();
    expect(sent).toEqual([1, 5]);
  });

  it("is ready again after the line has run empty", () => {
    const sent: number[] = [];
    const line = latestWins<number>((request) => sent.push(request));
    line.ask(1);
    line.done();
    line.ask(2);
    expect(sent).toEqual([1, 2]);
  });
});
