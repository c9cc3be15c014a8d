import { demoCatalogue, findPump, type PumpRow, readPumpCsv, writePumpCsv } from "@tidewright/catalogue";
import { loadWords, sayAgain } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { screenFormat } from "../../format/screenFormat.ts";
import { differences } from "./pumpValues.ts";
import { reviewTable } from "./reviewTable.ts";
import { decodeTable, sheetText } from "./sheetText.ts";
import { headingMeanings, templateCsv } from "./templatePump.ts";

const english = await loadWords("en");
const named = (id: string, from = "ferrow-c40"): PumpRow => ({ ...(findPump(demoCatalogue, from) as PumpRow), id });
const format = screenFormat({ system: "metric", own: {} });

describe("a table of pumps that comes in", () => {
  const known = [named("a"), named("b"), named("c")].map((pump) => ({ id: pump.id, version: 3, pump }));

  it("is told apart into new, changed, unchanged and wrong", () => {
    const dearer = { ...named("b"), price: 999, placements: ["external" as const] };
    const csv = writePumpCsv([named("a"), dearer, named("d"), { ...named("e"), model: "" }]);
    const review = reviewTable(csv, known);
    expect(review.added.map(({ pump, version }) => [pump.id, version])).toEqual([["d", 0]]);
    expect(review.changed.map(({ pump, version }) => [pump.id, version])).toEqual([["b", 3]]);
    expect(review.same.map(({ id }) => id)).toEqual(["a"]);
    expect(review.wrong.map(({ row, column }) => `${row} ${column}`)).toEqual(["5 model"]);
    const [changed] = review.changed;
    expect(differences(changed!.before!, changed!.pump, english, format)).toEqual([
      { field: "Where it may stand", before: "in the sump · dry, outside", after: "dry, outside" },
      { field: "Price", before: "234.00\u00a0EUR", after: "999.00\u00a0EUR" },
    ]);
  });

  it("takes a pump whose fields were written in another order for the same", () => {
    const turned = Object.fromEntries(Object.entries(named("a")).reverse()) as unknown as PumpRow;
    expect(reviewTable(writePumpCsv([named("a")]), [{ id: "a", version: 1, pump: turned }]).same).toHaveLength(1);
    expect(differences(named("a"), turned, english, format)).toEqual([]);
  });

  it("replaces a kept row that cannot be read", () => {
    const [changed] = reviewTable(writePumpCsv([named("a")]), [{ id: "a", version: 7, pump: undefined }]).changed;
    expect(changed).toMatchObject({ version: 7, before: undefined });
  });
});

describe("a table of pumps that goes out", () => {
  it("reads back to the very same pumps, with decimal points or commas", () => {
    const pumps = demoCatalogue.pumps.map((pump) => ({ ...pump, note: 'two; "three", 3.5\nfour' }));
    for (const language of ["en", "de"] as const) {
      const text = sheetText(writePumpCsv(pumps), language);
      expect(text.startsWith("\ufeff")).toBe(true);
      const back = readPumpCsv(text);
      expect(back.problems).toEqual([]);
      expect(back.pumps).toEqual(pumps);
    }
    const german = sheetText(writePumpCsv([named("a")]), "de");
    expect(german).toMatch(/;0,92;/);
    expect(german).not.toMatch(/\d\.\d+[;\n@]/);
  });

  it("has a template that reads without a problem, and says what each of its headings means", () => {
    const { pumps, problems } = readPumpCsv(templateCsv(english));
    expect([pumps.length, problems]).toEqual([1, []]);
    const headings = templateCsv(english).split("\n")[0]!.split(",");
    const told = headingMeanings(english);
    expect(told.map(({ heading }) => heading)).toEqual(headings);
    // What is called needed is what the reader misses.
    for (const { heading, needed } of told) {
      const rows = templateCsv(english)
        .split("\n")
        .filter((line) => line !== "");
      const at = headings.indexOf(heading);
      const without = rows[0]!.split(",").filter((_, i) => i !== at);
      const missed = readPumpCsv(without.join(",")).problems.some(({ problem }) => problem === "the column is missing");
      expect(missed, heading).toBe(needed);
    }
  });

  it("is read in whichever code a sheet program wrote it", () => {
    const bytes = (...values: number[]) => new Uint8Array(values);
    expect(decodeTable(new TextEncoder().encode("Größe"))).toBe("Größe");
    // Windows-1252: ö is F6, ß is DF (Unicode consortium's mapping table CP1252.TXT).
    expect(decodeTable(bytes(0x47, 0x72, 0xf6, 0xdf, 0x65))).toBe("Größe");
    expect(decodeTable(bytes(0xff, 0xfe, 0xe4, 0x00))).toBe("ä");
    expect(decodeTable(bytes(0x50, 0x4b, 0x03, 0x04, 0x00, 0x00))).toBeUndefined();
  });
});

