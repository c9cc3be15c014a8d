import { englishWords, loadWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import type { Field } from "./fields.ts";
import { fieldText } from "./fieldText.ts";

const plain = (field: Field, value: unknown, words = englishWords) =>
  fieldText(field, value, words)?.replaceAll("\u00a0", " ");
const temperature: Field = { kind: "quantity", dimension: "temperature", key: "temperature", label: "Temperature" };
const angle: Field = { kind: "quantity", dimension: "angle", key: "aim/yaw", label: "Aim" };
const rise: Field = { kind: "quantity", dimension: "length", key: "rise", label: "Rise" };
const share: Field = { kind: "share", key: "opening", label: "Opening" };

describe("a field in words", () => {
  it("has units as they are written, not as the document keeps them", () => {
    expect(plain(temperature, { value: 25.5, unit: "C" })).toBe("25.5 °C");
    expect(plain(angle, { value: 175, unit: "deg" })).toBe("175°");
    expect(plain(rise, { value: -360, unit: "mm" })).toBe("−360 mm");
  });

  it("has shares in per cent and choices by their labels", () => {
    expect(plain(share, 0.125)).toBe("12.5 %");
    const choice: Field = { kind: "choice", key: "kind", label: "Kind", choices: [{ value: "a", label: "Gate" }] };
    expect(plain(choice, "a")).toBe("Gate");
    // A value that no list offers any more still says what it is.
    expect(plain(choice, "dryStandpipe")).toBe("Dry standpipe");
  });

  it("has both ends of a range", () => {
    const range: Field = { kind: "range", dimension: "turnover", key: "returnTurnover", label: "Turnover" };
    const ends = [
      { value: 3, unit: "/h" },
      { value: 6, unit: "/h" },
    ];
    expect(plain(range, ends)).toBe("3/h to 6/h");
  });

  it("has the decimal sign of the reader", async () => {
    const german = await loadWords("de");
    expect(plain(temperature, { value: 25.5, unit: "C" }, german)).toBe("25,5 °C");
    expect(plain(share, 0.125, german)).toBe("12,5 %");
  });

  it("says nothing of what is not given", () => {
    expect(fieldText(rise, undefined, englishWords)).toBeUndefined();
  });
});
