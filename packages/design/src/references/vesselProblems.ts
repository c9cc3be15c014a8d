import { type Add, asTyped, fieldOf, listOf, noteDoubles, numberOf, siOf, textOf } from "./loose.ts";

// Lengths typed in different units for the same height may differ in the last digit.
const slack = 1e-6;

/** Adds what cannot be in the sizes of display, overflow and sump. */
export function vesselProblems(design: unknown, add: Add): void {
  displayProblems(design, add);
  overflowProblems(design, add);
  sumpProblems(design, add);
}

function displayProblems(design: unknown, add: Add): void {
  const zones = listOf(design, "display", "zones");
  noteDoubles(zones, "name", "/display/zones", "zone", add);
  const sum = zones.reduce<number>((total, zone) => total + (numberOf(zone, "share") ?? 0), 0);
  if (sum > 1 + slack)
    add({
      path: "/display/zones",
      message: `the zones' shares add up to ${Number(sum.toPrecision(4))}`,
      value: zones,
      fix: "keep the sum of the shares at 1 or less",
    });
  /** Each coordinate of a place inside the display must lie between its walls. */
  const inside = (places: readonly unknown[], path: string) => {
    (["length", "width", "height"] as const).forEach((side, axis) => {
      const place = places[axis];
      const at = siOf(place, "length");
      const end = siOf(design, "length", "display", side);
      if (at === undefined || end === undefined || (at >= -slack && at <= end + slack)) return;
      const limit = asTyped(fieldOf(design, "display", side));
      add({
        path: `${path}/${axis}`,
        message: `${asTyped(place)} lies outside the display, whose ${side} is ${limit}`,
        value: place,
        fix: `give a place from 0 to ${limit}`,
      });
    });
  };
  listOf(design, "tankPumps").forEach((pump, i) => {
    inside(listOf(pump, "at"), `/tankPumps/${i}/at`);
  });
  zones.forEach((zone, i) => {
    listOf(zone, "area").forEach((corner, k) => {
      inside(asList(corner), `/display/zones/${i}/area/${k}`);
    });
  });
}

const asList = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

function overflowProblems(design: unknown, add: Add): void {
  const higher = (path: readonly string[], limit: readonly string[], what: string, limitIs: string, fix: string) => {
    const value = siOf(design, "length", ...path);
    const bound = siOf(design, "length", ...limit);
    if (value === undefined || bound === undefined || value <= bound + slack) return;
    const shownValue = asTyped(fieldOf(design, ...path));
    add({
      path: `/${path.join("/")}`,
      message: `${what} at ${shownValue} is above ${limitIs} at ${asTyped(fieldOf(design, ...limit))}`,
      value: fieldOf(design, ...path),
      fix,
    });
  };
  const rim = ["overflow", "box", "rim"];
  const floor = ["overflow", "box", "floor"];
  const crest = ["overflow", "weir", "crest"];
  higher(
    crest,
    ["display", "height"],
    "the weir's crest",
    "the display's rim",
    "lower the crest, or raise the display",
  );
  higher(floor, rim, "the box's floor", "its rim", "give floor and rim as heights above the display's floor");
  const boxRim = siOf(design, "length", ...rim);
  const floorAt = siOf(design, "length", ...floor);
  // Of a box upside down the inlets need no word of their own.
  const boxFloor = floorAt !== undefined && boxRim !== undefined && floorAt > boxRim ? undefined : floorAt;
  const drains = listOf(design, "drains");
  noteDoubles(drains, "name", "/drains", "drain", add);
  drains.forEach((drain, i) => {
    const inlet = fieldOf(drain, "inlet", "elevation");
    const at = siOf(drain, "length", "inlet", "elevation");
    if (at === undefined) return;
    const path = `/drains/${i}/inlet/elevation`;
    if (boxRim !== undefined && at > boxRim + slack)
      add({
        path,
        message: `the inlet at ${asTyped(inlet)} is above the box's rim at ${asTyped(fieldOf(design, ...rim))}`,
        value: inlet,
        fix: "lower the inlet below the rim",
      });
    if (boxFloor !== undefined && at < boxFloor - slack)
      add({
        path,
        message: `the inlet at ${asTyped(inlet)} is below the box's floor at ${asTyped(fieldOf(design, ...floor))}`,
        value: inlet,
        fix: "give the inlet's height above the display's floor, inside the box",
      });
  });
}

function sumpProblems(design: unknown, add: Add): void {
  const height = siOf(design, "length", "sump", "height");
  const tooHigh = (quantity: unknown, path: string, what: string) => {
    const value = siOf(quantity, "length");
    if (value === undefined || height === undefined || value <= height + slack) return;
    add({
      path,
      message: `${what} of ${asTyped(quantity)} is more than the sump's height of ${asTyped(fieldOf(design, "sump", "height"))}`,
      value: quantity,
      fix: "lower it, or give a higher sump",
    });
  };
  tooHigh(fieldOf(design, "sump", "operatingLevel"), "/sump/operatingLevel", "an operating level");
  const chambers = listOf(design, "sump", "chambers");
  noteDoubles(chambers, "id", "/sump/chambers", "chamber", add);
  chambers.forEach((chamber, i) => {
    const path = `/sump/chambers/${i}/baffle`;
    const baffle = fieldOf(chamber, "baffle");
    const id = textOf(chamber, "id") ?? String(i);
    const next = chambers[i + 1];
    if (next !== undefined && baffle === undefined)
      add({
        path,
        message: `chamber "${id}" has no baffle, though "${textOf(next, "id") ?? i + 1}" follows it`,
        fix: "give the height of the baffle between them",
      });
    else if (next === undefined && baffle !== undefined)
      add({
        path,
        message: `chamber "${id}" is the last one; a baffle after it leads nowhere`,
        value: baffle,
        fix: "remove the baffle, or add the chamber that follows",
      });
    else tooHigh(baffle, path, "a baffle");
  });
}
