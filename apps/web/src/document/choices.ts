import { demoCatalogue, fittings, type Placement, pipeSeries, valves } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import type { Choice } from "./fields.ts";
import { placeWords, words } from "./partName.ts";

// The same choices are the same array each time, so that a long list of options is not drawn anew for every step of a drag.
const kept = new Map<string, readonly Choice[]>();
function keep(key: string, make: () => Choice[]): readonly Choice[] {
  const known = kept.get(key);
  if (known !== undefined) return known;
  const made = make();
  kept.set(key, made);
  return made;
}

/** Choices of a closed list of words. */
export const choicesOf = (values: readonly string[]): readonly Choice[] =>
  keep(values.join(), () => values.map((value) => ({ value, label: words[value] ?? value })));

const familyNames: Readonly<Record<string, string>> = {
  sch40: "ASTM D1785 Schedule 40",
  sch80: "ASTM D1785 Schedule 80",
  pn10: "Metric PN 10",
  pn16: "Metric PN 16",
  hose: "Hose",
};

/** Every pipe size of the catalogue, by family. */
export const pipeChoices: readonly Choice[] = pipeSeries.map(({ id, label, family }) => ({
  value: id,
  label,
  group: familyNames[family] ?? family,
}));

/** Every fitting of the catalogue. */
export const fittingChoices: readonly Choice[] = fittings.map(({ id, label }) => ({ value: id, label }));

/** Every hand valve of the catalogue. */
export const valveChoices: readonly Choice[] = valves.map(({ id, label }) => ({ value: id, label }));

/** Every device of the catalogue. */
export const deviceChoices: readonly Choice[] = demoCatalogue.devices.map(({ id, label, maker }) => ({
  value: id,
  label: `${label}, ${maker}`,
}));

/** Pumps of the catalogue that may stand in the display, or those that may stand anywhere else, by maker. */
export function pumpChoices(placed?: Placement): readonly Choice[] {
  const inTank = placed === "inTank";
  return keep(inTank ? "pumps in the display" : "pumps", () =>
    demoCatalogue.pumps
      .filter(({ placements }) =>
        inTank ? placements.includes("inTank") : placements.some((place) => place !== "inTank"),
      )
      .map(({ id, maker, model }) => ({ value: id, label: `${maker} ${model}`, group: maker })),
  );
}

/** Every place that water can come from or go to. */
export function placeChoices(design: Design): readonly Choice[] {
  const places = ["display", "overflowBox", ...design.sump.chambers.map(({ id }) => `sump.${id}`)];
  return keep(`places ${places.join()}`, () => places.map((value) => ({ value, label: placeWords(value) })));
}
