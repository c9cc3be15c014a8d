import { loadWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { pricedName } from "./pricedNames.ts";

const german = await loadWords("de", ["desk"]);
const read = (text: string) => pricedName(text, (kind) => german.say(`desk.kind.${kind}`));

describe("the name of a factor on prices", () => {
  it("is a kind in the reader's language or as it is kept", () => {
    for (const text of ["Pumpe", "pumpe ", "pump", "Pump"]) expect(read(text)).toEqual({ of: "kind", name: "pump" });
    expect(read("Rohr")).toEqual({ of: "kind", name: "pipe" });
  });

  it("is a maker of pumps or devices, in the catalogue's spelling", () => {
    expect(read(" ferrow")).toEqual({ of: "maker", name: "Ferrow" });
  });

  it("is told where nothing bears it", () => {
    expect(read("No Such Maker ")).toEqual({ of: "nothing", name: "No Such Maker" });
  });
});
