import { describe, expect, it } from "vitest";
import { pastePoints } from "./pastePoints.ts";

describe("columns pasted out of a sheet", () => {
  it("takes tabs, line ends of any machine, and passes headings over", () => {
    expect(pastePoints("Flow L/h\tHead m\r\n0\t4.1\r\n1000\t3.9\r\n", ".", 3)).toEqual({
      rows: [
        ["0", "4.1"],
        ["1000", "3.9"],
      ],
      skipped: 1,
    });
  });

  it("reads numbers that only make sense with the other decimal sign, and writes them with the reader's", () => {
    expect(pastePoints("0\t4,1\n1.000,5\t3,9", ".", 3)?.rows).toEqual([
      ["0", "4.1"],
      ["1000.5", "3.9"],
    ]);
    // A German thousand beside a German comma: without the comma it would be one litre.
    expect(pastePoints("1.000\t4,1", ".", 3)?.rows).toEqual([["1000", "4.1"]]);
    expect(pastePoints("1.234\t4.1", ".", 3)?.rows).toEqual([["1.234", "4.1"]]);
    expect(pastePoints("0\t4.15\n1500.25\t3.9", ",", 3)?.rows[1]).toEqual(["1500,25", "3,9"]);
  });

  it("leaves a cell that is no number as it stands, to be mended in the sheet", () => {
    expect(pastePoints("0\t4.1\n1000\tabout 4", ".", 3)?.rows[1]).toEqual(["1000", "about 4"]);
  });

  it("takes three columns where watts are wanted, blanks or semicolons between, and blanks between thousands", () => {
    expect(pastePoints("0;4,1;30;x\n500;3,9;35;x", ",", 3)?.rows).toEqual([
      ["0", "4,1", "30"],
      ["500", "3,9", "35"],
    ]);
    expect(pastePoints("0 4.1\n500 3.9", ".", 2)?.rows).toHaveLength(2);
    expect(pastePoints("0\t4.1\n1 500\t3.9", ".", 2)?.rows[1]).toEqual(["1500", "3.9"]);
  });

  it("keeps an empty cell between two full ones", () => {
    expect(pastePoints("0\t\t30\n500\t3.9\t", ".", 3)?.rows).toEqual([
      ["0", "", "30"],
      ["500", "3.9", ""],
    ]);
  });

  it("leaves a single cell and a text without numbers to the browser", () => {
    expect(pastePoints("4.1", ".", 3)).toBeUndefined();
    expect(pastePoints("a\tb\nc\td", ".", 3)).toBeUndefined();
  });
});
