import { demoCatalogue, findPump, type PumpRow } from "@tidewright/catalogue";
import { loadWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { screenFormat } from "../../format/screenFormat.ts";
import { buildPump } from "./buildPump.ts";
import { figureOf, readFigure } from "./figure.ts";
import { type FieldProblem, judgePump, mainsFor } from "./judgePump.ts";
import { emptyForm, type FormUnits, formOf, inUnits, type PumpForm, shortName, unitsFor } from "./pumpForm.ts";

const english = await loadWords("en");
const metric: FormUnits = { flow: "L/h", head: "m", bore: "mm", temperature: "C" };
const us: FormUnits = { flow: "US gal/h", head: "ft", bore: "in", temperature: "F" };
const pump = findPump(demoCatalogue, "ferrow-c80") as PumpRow;
/** A pump of before, as another program or a hand could have written it: odd flows, watts at flows of their own. */
const odd: PumpRow = {
  ...pump,
  id: "odd-1",
  curves: [
    {
      speedRatio: 1,
      points: [
        { flow: 0, head: 4.123456789012345 },
        { flow: 1 / 3600, head: 10 / 3 },
        { flow: 0.002, head: 0 },
      ],
      power: [
        { flow: 0.0001, power: 100 / 3 },
        { flow: 1 / 3600, power: 70 },
      ],
    },
    {
      speedRatio: 0.55,
      points: [
        { flow: 0, head: 1.2 },
        { flow: 0.001, head: 0.1 },
      ],
    },
  ],
};

const judge = (form: PumpForm, taken: (id: string) => "own" | "program" | undefined = () => undefined) =>
  judgePump(form, {
    words: english,
    format: screenFormat({ system: "metric", own: {} }),
    mains: mainsFor("metric"),
    taken,
  }).problems;
const at = (problems: readonly FieldProblem[], place: string) =>
  problems.filter((problem) => problem.place === place).map(({ severity, text }) => `${severity}: ${text}`);
const typed = (form: PumpForm, change: Partial<PumpForm>) => ({ ...form, ...change });
const sheet = () => formOf(pump, metric, english);
const withCell = (form: PumpForm, row: number, column: "flow" | "head" | "watts", text: string): PumpForm => ({
  ...form,
  curves: form.curves.map((curve, table) =>
    table > 0
      ? curve
      : { ...curve, points: curve.points.map((point, i) => (i === row ? { ...point, [column]: { text } } : point)) },
  ),
});

describe("a pump's sheet", () => {
  it.each([
    ["metric", metric, "en"],
    ["US", us, "en"],
    ["German", metric, "de"],
    ["US units read by a German", us, "de"],
  ] as const)("shows every pump and makes the very same of it again, %s", async (_, units, language) => {
    const words = await loadWords(language);
    for (const row of [...demoCatalogue.pumps, odd]) {
      const built = buildPump(formOf(row, units, words), words);
      expect(built.unread, row.id).toEqual([]);
      expect(built.row, row.id).toEqual(row);
    }
  });

  it("stands for the same pump after its units were changed and changed back, and after a rest on the device", () => {
    for (const row of [...demoCatalogue.pumps, odd]) {
      const there = inUnits(formOf(row, metric, english), us, english);
      expect(buildPump(there, english).row).toEqual(row);
      const back = inUnits(JSON.parse(JSON.stringify(there)) as PumpForm, metric, english);
      expect(buildPump(back, english).row).toEqual(row);
    }
  });

  it("turns what was typed into the new unit, and leaves what is no number as it is", () => {
    const typedForm = withCell(withCell(sheet(), 1, "flow", "1000"), 2, "flow", "many");
    const there = inUnits(typedForm, us, english);
    // NIST SP 811: one US gallon is 3.785411784 L.
    expect(Number(there.curves[0]?.points[1]?.flow.text)).toBeCloseTo(1000 / 3.785411784, 3);
    expect(there.curves[0]?.points[2]?.flow.text).toBe("many");
  });

  it("takes a unit that is typed with a number, and no other currency", () => {
    // NIST SP 811: one inch is 25.4 mm.
    expect(readFigure({ text: "1 in" }, { dimension: "length", unit: "mm" }, english)).toEqual({
      state: "read",
      value: 0.0254,
    });
    const money = { dimension: "money", unit: "EUR" } as const;
    expect(readFigure({ text: "99" }, money, english)).toEqual({ state: "read", value: 99 });
    expect(readFigure({ text: "99 USD" }, money, english)).toMatchObject({ state: "wrong" });
    expect(figureOf(0.0000125, { dimension: "flow", unit: "L/h" }, ",").text).toBe("45");
  });

  it("asks for what is needed on an empty sheet, and calls nothing of that wrong yet", () => {
    const problems = judge(emptyForm(metric));
    expect(new Set(problems.filter(({ severity }) => severity === "missing").map(({ place }) => place))).toEqual(
      new Set([
        ...["id", "maker", "model", "ratedPower", "powerFactor", "inletBore", "outletBore", "voltage"],
        ...["frequency", "soundLevel", "price", "sourceTitle", "placements", "curves.0"],
      ]),
    );
    expect(problems.every(({ severity }) => severity === "missing")).toBe(true);
  });

  it("finds nothing to say of a sound pump", () => {
    expect(judge(sheet())).toEqual([]);
  });

  it("tells every problem at its field, in words of the sheet", () => {
    const wrong = typed(sheet(), {
      placements: [],
      controller: "",
      powerFactor: { text: "1.2" },
      soundLevel: { text: "5" },
      price: { text: "cheap" },
      minimumSpeed: { text: "130" },
      bestEfficiencyFlow: { text: "9000" },
      id: "two words",
    });
    const problems = judge(wrong);
    expect(at(problems, "placements")).toEqual(["missing: Tick at least one place."]);
    expect(at(problems, "controller")[0]).toMatch(/Choose whether it lies in the box/);
    expect(at(problems, "powerFactor")[0]).toMatch(/^error: 1\.2 is not above 0 and up to 1/);
    expect(at(problems, "soundLevel")[0]).toMatch(/^doubt: 5 is hard to believe/);
    expect(at(problems, "price")).toHaveLength(1);
    expect(at(problems, "minimumSpeed")[0]).toMatch(/Give per cent of the full speed/);
    expect(at(problems, "bestEfficiencyFlow")[0]).toMatch(/between 0 and 8000/);
    expect(at(problems, "id")[0]).toMatch(/letters, digits/);
    // And a doubt: a way of cooling for a pump that stands nowhere.
    expect(at(problems, "externalCooling")[0]).toMatch(/^doubt/);
    expect(problems).toHaveLength(9);
  });

  it("puts a problem of the curve into the row that was typed, past rows with watts alone", () => {
    const rows = formOf(odd, metric, english);
    // Rows by flow: 0, then watts alone at 360 L/h, then 1000 L/h.
    expect(rows.curves[0]?.points.map(({ head }) => head.text)[1]).toBe("");
    const rising = judge(withCell(rows, 2, "head", "5"));
    expect(at(rising, "curves.0.2.head")[0]).toMatch(/does not fall from the point before/);
    const unread = judge(withCell(rows, 2, "head", "high"));
    expect(at(unread, "curves.0.2.head")).toHaveLength(1);
    expect(at(judge(withCell(rows, 1, "watts", "0")), "curves.0.1.watts")).toHaveLength(1);
    expect(at(judge(withCell(rows, 2, "flow", "")), "curves.0.2.flow")[0]).toMatch(/^missing/);
  });

  it("doubts a pump for other mains, and a short name that the program uses; a name twice is wrong", () => {
    const abroad = formOf(findPump(demoCatalogue, "ostwick-u24-60") as PumpRow, metric, english);
    const problems = judge(abroad, (id) => (id === "ostwick-u24-60" ? "program" : undefined));
    expect(problems.map(({ place, severity }) => `${place} ${severity}`)).toEqual([
      "voltage doubt",
      "frequency doubt",
      "id doubt",
    ]);
    expect(
      at(
        judge(sheet(), () => "own"),
        "id",
      )[0],
    ).toMatch(/^error/);
  });

  it("begins in the reader's units", () => {
    expect(unitsFor(screenFormat({ system: "us", own: {} }))).toEqual(us);
    expect(unitsFor(screenFormat({ system: "metric", own: { length: "ft-in", head: "ft" } }))).toEqual({
      ...metric,
      head: "ft",
    });
  });

  it("makes a short name of maker and model that may stand in a design", () => {
    expect(shortName("Müßig & Söhne", " Größe 3/4 ")).toBe("mussig-sohne-grosse-3-4");
  });
});
