import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { demoPumpTable } from "../demo/demoPumpTable.ts";
import type { PumpRow, SpeedCurve } from "../pumps/pump.ts";
import { readPumpCsv } from "./readPumpCsv.ts";
import { writePumpCsv } from "./writePumpCsv.ts";

const heading =
  "id,maker,model,placements,control,curve 1.00 (L/h@m),rated power W,power factor,inlet bore mm,outlet bore mm,voltage V,frequency Hz,sound dB(A),price EUR";
const good = "ferrow-x1,Ferrow,X1,external,constant,0@4;1800@3;3600@1,50,0.8,25,20,230,50,38,99";
const table = (...rows: string[]) => [heading, ...rows].join("\n");

describe("a pump table", () => {
  it("carries its headings' units into SI", () => {
    const { pumps, problems } = readPumpCsv(table(good));
    expect(problems).toEqual([]);
    const pump = pumps[0]!;
    // Analytic: 3600 L/h is 1 L/s, 1e-3 m3/s; 20 mm is 0.02 m.
    expect(pump.curves[0]!.points).toEqual([
      { flow: 0, head: 4 },
      { flow: 0.0005, head: 3 },
      { flow: 0.001, head: 1 },
    ]);
    expect(pump.outletBore).toBe(0.02);
    expect(pump.minimumSpeed).toBe(1);
    expect(pump.source.status).toBe("from memory");
  });

  it("converts gallons, feet, inches and Fahrenheit by their definitions", () => {
    const text = table(good.replace("0@4;1800@3;3600@1", "0@10;100@5"))
      .replace("curve 1.00 (L/h@m)", "Curve 100 % [US gal/h@ft]")
      .replace("outlet bore mm", "outlet bore (in)")
      .replace("price EUR", "price EUR,max temperature F")
      .replace(",20,230,50,38,99", ",0.75,230,50,38,99,95");
    const { pumps, problems } = readPumpCsv(text);
    expect(problems).toEqual([]);
    // NIST SP 811, appendix B: US gallon 3.785411784 L, foot 0.3048 m, inch 25.4 mm, all exact.
    expect(pumps[0]!.curves[0]!.points[1]!.flow).toBeCloseTo((100 * 3.785411784e-3) / 3600, 15);
    expect(pumps[0]!.curves[0]!.points[1]!.head).toBeCloseTo(1.524, 12);
    expect(pumps[0]!.outletBore).toBeCloseTo(0.01905, 12);
    expect(pumps[0]!.maximumTemperature).toBeCloseTo(35, 12);
  });

  it("may name a unit inside a cell, which then outweighs the heading's", () => {
    const { pumps, problems } = readPumpCsv(table(good.replace("0@4;1800@3;3600@1", "0@400 cm;0.5 m3/h@3 m")));
    expect(problems).toEqual([]);
    expect(pumps[0]!.curves[0]!.points[0]!.head).toBe(4);
    expect(pumps[0]!.curves[0]!.points[1]!.flow).toBeCloseTo(0.5 / 3600, 15);
  });

  it("may come with a byte-order mark, Windows line ends, semicolons, decimal commas and quotation marks", () => {
    const cells = good.split(",");
    cells[5] = '"0@4,5;1800@3,25;3600@1"';
    cells[7] = "0,8";
    cells[2] = '"X1 ""long""; grey"';
    const text = `\uFEFF${heading.replaceAll(",", ";")}\r\n\r\n${cells.join(";")}\r\n`;
    const { pumps, problems } = readPumpCsv(text);
    expect(problems).toEqual([]);
    expect(pumps[0]!.model).toBe('X1 "long"; grey');
    expect(pumps[0]!.curves[0]!.points[1]!.head).toBe(3.25);
    expect(pumps[0]!.powerFactor).toBe(0.8);
  });

  it("may be parted by tabs", () => {
    expect(readPumpCsv(table(good).replaceAll(",", "\t")).pumps).toHaveLength(1);
  });

  it("with many faults reports every one with its row and column and keeps the good rows", () => {
    const bad = good
      .replace("ferrow-x1", "ferrow-x2")
      .replace("external", "garage")
      .replace("50,0.8", "fifty,1.4")
      .replace("1800@3", "1800@5");
    const { pumps, problems } = readPumpCsv(
      table(good, bad, good.replace("x1", "x3").replace("1800@3", "1800@5"), good, good.replace("x1", "x4")),
    );
    expect(pumps.map((pump) => pump.id)).toEqual(["ferrow-x1", "ferrow-x4"]);
    expect(problems.map(({ row, column }) => [row, column])).toEqual([
      [3, "placements"],
      [3, "rated power W"],
      [4, "curve 1.00"],
      [5, "id"],
    ]);
    for (const { value, problem, fix } of problems) {
      expect(value).not.toBe("");
      expect(problem.length).toBeGreaterThan(5);
      expect(fix.length).toBeGreaterThan(5);
    }
  });

  it("with missing, unknown and doubled columns names each of them", () => {
    const text = table(good)
      .replace("maker", "colour")
      .replace("price EUR", "price USD")
      .replace("sound dB(A)", "control");
    const { pumps, problems } = readPumpCsv(text);
    expect(pumps).toEqual([]);
    expect(problems.map((problem) => problem.column).sort()).toEqual(
      ["colour", "control", "maker", "price", "price USD", "sound"].sort(),
    );
    expect(problems.every((problem) => problem.row === 1)).toBe(true);
  });

  it("with empty needed cells names them all in one line", () => {
    const { problems } = readPumpCsv(table(good.replace("Ferrow,X1", ",").replace("0@4;1800@3;3600@1", "")));
    expect(problems).toHaveLength(1);
    expect(problems[0]!.column).toBe("maker, model, curve 1.00 (L/h@m)");
  });

  it("of another kind altogether gives problems and no pump", () => {
    for (const text of ["", "\uFEFF", "\n\n\n", '"', "{}", "a,b\n1,2", `${heading}\n"unclosed`, "\0\0\0"]) {
      const { pumps, problems } = readPumpCsv(text);
      expect(pumps).toEqual([]);
      expect(problems.length).toBeGreaterThan(0);
    }
  });

  it("of ten megabytes is read whole within seconds", () => {
    const [first, ...rows] = demoPumpTable.trim().split("\n");
    const lines = [first!];
    for (let size = 0, count = 0; size < 10e6; count += 1) {
      const line = `n${count}-${rows[count % rows.length]}`;
      lines.push(line);
      size += line.length + 1;
    }
    const { pumps, problems } = readPumpCsv(lines.join("\n"));
    expect(problems).toEqual([]);
    expect(pumps).toHaveLength(lines.length - 1);
  });

  it("wrong in ten thousand rows gathers the later ones and still counts them all", () => {
    const { problems } = readPumpCsv(table(...Array.from({ length: 10_000 }, () => 'a"b,1')));
    expect(problems.length).toBeLessThan(1100);
    expect(problems.some((problem) => problem.problem.includes("the same 9000 times in rows 1002 to 10001"))).toBe(
      true,
    );
  });

  it("never throws on any text", () => {
    const cell = fc.oneof(
      fc.string(),
      fc.constantFrom("0@4;100@3", "nan", "1e999", "-1", '"', ";", "@", "0@@1", "1,5"),
    );
    fc.assert(
      fc.property(fc.array(fc.array(cell, { maxLength: 15 })), (rows) => {
        const { problems } = readPumpCsv(table(...rows.map((row) => row.join(","))));
        expect(Array.isArray(problems)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
});

const text = fc.string({ maxLength: 20, unit: "grapheme" }).map((value) => value.trim());
const filled = text.filter((value) => value !== "");
const positive = (max: number) => fc.double({ min: max / 1e6, max, noNaN: true });
const optional = <Value>(arbitrary: fc.Arbitrary<Value>) => fc.option(arbitrary, { nil: undefined });
const present = <Fields extends object>(fields: Fields) =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined && value !== ""));

const distinct = (max: number) =>
  fc.uniqueArray(positive(max), { minLength: 2, maxLength: 14 }).map((values) => values.sort((a, b) => a - b));
const fullCurve: fc.Arbitrary<SpeedCurve> = fc
  .tuple(distinct(0.01), distinct(10), fc.boolean())
  .map(([flows, heads, withPower]) => {
    const count = Math.min(flows.length, heads.length);
    const points = flows.slice(0, count).map((flow, i) => ({ flow, head: heads[count - 1 - i]! }));
    const power = points.map((point) => ({ flow: point.flow, power: 1e4 + point.head }));
    return { speedRatio: 1, points, ...(withPower ? { power } : {}) };
  });

const pumpArbitrary: fc.Arbitrary<PumpRow> = fc
  .record({
    model: filled,
    maker: filled,
    placements: fc.uniqueArray(fc.constantFrom("inSump" as const, "external" as const, "inTank" as const), {
      minLength: 1,
    }),
    full: fullCurve,
    controller: optional(fc.record({ ref: filled, price: positive(1000), label: optional(filled) })),
    slow: fc.double({ min: 0.011, max: 0.99, noNaN: true }),
    minimumSpeed: positive(1),
    ratedPower: fc.double({ min: 1e4, max: 1e5, noNaN: true }),
    powerFactor: positive(1),
    inletBore: positive(0.1),
    outletBore: positive(0.1),
    inlet: text,
    outlet: text,
    voltage: positive(400),
    frequency: fc.constantFrom(0, 50, 60),
    soundLevel: positive(100),
    price: positive(2000),
    warrantyMonths: fc.nat(120),
    maximumTemperature: optional(fc.double({ min: -50, max: 100, noNaN: true })),
    externalCooling: optional(fc.constantFrom("air" as const, "water" as const)),
    selfPriming: fc.boolean(),
    bestShare: optional(fc.double({ min: 0.01, max: 0.99, noNaN: true })),
    chart: fc.constantFrom("points" as const, "reading" as const),
    note: optional(filled),
    title: filled,
    where: optional(filled),
    status: fc.constantFrom(
      "published" as const,
      "common practice" as const,
      "from memory" as const,
      "invented" as const,
    ),
  })
  .map((r) => {
    const last = r.full.points[r.full.points.length - 1]!;
    // One slower curve, well below the full one.
    const slowCurve = {
      speedRatio: r.slow,
      points: [
        { flow: 0, head: last.head / 2 },
        { flow: last.flow / 2, head: 0 },
      ],
    };
    const controllable = r.controller !== undefined;
    return {
      id: "unnamed",
      maker: r.maker,
      model: r.model,
      placements: r.placements,
      control: controllable ? ("controllable" as const) : ("constant" as const),
      ...(r.controller === undefined ? {} : { controller: { included: false, ...present(r.controller) } }),
      minimumSpeed: controllable ? r.minimumSpeed : 1,
      curves: controllable ? [r.full, slowCurve] : [r.full],
      ratedPower: r.ratedPower,
      powerFactor: r.powerFactor,
      inletBore: r.inletBore,
      outletBore: r.outletBore,
      connection: { inlet: r.inlet, outlet: r.outlet },
      voltage: r.voltage,
      frequency: r.frequency,
      soundLevel: r.soundLevel,
      price: r.price,
      currency: "EUR" as const,
      warrantyMonths: r.warrantyMonths,
      ...present({ maximumTemperature: r.maximumTemperature, externalCooling: r.externalCooling, note: r.note }),
      selfPriming: r.selfPriming,
      ...(r.bestShare === undefined ? {} : { bestEfficiencyFlow: r.bestShare * last.flow }),
      chart: r.chart,
      source: { title: r.title, status: r.status, ...present({ where: r.where }) },
    } as PumpRow;
  });

describe("writing a pump table and reading it back", () => {
  it("returns the same pumps to the last bit, whatever the numbers and texts", () => {
    fc.assert(
      fc.property(fc.array(pumpArbitrary, { minLength: 1, maxLength: 5 }), (drawn) => {
        const pumps = drawn.map((pump, index) => ({ ...pump, id: `pump-${index}` }));
        const read = readPumpCsv(writePumpCsv(pumps));
        expect(read.problems.filter((problem) => problem.severity === "error")).toEqual([]);
        expect(read.pumps).toEqual(pumps);
      }),
      { numRuns: 300 },
    );
  });

  it("returns the demonstration pumps unchanged, and the second writing equals the first", () => {
    const pumps = readPumpCsv(demoPumpTable).pumps;
    const written = writePumpCsv(pumps);
    expect(readPumpCsv(written).pumps).toEqual(pumps);
    expect(writePumpCsv(readPumpCsv(written).pumps)).toBe(written);
  });

  it("of no pumps gives a heading and nothing else", () => {
    expect(readPumpCsv(writePumpCsv([]))).toEqual({ pumps: [], problems: [] });
  });
});
