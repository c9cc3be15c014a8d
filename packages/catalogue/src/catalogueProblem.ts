/** One thing wrong with a row: where, what stands there, what is the matter, how to mend it.
 *  `list`: which list of the catalogue. `row`: in a CSV file its row, heading = 1; otherwise place in the list from 1.
 *  `id`: of the row, empty where there is none. `column`: heading or field; `value`: as it stands, shortened.
 *  `severity`: "error" makes the row unusable, "doubt" asks for a second look. */
export interface CatalogueProblem {
  list: "pumps" | "devices" | "controllers" | "pipeSeries" | "fittings" | "valves";
  row: number;
  id: string;
  column: string;
  value: string;
  problem: string;
  fix: string;
  severity: "error" | "doubt";
}

const longestValue = 60;

/** Shortens a value for a message; text longer than 60 characters keeps its start. */
export function shown(value: unknown): string {
  const text = typeof value === "string" ? value : String(value);
  return text.length > longestValue ? `${text.slice(0, longestValue)}…` : text;
}
