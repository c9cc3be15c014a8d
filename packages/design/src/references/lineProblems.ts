import { type Catalogue, findPump } from "@tidewright/catalogue";
import { type Add, fieldOf, listOf, noteDoubles, textOf } from "./loose.ts";
import { firstValveOpening, placeProblems, runProblems } from "./runProblems.ts";
import { unknownName } from "./unknownName.ts";

/** Adds what is wrong with drains, loops and tank pumps: places, parts, pumps. Pumps of these ids may be gone. */
export function lineProblems(design: unknown, catalogue: Catalogue, add: Add, gone: ReadonlySet<string>): void {
  const chambers = listOf(design, "sump", "chambers").flatMap((chamber) => textOf(chamber, "id") ?? []);
  listOf(design, "drains").forEach((drain, i) => {
    const run = listOf(drain, "run");
    runProblems(run, `/drains/${i}/run`, { catalogue, chambers, side: "drain", add });
    shareProblems(drain, run, `/drains/${i}`, add);
  });
  const loops = listOf(design, "loops");
  noteDoubles(loops, "name", "/loops", "loop", add);
  loops.forEach((loop, i) => {
    const path = `/loops/${i}`;
    const place = textOf(loop, "from", "place");
    if (place !== undefined) placeProblems(place, chambers, `${path}/from/place`, add);
    runProblems(listOf(loop, "suction"), `${path}/suction`, { catalogue, chambers, side: "suction", add });
    runProblems(listOf(loop, "run"), `${path}/run`, { catalogue, chambers, side: "pressure", add });
    listOf(loop, "pumps").forEach((pump, p) => {
      pumpRef(pump, `${path}/pumps/${p}`, catalogue, add, gone);
      if (place !== undefined) placementProblems(textOf(pump, "placed"), place, `${path}/pumps/${p}/placed`, add);
    });
    purposeProblems(loop, place, path, add);
  });
  listOf(design, "tankPumps").forEach((pump, i) => pumpRef(pump, `/tankPumps/${i}`, catalogue, add, gone));
  noteDoubles(listOf(design, "power", "circuits"), "name", "/power/circuits", "circuit", add);
}

function pumpRef(pump: unknown, path: string, catalogue: Catalogue, add: Add, gone: ReadonlySet<string>): void {
  const ref = textOf(pump, "ref");
  if (ref !== undefined && !gone.has(ref) && findPump(catalogue, ref) === undefined)
    unknownName(ref, catalogue.pumps, `${path}/ref`, "pump", add);
}

function shareProblems(drain: unknown, run: readonly unknown[], path: string, add: Add): void {
  const share = fieldOf(drain, "share");
  if (share === undefined) return;
  if (textOf(drain, "kind") !== "throttledSiphon")
    add({
      path: `${path}/share`,
      message: "only a throttled siphon is set to a share of the flow",
      value: share,
      fix: 'remove "share", or make the drain a "throttledSiphon"',
    });
  else if (firstValveOpening(run) === undefined)
    add({
      path: `${path}/share`,
      message: "the siphon's share is set by a valve, and its run has none",
      value: share,
      fix: 'add a valve to the run, or remove "share"',
    });
}

function placementProblems(placed: string | undefined, place: string, path: string, add: Add): void {
  const inSump = place.startsWith("sump.");
  if (placed === "inSump" && !inSump)
    add({
      path,
      message: `the pump is in the sump, but the loop draws from "${place}"`,
      value: placed,
      fix: 'draw from "sump.<id>", or place the pump "external" or "inTank"',
    });
  if (placed === "inTank" && place !== "display")
    add({
      path,
      message: `the pump is in the display, but the loop draws from "${place}"`,
      value: placed,
      fix: 'draw from "display", or place the pump "inSump" or "external"',
    });
}

function purposeProblems(loop: unknown, place: string | undefined, path: string, add: Add): void {
  const purpose = textOf(loop, "purpose");
  if (place === undefined || purpose === undefined) return;
  const reaches = outletPlaces(listOf(loop, "run"));
  const contradicts = (message: string, fix: string) => add({ path: `${path}/purpose`, message, value: purpose, fix });
  if (purpose === "return" && !place.startsWith("sump."))
    contradicts(
      `a return draws from the sump, but this loop draws from "${place}"`,
      'call it "closed", or draw from "sump.<id>"',
    );
  else if (purpose === "return" && reaches.length > 0 && !reaches.includes("display"))
    contradicts(
      "a return ends in the display, but no outlet of this loop does",
      'call it "side", or lead an outlet to "display"',
    );
  else if (purpose === "closed" && place !== "display")
    contradicts(
      `a closed loop draws from the display, but this one draws from "${place}"`,
      'call it "return" or "side"',
    );
  else if (purpose === "closed" && reaches.some((to) => to !== "display"))
    contradicts(
      "a closed loop ends in the display, but an outlet of this one does not",
      'lead every outlet to "display"',
    );
  else if (purpose === "side" && reaches.includes("display") && place.startsWith("sump."))
    contradicts("a side loop leaves the display out, but an outlet of this one ends there", 'call it "return"');
}

function outletPlaces(run: readonly unknown[]): string[] {
  return run.flatMap((part) => {
    if (textOf(part, "kind") === "outlet") return textOf(part, "to") ?? [];
    return listOf(part, "branches").flatMap((branch) => (Array.isArray(branch) ? outletPlaces(branch) : []));
  });
}
