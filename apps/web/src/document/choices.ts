import { demoCatalogue, fittings, type Placement, pipeSeries, valves } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import type { Choice } from "./fields.ts";
import { placeWords, words } from "./partName.ts";

/** Choices of a closed list of words. */
export const choicesOf = (values: readonly string[]): Choice[] =>
  values.map((value) => ({ value, label: words[value] ?? value }));

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

/** Pumps of the catalogue, by maker; those that may stand at `placed` first where it is given. */
export function pumpChoices(placed?: Placement): Choice[] {
  return demoCatalogue.pumps
    .filter((pump) => placed !== "inTank" || pump.placements.includes("inTank"))
    .filter((pump) => placed === "inTank" || pump.placements.some((place) => place !== "inTank"))
    .map((pump) => ({ value: pump.id, label: `${pump.maker} ${pump.model}`, group: pump.maker }));
}

/** Every place that water can come from or go to. */
export function placeChoices(design: Design): Choice[] {
  const chambers = design.sump.chambers.map(({ id }) => `sump.${id}`);
  return ["display", "overflowBox", ...chambers].map((value) => ({ value, label: placeWords(value) }));
}
