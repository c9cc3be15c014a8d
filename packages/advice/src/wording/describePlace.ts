/** Returns a vessel in words, to stand inside a sentence.
 *  place "display", "overflowBox", "sump.<chamber>" or "topOff"   -> text
 *  Source: own words.
 *  Example: describePlace("sump.return")  ->  "sump chamber “return”"
 *  Example: describePlace("overflowBox")  ->  "overflow box" */
export function describePlace(place: string): string {
  if (place === "overflowBox") return "overflow box";
  if (place === "topOff") return "top-off reservoir";
  return place.startsWith("sump.") ? `sump chamber “${place.slice("sump.".length)}”` : place;
}
