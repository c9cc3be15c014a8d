import { assess } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { applyEdit } from "@tidewright/design";
import { englishWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { demoJobs } from "../document/demoJobs.ts";
import { screenFormat } from "../format/screenFormat.ts";
import { type PrintedLine, printedLines } from "./printedLines.ts";

const format = screenFormat({ system: "metric", own: {} });
const design = demoJobs[0]!.design;
const lines = printedLines(design, assess(design, demoCatalogue), englishWords, format);
const at = (path: string, heads = false) => lines.find((line) => line.path === path && line.heads === heads)!;
const builtAs = ({ built }: PrintedLine) =>
  built.map(({ label, value }) => `${label} ${value}`.trim().replaceAll("\u00a0", " "));

describe("the printed list of parts", () => {
  it("sets a tee's parts further in than the tee, at every depth", () => {
    const tee = lines.filter(({ title }) => title.startsWith("Tee into"));
    // The example has a tee within a branch of a tee.
    expect(tee.length).toBeGreaterThan(1);
    for (const { path, level } of tee) {
      const branch = at(`${path}/branches/0`, true);
      expect(branch.level).toBe(level + 1);
      expect(at(`${path}/branches/0/0`).level).toBe(level + 2);
    }
  });

  it("names each branch right above its first part", () => {
    const heads = lines.filter(({ path, heads: over }) => over && path.includes("/branches/"));
    expect(heads.length).toBeGreaterThan(4);
    for (const head of heads) {
      expect(head.title).toMatch(/^Branch \d/);
      expect(lines[lines.indexOf(head) + 1]?.path).toBe(`${head.path}/0`);
    }
  });

  it("says how far a valve is open, how fast a pump runs and what a drain is for", () => {
    const valves = lines.filter(({ title }) => title.startsWith("Ball valve"));
    expect(valves.length).toBeGreaterThan(0);
    for (const valve of valves) expect(builtAs(valve).join()).toMatch(/Opening \d+ %/);
    expect(builtAs(at("/loops/0/pumps/0"))).toContain("Speed 100 %");
    expect(builtAs(at("/drains/0"))).toEqual(expect.arrayContaining(["Role Main", "Works as Throttled full siphon"]));
  });

  it("gives the opening that was found for a siphon's valve, not the one that was typed before", () => {
    const valve = lines.find(({ path, title }) => path.startsWith("/drains/0/run/") && title === "Gate valve")!;
    expect(builtAs(valve).join()).toMatch(/Valve, found \d+ % open/);
    expect(builtAs(valve).join()).not.toContain("Opening");
  });

  it("sets in both sides of a pump that has a suction line, each under its name", () => {
    const pipe = { kind: "pipe", series: "pn16-40", length: { value: 200, unit: "mm" } };
    const sucking = applyEdit(design, { op: "set", path: "/loops/0/suction", value: [pipe] }).design;
    const drawn = printedLines(sucking, undefined, englishWords, format);
    const place = (path: string) => drawn.findIndex((line) => line.path === path && !line.heads);
    for (const side of ["suction", "run"]) {
      const first = place(`/loops/0/${side}/0`);
      expect(drawn[first - 1]).toMatchObject({ path: `/loops/0/${side}`, heads: true, level: 1 });
      expect(drawn[first]?.level).toBe(2);
    }
  });
});
