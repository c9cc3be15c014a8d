import { demoCatalogue, findDevice, findFitting, findPipeSeries, findPump, findValve } from "@tidewright/catalogue";
import type { Part } from "@tidewright/design";

/** Returns the words for one part of a run as its catalogue row has them: "32 mm PN 16", "90° elbow × 3". */
export function partName(part: Part): string {
  switch (part.kind) {
    case "pipe":
      return part.series === undefined ? "Pipe of own bore" : (findPipeSeries(part.series)?.label ?? part.series);
    case "fitting": {
      const label = findFitting(part.fitting)?.label ?? part.fitting;
      return part.count !== undefined && part.count > 1 ? `${label} × ${part.count}` : label;
    }
    case "valve":
      return findValve(part.valve)?.label ?? part.valve;
    case "device":
      return findDevice(demoCatalogue, part.ref)?.label ?? part.ref;
    case "outlet":
      return `Outlet to ${placeWords(part.to)}`;
    case "tee":
      return `Tee into ${part.branches.length} branches`;
  }
}

/** Returns the words for a place: "the display", "the overflow box", "sump chamber return". */
export function placeWords(place: string): string {
  if (place === "display") return "the display";
  if (place === "overflowBox") return "the overflow box";
  return `sump chamber ${place.replace(/^sump\./, "")}`;
}

/** Returns the maker and model of a pump by its catalogue id, or the id itself. */
export function pumpName(ref: string | undefined): string {
  if (ref === undefined) return "No pump chosen yet";
  const pump = findPump(demoCatalogue, ref);
  return pump === undefined ? ref : `${pump.maker} ${pump.model}`;
}

/** Words for values that the document keeps as one word. */
export const words: Readonly<Record<string, string>> = {
  ventedStandpipe: "Vented standpipe",
  throttledSiphon: "Throttled full siphon",
  openChannel: "Open channel",
  dryStandpipe: "Dry standpipe",
  main: "Main",
  secondary: "Secondary",
  emergency: "Emergency",
  internalBox: "Box inside the display",
  externalBox: "Box behind the display",
  throughWall: "Weir through the wall",
  inSump: "Under water in the sump",
  external: "Dry, beside the sump",
  inTank: "In the display",
  parallel: "Side by side",
  series: "One behind the other",
  return: "Return to the display",
  closed: "Round in the display",
  side: "Devices only",
  fish: "Fish",
  calmFish: "Calm-water fish",
  softCorals: "Soft corals",
  largePolypStony: "Large-polyp stony corals",
  branchingStony: "Branching stony corals",
  mixedReef: "Mixed reef",
  crane: "Crane, equivalent lengths",
  hooper: "Hooper, two constants",
  darby: "Darby, three constants",
  steady: "Steady",
  alternating: "Alternating",
  pulsing: "Pulsing",
  random: "Random",
  tide: "Tide-like",
  pipe: "Pipe",
  fitting: "Fitting",
  valve: "Valve",
  device: "Device",
  outlet: "Outlet",
  tee: "Tee",
};
