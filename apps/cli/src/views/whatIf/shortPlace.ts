/** Returns a vessel as narrow tables have room for: "display", "box", "sump “return”". */
export function shortPlace(place: string): string {
  if (place === "overflowBox") return "box";
  if (place === "innerBox") return "box inside";
  if (place === "topOff") return "reservoir";
  return place.startsWith("sump.") ? `sump “${place.slice("sump.".length)}”` : place;
}
