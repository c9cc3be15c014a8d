import { type Add, asTyped, fieldOf, siOf } from "./loose.ts";

/** Adds what cannot be in the settings of the top-off: a level at which it starts that lies at or below the sump's floor,
 *  so that it never would before the return chamber is empty. */
export function topOffProblems(design: unknown, add: Add): void {
  const band = siOf(design, "length", "topOff", "band");
  const level = siOf(design, "length", "sump", "operatingLevel");
  if (band === undefined || level === undefined || band < level) return;
  const given = fieldOf(design, "topOff", "band");
  const operating = asTyped(fieldOf(design, "sump", "operatingLevel"));
  add({
    path: "/topOff/band",
    message: `the level would fall by ${asTyped(given)} before the top-off starts, but only ${operating} of water stand in the return chamber`,
    value: given,
    fix: "give the few millimetres by which the level falls before the float or sensor switches",
  });
}
