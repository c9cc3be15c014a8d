import { fittings, type Placement, pipeSeries, valves } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { currentCatalogue } from "../catalogue/currentCatalogue.ts";
import { words } from "../words/useWords.ts";
import type { Choice } from "./fields.ts";
import { placeWords, valueWords } from "./partName.ts";

// The same choices are the same array each time, so that a long list of options is not drawn anew for every step of a drag.
const kept = new Map<string, readonly Choice[]>();
let keptOf = currentCatalogue();
function keep(what: string, make: () => Choice[]): readonly Choice[] {
  if (keptOf !== currentCatalogue()) kept.clear();
  keptOf = currentCatalogue();
  const key = `${words().language} ${what}`;
  const known = kept.get(key);
  if (known !== undefined) return known;
  const made = make();
  kept.set(key, made);
  return made;
}

/** Choices of a closed list of words. */
export const choicesOf = (values: readonly string[]): readonly Choice[] =>
  keep(values.join(), () => values.map((value) => ({ value, label: valueWords(value) })));

/** Every pipe size of the catalogue, by family. */
export const pipeChoices = (): readonly Choice[] =>
  keep("pipes", () =>
    pipeSeries.map(({ id, label, family }) => {
      const key = `parts.family.${family}`;
      const { knows, known, say } = words();
      return { value: id, label: known(label), group: knows(key) ? say(key) : family };
    }),
  );

const labelled = (rows: readonly { readonly id: string; readonly label: string }[]): Choice[] =>
  rows.map(({ id, label }) => ({ value: id, label: words().known(label) }));

/** Every fitting of the catalogue. */
export const fittingChoices = (): readonly Choice[] => keep("fittings", () => labelled(fittings));

/** Every hand valve of the catalogue. */
export const valveChoices = (): readonly Choice[] => keep("valves", () => labelled(valves));

/** Every device of the catalogue. */
export const deviceChoices = (): readonly Choice[] =>
  keep("devices", () =>
    currentCatalogue().devices.map(({ id, label, maker }) => ({
      value: id,
      label: `${words().known(label)}, ${maker}`,
    })),
  );

/** Pumps of the catalogue that may stand in the display, or those that may stand anywhere else, by maker. */
export function pumpChoices(placed?: Placement): readonly Choice[] {
  const inTank = placed === "inTank";
  return keep(inTank ? "pumps in the display" : "pumps", () =>
    currentCatalogue()
      .pumps.filter(({ placements }) =>
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