describe("what is wrong with pumps", () => {
  it("is said again in German, whatever the check and the reader of tables find", async () => {
    const german = await loadWords("de");
    const base = named("x", "ferrow-c80");
    const broken: Partial<PumpRow>[] = [
      { maker: "", model: " ", placements: [], id: "ä" },
      { placements: ["inTank", "inTank"], externalCooling: "air" },
      { ratedPower: 0, powerFactor: 2, inletBore: 0, outletBore: 2, voltage: 0, frequency: -1, soundLevel: -1 },
      { voltage: 80, frequency: 55, soundLevel: 5, price: 0, warrantyMonths: -1, maximumTemperature: 5 },
      { price: -1, maximumTemperature: Number.POSITIVE_INFINITY, minimumSpeed: 0, outletBore: 0.005 },
      { control: "constant" },
      { minimumSpeed: 1, controller: { included: false } },
      { controller: { included: true, price: -1 } },
      { curves: [] },
      { curves: [{ speedRatio: 0.9, points: [{ flow: 0, head: 4 }] }] },
      { curves: [base.curves[0]!, { ...base.curves[0]!, speedRatio: 2 }, { ...base.curves[1]!, speedRatio: 0.3 }] },
      { curves: [{ speedRatio: 1, points: Array.from({ length: 51 }, (_, i) => ({ flow: i, head: 99 - i })) }] },
      {
        curves: [
          {
            speedRatio: 1,
            points: [
              { flow: 0.001, head: 4 },
              { flow: 0.001, head: 5 },
              { flow: -1, head: -1 },
              { flow: Number.NaN, head: 0 },
            ],
            power: [{ flow: 0, power: 0 }],
          },
        ],
      },
      { ratedPower: 20, bestEfficiencyFlow: 1 },
      { curves: base.curves.map(({ speedRatio, points }) => ({ speedRatio, points })), ratedPower: 5 },
      { curves: base.curves.slice(0, 1).map(({ points }) => ({ speedRatio: 1, points: points.slice(1) })) },
    ];
    const rows = broken.flatMap((change) => readPumpCsv(writePumpCsv([{ ...base, ...change }])).problems);
    const header = templateCsv(english).split("\n")[0]!;
    const cells = templateCsv(english).split("\n")[1]!;
    const tables = [
      "",
      header.replace("rated power W", "rated power hp").replace("price EUR", "prise,colour,maker"),
      header.replace("curve 1.00 (L/h@m)", "curve 1.00 (L/h@yd)").replace("voltage V", "voltage kV"),
      `${header}\n${cells},more`,
      `${header}\n${cells}\n${cells}`,
      `${header}\n${cells.replace("controllable", "sometimes").replace("0.25", "a").replace("1.00", "1,00")}`,
      `${header}\n${cells.replace("separate", "").replace("inSump", "inShed").replace(/,no,/, ",perhaps,")}`,
      `${header}\n${cells.replace("0@7.5", "0-7.5")}`,
      `${header}\n${cells.replace("0@7.5", "0@7.5 yd")}`,
      `${header}\n${cells.replace("0@7.5", "x@7.5")}`,
      `${header}\n${cells.replace("140", "1e999")}`,
      `${header.replace("curve 0.80 (L/h@m)", "curve 0.70 (L/h@m)")}\n${cells}`,
      `${header}\n${cells.replace("Example maker", 'Exam"ple')}\n"x`,
      `${header}\n,,,`,
      `id,maker\n${"x\n".repeat(1100)}`,
      `${header}\n${`${cells}\n`.repeat(1100)}`,
    ];
    const told = [...rows, ...tables.flatMap((table) => readPumpCsv(table).problems)].flatMap(({ problem, fix }) => [
      problem,
      fix,
    ]);
    const left = [...new Set(told)].filter((text) => sayAgain(text, german, "pumpProblems") === text);
    expect(left).toEqual([]);
    expect(new Set(told).size).toBeGreaterThan(85);
    expect(sayAgain('the flow of point 2 "x@3" is not a number', german, "pumpProblems")).toBe(
      "Förderstrom von Punkt 2 „x@3“ ist keine Zahl",
    );
  });
});
