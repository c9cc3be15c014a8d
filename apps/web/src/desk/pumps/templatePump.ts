import { demoCatalogue, findPump, type PumpRow, writePumpCsv } from "@tidewright/catalogue";
import type { MessageKey, Words } from "@tidewright/words";

/** The row that shows how a table is filled in; it has one of everything. */
function examplePump({ say }: Words): PumpRow {
  const { externalCooling: _, ...pump } = findPump(demoCatalogue, "tarnhelm-f75") as PumpRow;
  return {
    ...pump,
    id: "example-1",
    maker: say("pumps.table.example.maker"),
    model: say("pumps.table.example.model"),
    externalCooling: "air",
    note: say("pumps.table.example.note"),
    source: { title: say("pumps.table.example.source"), where: say("pumps.table.example.where"), status: "published" },
  };
}

/** Returns a table with every heading and one row as an example, in the reader's words, as a CSV text. */
export const templateCsv = (words: Words): string => writePumpCsv([examplePump(words)]);

/** One heading of the table: what it holds, in words, and whether a table must have it. */
export interface HeadingMeaning {
  readonly heading: string;
  readonly meaning: MessageKey;
  readonly needed: boolean;
}

const text: MessageKey = "pumpProblems.column.text";
/** Meaning of each column by the beginning of its heading; the longest beginning counts. */
const meanings: Readonly<Record<string, readonly [MessageKey, boolean]>> = {
  id: ["pumpProblems.column.id", true],
  maker: [text, true],
  model: [text, true],
  placements: ["pumpProblems.column.placements", true],
  control: ["pumpProblems.column.control", true],
  "minimum speed": ["pumpProblems.column.minimumSpeed", false],
  controller: ["pumpProblems.column.controller", false],
  "controller ref": ["pumpProblems.column.controllerRef", false],
  "controller label": [text, false],
  "controller price": ["pumpProblems.column.controllerPrice", false],
  "rated power": ["pumpProblems.column.ratedPower", true],
  "power factor": ["pumpProblems.column.powerFactor", true],
  "inlet bore": ["pumpProblems.column.bore", true],
  "outlet bore": ["pumpProblems.column.bore", true],
  "inlet connection": [text, false],
  "outlet connection": [text, false],
  voltage: ["pumpProblems.column.voltage", true],
  frequency: ["pumpProblems.column.frequency", true],
  sound: ["pumpProblems.column.sound", true],
  price: ["pumpProblems.column.price", true],
  warranty: ["pumpProblems.column.warranty", false],
  "maximum temperature": ["pumpProblems.column.temperature", false],
  "external cooling": ["pumpProblems.column.cooling", false],
  "self-priming": ["pumpProblems.column.selfPriming", false],
  "best efficiency flow": ["pumpProblems.column.bestFlow", false],
  chart: ["pumpProblems.column.chart", false],
  note: [text, false],
  source: ["pumpProblems.column.source", false],
  "source where": ["pumpProblems.column.where", false],
  "source status": ["pumpProblems.column.status", false],
  "curve 1.00": ["pumps.table.curve", true],
  curve: ["pumps.table.curve", false],
  "power ": ["pumps.table.power", false],
};

/** Returns the headings of the template with what they mean, in their order. */
export function headingMeanings(words: Words): readonly HeadingMeaning[] {
  const headings = templateCsv(words).split("\n")[0]?.split(",") ?? [];
  return headings.flatMap((heading) => {
    const begins = Object.keys(meanings)
      .filter((name) => heading === name || heading.startsWith(name.endsWith(" ") ? name : `${name} `))
      .sort((a, b) => b.length - a.length)[0];
    const found = begins === undefined ? undefined : meanings[begins];
    return found === undefined ? [] : [{ heading, meaning: found[0], needed: found[1] }];
  });
}
