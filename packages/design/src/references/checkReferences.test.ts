import { readdirSync, readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mutated } from "../testing/mutated.ts";
import { checkReferences } from "./checkReferences.ts";

const examples = new URL("../../../../examples/", import.meta.url);
const read = (name: string) => JSON.parse(readFileSync(new URL(name, examples), "utf8"));
const names = ["./", "golden/"].flatMap((folder) =>
  readdirSync(new URL(folder, examples))
    .filter((name) => name.endsWith(".json"))
    .map((name) => folder + name),
);
// biome-ignore lint/suspicious/noExplicitAny: the tests put wrong things into the document on purpose
type Loose = any;
const mm = (value: number) => ({ value, unit: "mm" });

function problemsAfter(change: (design: Loose) => void) {
  const design = read("waiting-room-reef.json");
  change(design);
  return checkReferences(design, demoCatalogue);
}

describe("the parts of a design", () => {
  it.each(names)("fit together in %s", (name) => {
    expect(checkReferences(read(name), demoCatalogue)).toEqual([]);
  });

  it.each<[string, (design: Loose) => void, string, string, string?]>([
    [
      "a pump nobody makes",
      (d) => (d.loops[0].pumps[0].ref = "ferow-c40"),
      "/loops/0/pumps/0/ref",
      'there is no pump "ferow-c40"',
      'did you mean "ferrow-c40"?',
    ],
    ["an in-tank pump nobody makes", (d) => (d.tankPumps[1].ref = "x"), "/tankPumps/1/ref", 'there is no pump "x"'],
    [
      "an unknown device in a branch",
      (d) => (d.loops[0].run[4].branches[2][2].ref = "uv-63"),
      "/loops/0/run/4/branches/2/2/ref",
      'there is no device "uv-63"',
      'did you mean "uv-36"?',
    ],
    [
      "an unknown pipe series",
      (d) => (d.drains[0].run[0].series = "pn16-33"),
      "/drains/0/run/0/series",
      'there is no pipe series "pn16-33"',
      'did you mean "pn16-32"?',
    ],
    [
      "an unknown fitting",
      (d) => (d.drains[0].run[1].fitting = "bulkhaed"),
      "/drains/0/run/1/fitting",
      'there is no fitting "bulkhaed"',
      'did you mean "bulkhead"?',
    ],
    [
      "an unknown valve",
      (d) => (d.drains[0].run[4].valve = "gat"),
      "/drains/0/run/4/valve",
      'there is no valve "gat"',
      'did you mean "gate"?',
    ],
    [
      "a pipe from nowhere",
      (d) => (d.loops[0].from.place = "sump.retrun"),
      "/loops/0/from/place",
      'there is no place "sump.retrun"',
      'did you mean "sump.return"?',
    ],
    [
      "a drain to nowhere",
      (d) => (d.drains[2].run[5].to = "sump.cellar"),
      "/drains/2/run/5/to",
      'there is no place "sump.cellar"',
    ],
    [
      "a drain that ends in the display",
      (d) => (d.drains[2].run[5].to = "display"),
      "/drains/2/run/5/to",
      'a drain ends in "display", which lies above it',
    ],
    [
      "a run without an end",
      (d) => d.drains[2].run.pop(),
      "/drains/2/run/4",
      "the run ends in a fitting; the water has nowhere to go",
    ],
    [
      "a drain that branches",
      (d) => {
        const outlet = d.drains[2].run.pop();
        d.drains[2].run.push({ kind: "tee", branches: [[outlet], [outlet]] });
      },
      "/drains/2/run/5",
      "a drain is one line from its inlet to its chamber; it cannot branch",
    ],
    [
      "parts after the outlet",
      (d) => d.drains[2].run.push({ kind: "fitting", fitting: "union" }),
      "/drains/2/run/6",
      "1 part follows after the outlet at /drains/2/run/5, where the run ends",
    ],
    [
      "parts after a tee",
      (d) => d.loops[0].run.push({ kind: "outlet", to: "display" }),
      "/loops/0/run/5",
      "1 part follows after the tee at /loops/0/run/4, where the run ends",
    ],
    [
      "an outlet before the pump",
      (d) => (d.loops[0].suction = [{ kind: "outlet", to: "display", nozzle: mm(20) }]),
      "/loops/0/suction/0",
      "an outlet lies on the way to the pump; that way has one end, the pump",
    ],
    ["a pipe without a size", (d) => delete d.drains[0].run[0].series, "/drains/0/run/0", "the pipe has no size"],
    [
      "a pipe with two sizes",
      (d) => (d.drains[0].run[0].bore = mm(30)),
      "/drains/0/run/0",
      'the pipe has both the series "pn16-32" and a bore of 30 mm',
    ],
    [
      "a pipe that rises more than it is long",
      (d) => (d.loops[0].run[0].rise = mm(500)),
      "/loops/0/run/0/rise",
      "a pipe of 450 mm cannot rise by 500 mm",
    ],
    [
      "a fitting without any pipe",
      (d) => (d.loops[0].suction = [{ kind: "fitting", fitting: "strainer" }]),
      "/loops/0/suction/0",
      "no pipe lies before or after this fitting to give its size",
    ],
    [
      "two chambers of one name",
      (d) => {
        d.sump.chambers.push({ ...d.sump.chambers[2], id: "drain" });
        d.sump.chambers[2].baffle = mm(210);
      },
      "/sump/chambers/3/id",
      'the chamber "drain" is given already, at /sump/chambers/0',
    ],
    [
      "two drains of one name",
      (d) => (d.drains[2].name = "siphon"),
      "/drains/2/name",
      'the drain "siphon" is given already, at /drains/0',
    ],
    [
      "a weir above the display",
      (d) => (d.overflow.weir.crest = mm(610)),
      "/overflow/weir/crest",
      "the weir's crest at 610 mm is above the display's rim at 600 mm",
    ],
    [
      "a box upside down",
      (d) => (d.overflow.box.floor = mm(650)),
      "/overflow/box/floor",
      "the box's floor at 650 mm is above its rim at 600 mm",
    ],
    [
      "an inlet above its box",
      (d) => (d.drains[2].inlet.elevation = mm(601)),
      "/drains/2/inlet/elevation",
      "the inlet at 601 mm is above the box's rim at 600 mm",
    ],
    [
      "an inlet below its box",
      (d) => (d.drains[2].inlet.elevation = mm(-30)),
      "/drains/2/inlet/elevation",
      "the inlet at -30 mm is below the box's floor at 0 mm",
    ],
    [
      "zones that fill more than the display",
      (d) => (d.display.zones[0].share = 0.5),
      "/display/zones",
      "the zones' shares add up to 1.15",
    ],
    [
      "a wish the wrong way round",
      (d) => d.wishes.returnTurnover.reverse(),
      "/wishes/returnTurnover",
      "the lowest wish, 6 1/h, is above the highest, 3 1/h",
    ],
    [
      "a level above the sump",
      (d) => (d.sump.operatingLevel = mm(420)),
      "/sump/operatingLevel",
      "an operating level of 420 mm is more than the sump's height of 400 mm",
    ],
    [
      "a baffle above the sump",
      (d) => (d.sump.chambers[0].baffle = mm(420)),
      "/sump/chambers/0/baffle",
      "a baffle of 420 mm is more than the sump's height of 400 mm",
    ],
    [
      "a missing baffle",
      (d) => delete d.sump.chambers[0].baffle,
      "/sump/chambers/0/baffle",
      'chamber "drain" has no baffle, though "skimmer" follows it',
    ],
    [
      "a baffle after the last chamber",
      (d) => (d.sump.chambers[2].baffle = mm(100)),
      "/sump/chambers/2/baffle",
      'chamber "return" is the last one; a baffle after it leads nowhere',
    ],
    [
      "a sump pump that draws from the display",
      (d) => {
        d.loops[0].from.place = "display";
        d.loops[0].purpose = undefined;
      },
      "/loops/0/pumps/0/placed",
      'the pump is in the sump, but the loop draws from "display"',
    ],
    [
      "a closed loop from the sump",
      (d) => (d.loops[0].purpose = "closed"),
      "/loops/0/purpose",
      'a closed loop draws from the display, but this one draws from "sump.return"',
    ],
    [
      "a share for a drain that is no siphon",
      (d) => (d.drains[1].share = 0.1),
      "/drains/1/share",
      "only a throttled siphon is set to a share of the flow",
    ],
    [
      "a share without a valve to set it",
      (d) => d.drains[0].run.splice(4, 1),
      "/drains/0/share",
      "the siphon's share is set by a valve, and its run has none",
    ],
    [
      "an in-tank pump outside the tank",
      (d) => (d.tankPumps[0].at[0] = mm(1501)),
      "/tankPumps/0/at/0",
      "1501 mm lies outside the display, whose length is 1500 mm",
    ],
  ])("do not fit with %s", (_, change, path, message, fix) => {
    const problems = problemsAfter(change);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ path, message, ...(fix === undefined ? {} : { fix }) });
    expect(problems[0]!.fix.length).toBeGreaterThan(5);
  });

  it("are checked in feet and inches as in millimetres", () => {
    const problems = problemsAfter((d) => {
      d.overflow.weir.crest = { value: 2, unit: "ft" }; // 609.6 mm, analytic
      d.sump.operatingLevel = { value: 15, unit: "in" }; // 381 mm, below the 400 mm of the glass
    });
    expect(problems.map(({ path }) => path)).toEqual(["/overflow/weir/crest"]);
  });

  it("are looked through without failing in any spoilt document", () => {
    const spoilt = fc.tuple(fc.constantFrom(...names), fc.array(fc.nat(), { minLength: 1, maxLength: 4 }));
    fc.assert(
      fc.property(spoilt, ([name, seeds]) => {
        for (const problem of checkReferences(mutated(read(name), seeds), demoCatalogue))
          expect(problem.fix).toBeTruthy();
      }),
      { numRuns: 2000 },
    );
    fc.assert(fc.property(fc.jsonValue(), (value) => void checkReferences(value, demoCatalogue)));
  });
});
