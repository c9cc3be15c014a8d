import type { Source } from "../source.ts";

/** Hand valves the catalogue knows by name. */
export type ValveId = "ball" | "gate" | "globe" | "butterfly" | "diaphragm";

/** One hand valve. `priceAt25mm` [EUR] is scaled by `fittingPrice`. `hasUnions`: opens on both sides for service. */
export interface ValveRow {
  id: ValveId;
  label: string;
  source: Source;
  priceAt25mm: number;
  hasUnions: boolean;
}

const crane = (where: string): Source => ({
  title: "Crane TP-410; Hooper 1981; Darby 1999",
  where,
  status: "published",
});
const memory = (where: string): Source => ({ title: "Crane TP-410; Hooper 1981", where, status: "from memory" });

/** Every hand valve of the catalogue with the source of its full-open loss; prices in EUR at 25 mm bore, invented.
 *  Result: readonly array of ValveRow.
 *  Findings: none. Throws: never.
 *  Valid: full open; how the loss grows on closing is the engine's.
 *  Source: Crane TP-410; Hooper 1981; Darby 1999; butterfly and diaphragm from memory.
 *  Example: valves.map((valve) => valve.id)  ->  ["ball", "gate", "globe", "butterfly", "diaphragm"]           */
export const valves: readonly ValveRow[] = [
  { id: "ball", label: "Ball valve, double union", source: crane("n 3"), priceAt25mm: 13.5, hasUnions: true },
  { id: "gate", label: "Gate valve", source: crane("n 8"), priceAt25mm: 24, hasUnions: false },
  { id: "globe", label: "Globe valve", source: crane("n 340"), priceAt25mm: 28, hasUnions: false },
  { id: "butterfly", label: "Butterfly valve", source: memory("n 45, 2 to 8 in"), priceAt25mm: 42, hasUnions: false },
  {
    id: "diaphragm",
    label: "Diaphragm valve, double union",
    source: memory("2-K 1000, 2.0, weir type"),
    priceAt25mm: 46,
    hasUnions: true,
  },
];

const byId = new Map<string, ValveRow>(valves.map((valve) => [valve.id, valve]));

/** The hand valve with this id, or undefined.
 *  id: text   -> ValveRow
 *  Findings: none. Throws: never.
 *  Valid: ids of valves.
 *  Source: as the row says.
 *  Example: findValve("ball").hasUnions  ->  true                                                              */
export function findValve(id: string): ValveRow | undefined {
  return byId.get(id);
}
