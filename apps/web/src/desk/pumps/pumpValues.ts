import type { PumpRow } from "@tidewright/catalogue";
import type { MessageKey, Words } from "@tidewright/words";
import type { ScreenFormat } from "../../format/useFormat.ts";
import { currency } from "./pumpForm.ts";
import { reachOf } from "./pumpPlot.ts";

type Field = Exclude<keyof PumpRow, "currency" | "connection"> | "inlet" | "outlet";

/** One field in which two pumps differ, each value in words. */
export interface Difference {
  readonly field: string;
  readonly before: string;
  readonly after: string;
}

const fields: readonly Field[] = [
  "id",
  "maker",
  "model",
  "placements",
  "externalCooling",
  "selfPriming",
  "control",
  "minimumSpeed",
  "controller",
  "ratedPower",
  "powerFactor",
  "voltage",
  "frequency",
  "inletBore",
  "inlet",
  "outletBore",
  "outlet",
  "curves",
  "bestEfficiencyFlow",
  "soundLevel",
  "price",
  "warrantyMonths",
  "maximumTemperature",
  "chart",
  "note",
  "source",
];

/** Returns every field in which two pumps differ, in the order of the sheet.
 *  before, after   words and format of the reader   -> Difference[]; texts may be alike where the difference is finer */
export function differences(before: PumpRow, after: PumpRow, words: Words, format: ScreenFormat): Difference[] {
  return fields.flatMap((field) => {
    const [a, b] = [partOf(before, field), partOf(after, field)];
    if (plain(a) === plain(b)) return [];
    return [
      {
        field: fieldName(field, words, format),
        before: valueWords(before, field, words, format),
        after: valueWords(after, field, words, format),
      },
    ];
  });
}

const partOf = (pump: PumpRow, field: Field): unknown =>
  field === "inlet" || field === "outlet" ? pump.connection[field] : pump[field];

/** The order in which fields of an object were written says nothing. */
const plain = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) =>
    typeof part === "object" && part !== null && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  ) ?? "";

/** A field's label without the unit that stands behind it on the sheet. */
function fieldName(field: Field, words: Words, format: ScreenFormat): string {
  const key = `pumps.field.${field}`;
  const said = words.knows(key) ? words.say(key as MessageKey, { unit: format.label("flow") }) : field;
  return said.split(",")[0] ?? said;
}

function valueWords(pump: PumpRow, field: Field, words: Words, format: ScreenFormat): string {
  const { say } = words;
  const none = say("pumps.value.none");
  switch (field) {
    case "placements":
      return placeWords(pump, words);
    case "externalCooling":
      return say(`pumps.cooling.${pump.externalCooling ?? ""}`);
    case "selfPriming":
      return say(pump.selfPriming ? "pumps.yes" : "pumps.no");
    case "control":
      return say(`pumps.control.${pump.control}`);
    case "minimumSpeed":
      return `${format.plain(pump.minimumSpeed * 100, 5)} %`;
    case "controller": {
      const { controller } = pump;
      if (controller === undefined) return none;
      const price = controller.price === undefined ? undefined : format.sum(controller.price, currency);
      const kind = say(`pumps.controller.${controller.included ? "included" : "separate"}`);
      return [kind, controller.ref, controller.label, price].filter(Boolean).join(", ");
    }
    case "ratedPower":
      return format(pump.ratedPower, "power");
    case "powerFactor":
    case "warrantyMonths":
      return format.plain(pump[field], 6);
    case "voltage":
      return format(pump.voltage, "voltage");
    case "frequency":
      return format(pump.frequency, "frequency");
    case "inletBore":
    case "outletBore":
      return format(pump[field], "length");
    case "curves":
      return pump.curves
        .map(
          (curve) =>
            `${words.number(curve.speedRatio * 100)} %: ${say("pumps.value.points", { count: curve.points.length })}`,
        )
        .concat(`${format(reachOf(pump).head, "head")}, ${format(reachOf(pump).flow, "flow")}`)
        .join("; ");
    case "bestEfficiencyFlow":
      return pump.bestEfficiencyFlow === undefined ? none : format(pump.bestEfficiencyFlow, "flow");
    case "soundLevel":
      return format(pump.soundLevel, "soundLevel");
    case "price":
      return format.sum(pump.price, currency);
    case "maximumTemperature":
      return pump.maximumTemperature === undefined ? none : format(pump.maximumTemperature, "temperature");
    case "chart":
      return say(`pumps.chart.${pump.chart}`);
    case "source":
      return [pump.source.title, pump.source.where, say(`pumps.status.${pump.source.status}`)]
        .filter(Boolean)
        .join(", ");
    case "inlet":
    case "outlet":
      return pump.connection[field] || none;
    case "id":
    case "maker":
    case "model":
      return pump[field];
    case "note":
      return pump.note ?? none;
  }
}

/** Where a pump may stand, in words. */
export function placeWords({ placements }: Pick<PumpRow, "placements">, { say }: Words): string {
  return placements.map((placement) => say(`pumps.place.${placement}`)).join(" · ");
}
