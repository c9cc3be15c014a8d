import { readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { describe, expect, it } from "vitest";
import type { Problem } from "../problem.ts";
import { checkDesign } from "./checkDesign.ts";
import { readDesign } from "./readDesign.ts";

const text = readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8");
// biome-ignore lint/suspicious/noExplicitAny: the tests put wrong things into the document on purpose
type Loose = any;
const sound = (): Loose => JSON.parse(text);

function problemsAfter(change: (design: Loose) => void, withCatalogue = false): readonly Problem[] {
  const design = sound();
  change(design);
  const read = checkDesign(design, withCatalogue ? demoCatalogue : undefined);
  return read.ok ? [] : read.problems;
}

describe("reading a design", () => {
  it("takes the demonstration reef as it stands, typed units untouched", () => {
    const read = readDesign(text, demoCatalogue);
    expect(read.ok && read.design.display.length).toEqual({ value: 1500, unit: "mm" });
    expect(read).not.toHaveProperty("migratedFrom");
  });

  it("passes over a byte order mark", () => {
    expect(readDesign(`\uFEFF${text}`).ok).toBe(true);
  });

  it.each([
    ["", "the document is empty"],
    [" \n\t", "the document is empty"],
    ["[]", "the document is a list of 0; it must be one object"],
    ["17", "the document is a bare number; it must be an object"],
    ["null", "the document is null; it must be an object"],
    ['"reef"', "the document is a bare string; it must be an object"],
  ])("says what %j is", (input, message) => {
    expect(readDesign(input)).toEqual({ ok: false, problems: [expect.objectContaining({ path: "", message })] });
  });

  it("shows line, column and surroundings of the first slip in a text that is not JSON", () => {
    const broken = text.replace('"rockShare": 0.12,', '"rockShare": 0,12,');
    const line = broken.slice(0, broken.indexOf("0,12")).split("\n").length;
    const read = readDesign(broken);
    expect(read).toMatchObject({
      ok: false,
      problems: [
        {
          path: "",
          message: `not JSON: line ${line}, column 20: a field name in double quotes is expected here`,
          value: expect.stringContaining("0,12"),
        },
      ],
    });
  });

  it("names every field given twice", () => {
    const twice = text.replace('"rockShare": 0.12,', '"rockShare": 0.12, "rockShare": 0.2,');
    expect(readDesign(twice)).toMatchObject({ ok: false, problems: [{ path: "/display/rockShare" }] });
  });

  it("refuses more than ten megabytes with the size and without looking inside", () => {
    // Looked into, it would be no JSON.
    const read = readDesign("{".repeat(10_500_000));
    expect(read).toMatchObject({
      ok: false,
      problems: [{ message: "the document is 10.5 MB long; up to 10 MB are read" }],
    });
  });

  it("lists every problem of a document with many, each with its place and a fix", () => {
    const problems = problemsAfter((design) => {
      design.display.lenght = design.display.length;
      delete design.display.length;
      design.display.width = { value: -600, unit: "mm" };
      design.display.height = { value: 60, unit: "cn" };
      design.display.rockShare = 1.2;
      design.water.salinity = 35;
      design.water.temperature = { value: Number.NaN, unit: "C" };
      design.drains[0].kind = "throttledSyphon";
      design.loops[0].run[0].kind = "tube";
      design.loops[0].pumps = [];
      design.sump.chambers[0].id = "drain chamber";
      design.wishes.returnTurnover.pop();
      design.power.voltage = "230 V";
      design.colour = "blue";
    });
    const byPath = new Map(problems.map((problem) => [problem.path, problem]));
    expect([...byPath.keys()].sort()).toEqual(
      [
        "/colour",
        "/display/height/unit",
        "/display/length",
        "/display/lenght",
        "/display/rockShare",
        "/display/width",
        "/drains/0/kind",
        "/loops/0/pumps",
        "/loops/0/run/0/kind",
        "/power/voltage",
        "/sump/chambers/0/id",
        "/water/salinity",
        "/water/temperature/value",
        "/wishes/returnTurnover",
      ].sort(),
    );
    expect(byPath.get("/display/lenght")?.fix).toBe('did you mean "length"? else remove it');
    expect(byPath.get("/display/width")?.message).toBe("-600 mm must be greater than zero");
    expect(byPath.get("/display/height/unit")?.fix).toContain('did you mean "cm"?');
    expect(byPath.get("/drains/0/kind")?.fix).toContain('did you mean "throttledSiphon"?');
    expect(byPath.get("/loops/0/run/0/kind")?.fix).toBe(
      'write one of "pipe", "fitting", "valve", "device", "outlet" and "tee"',
    );
    expect(byPath.get("/water/salinity")?.fix).toContain('{ "value": 35, "unit": ... }');
    expect(byPath.get("/power/voltage")?.fix).toBe('write { "value": 230, "unit": "V" }');
    expect(byPath.get("/water/temperature/value")?.message).toBe("NaN stands where a finite number is expected");
    for (const { message, fix } of problems) {
      expect(message.length).toBeGreaterThan(5);
      expect(fix.length).toBeGreaterThan(5);
      expect(`${message} ${fix}`).not.toMatch(/zod|expected string|received|invalid_|schema|undefined|\[object/i);
    }
  });

  it("tells a bound in the unit that was typed", () => {
    const [problem] = problemsAfter((design) => {
      design.room.altitude = { value: 30_000, unit: "ft" };
    });
    // 6000 m / 0.3048 m = 19685.04 ft, analytic
    expect(problem?.message).toBe("30000 ft is more than 19690 ft, the most that makes sense here");
  });

  it.each([
    [Number.NaN, "NaN stands where"],
    [Number.POSITIVE_INFINITY, "Infinity stands where"],
  ])("refuses %s as an opening and as a share", (value, start) => {
    const problems = problemsAfter((design) => {
      design.drains[0].share = value;
      design.display.zones[0].share = value;
    });
    expect(problems.map(({ path }) => path)).toEqual(["/display/zones/0/share", "/drains/0/share"]);
    for (const { message } of problems) expect(message.startsWith(start)).toBe(true);
  });

  it("says of a newer document that it is newer, and nothing else", () => {
    const problems = problemsAfter((design) => {
      design.tidewright = 3;
      design.future = true;
    });
    expect(problems).toMatchObject([
      { path: "/tidewright", message: "the document is of version 3; this program reads versions up to 1" },
    ]);
  });

  it.each([undefined, "1", -1, 0.5, null])("names the wrong version %j beside all other problems", (version) => {
    const problems = problemsAfter((design) => {
      if (version === undefined) delete design.tidewright;
      else design.tidewright = version;
      design.colour = "blue";
    });
    expect(problems.map(({ path }) => path)).toEqual(["/tidewright", "/colour"]);
  });

  it("finds wrong references in a document that has other mistakes, and tells one slip once", () => {
    const problems = problemsAfter((design) => {
      design.colour = "blue";
      design.loops[0].pumps[0].ref = "ferrow-c41";
      design.drains[1].run.at(-1).to = "sump.drian";
      design.drains[2].inlet.elevation = { value: 545, unit: "furlong" };
    }, true);
    expect(problems.map(({ path }) => path).sort()).toEqual(
      ["/colour", "/drains/1/run/5/to", "/drains/2/inlet/elevation/unit", "/loops/0/pumps/0/ref"].sort(),
    );
    expect(problems.find(({ path }) => path.endsWith("to"))?.fix).toBe('did you mean "sump.drain"?');
  });

  it("survives tees nested a hundred thousand deep", () => {
    const depth = 100_000;
    const bomb = text.replace(
      '"drains": [',
      `"x": ${'{"kind": "tee", "branches": [['.repeat(depth)}${"]]}".repeat(depth)}, "drains": [`,
    );
    const read = readDesign(bomb, demoCatalogue);
    expect(read.ok).toBe(false);
    expect(!read.ok && read.problems.map(({ message }) => message)).toEqual([
      'there is no field "x" here',
      "the nesting is too deep from here on, or goes round in a circle",
    ]);
  });

  it("survives tees nested deep where tees belong", () => {
    const depth = 5_000;
    const outlet = '{"kind":"outlet","to":"display"}';
    const tee = `${'{"kind":"tee","branches":[['.repeat(depth)}${outlet}${`],[${outlet}]]}`.repeat(depth)}`;
    const design = sound();
    const read = readDesign(
      JSON.stringify(design).replace(
        '"fitting":"union"},{"kind":"fitting","fitting":"elbow90"}',
        `"fitting":"union"},${tee}`,
      ),
      demoCatalogue,
    );
    expect(!read.ok && read.problems.some(({ message }) => message.includes("too deep"))).toBe(true);
  });

  it("survives a value that holds itself", () => {
    const problems = problemsAfter((design) => {
      design.self = design;
    }, true);
    expect(problems.map(({ path }) => path)).toEqual(["/self", "/self/self"].slice(0, problems.length));
  });

  it("is not fooled by names every object inherits", () => {
    const withProto = text.replace('"rockShare"', '"__proto__": {"rockShare": 0.5}, "constructor": 1, "rockShare"');
    const read = readDesign(withProto);
    expect(!read.ok && read.problems.map(({ path }) => path)).toEqual(["/display/__proto__", "/display/constructor"]);
  });

  it.each([
    ["valid", '{"name": "zone", "animals": "fish"}', 0],
    ["invalid", '{"nmae": "zone", "animals": "fsh"}', 3],
  ])("reads ten megabytes of %s entries and stays complete", (_, zone, problemsEach) => {
    const count = Math.floor(9_900_000 / (zone.length + 1));
    const design = sound();
    design.display.zones = "ZONES";
    const big = JSON.stringify(design).replace('"ZONES"', `[${Array(count).fill(zone).join(",")}]`);
    const read = readDesign(big);
    expect(read.ok ? 0 : read.problems.length).toBe(problemsEach * count);
  });
});
