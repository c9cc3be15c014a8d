const space = "\u202f";

/** A column whose cells share one unit: the unit, and the cells without it. */
export interface LiftedColumn {
  readonly unit: string;
  readonly cells: readonly string[];
}

/** Returns a column with the unit its cells share taken out of them, to be printed once above; cells may be a number, an
 *  interval "a to b" or a dash. A column of mixed units, or of none, comes back as it is. */
export function liftUnit(cells: readonly string[]): LiftedColumn {
  const numbers = cells.flatMap((cell) => (cell === "—" ? [] : cell.split(" to ")));
  const units = new Set(numbers.map((text) => text.split(space)[1] ?? ""));
  const [unit = ""] = units;
  if (units.size !== 1 || unit === "" || unit.includes("(") || numbers.some((text) => text.split(space).length !== 2))
    return { unit: "", cells };
  return { unit, cells: cells.map((cell) => cell.replaceAll(`${space}${unit}`, "")) };
}
