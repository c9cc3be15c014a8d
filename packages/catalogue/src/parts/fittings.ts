import type { Source } from "../source.ts";

/** Fittings the catalogue knows by name. */
export type FittingId =
  | "elbow90"
  | "elbow90Bend"
  | "elbow90Sweep"
  | "elbow45"
  | "teeRun"
  | "teeBranch"
  | "coupling"
  | "union"
  | "bulkhead"
  | "reducer"
  | "entranceSharp"
  | "entranceRounded"
  | "entranceProjecting"
  | "exit"
  | "strainer"
  | "swingCheck"
  | "springCheck"
  | "footValve";

/** One fitting. `engineKind` names the loss of the engine that applies to it; `fixedLoss` [-], where present, is a loss
 *  coefficient K on the fitting's own bore that replaces it. `priceAt25mm` [EUR] is scaled by `fittingPrice`.
 *  `service`: can be opened to take a pump or device out. `isCheckValve`: passes water one way only. */
export interface FittingRow {
  id: FittingId;
  label: string;
  note: string;
  source: Source;
  engineKind: string;
  priceAt25mm: number;
  service: boolean;
  isCheckValve: boolean;
  fixedLoss?: number;
}

const crane: Source = {
  title: "Crane TP-410; Hooper 1981; Darby 1999",
  where: "equivalent-length, 2-K and 3-K tables",
  status: "published",
};
const craneFromMemory: Source = {
  title: "Crane TP-410",
  where: "n for tees: run 20, branch 60",
  status: "from memory",
};
const entrance: Source = { title: "Crane TP-410", where: "pipe entrance and exit", status: "published" };
const jointFromMemory: Source = { title: "Handbooks: K 0.04 to 0.08", status: "from memory" };
const noGeneralLoss: Source = {
  title: "No general value exists; a placeholder until the maker's figure or a measurement is entered",
  status: "common practice",
};

interface Extras {
  service?: boolean;
  isCheckValve?: boolean;
  fixedLoss?: number;
}

function row(
  id: FittingId,
  label: string,
  engineKind: string,
  priceAt25mm: number,
  source: Source,
  note: string,
  extras: Extras = {},
): FittingRow {
  return { id, label, note, source, engineKind, priceAt25mm, service: false, isCheckValve: false, ...extras };
}

const square = "A solvent-weld socket elbow has a sharp inner corner: it counts as the threaded standard elbow.";
const strains = "Clean. Open area and fouling decide; enter the maker's figure where there is one.";

/** Every fitting of the catalogue with its source; prices in EUR at 25 mm bore, invented.
 *  Result: readonly array of FittingRow, loss coefficients [-].
 *  Findings: none. Throws: never.
 *  Valid: loss methods disagree by 10 to 30 % on elbows and more on tee runs; the engine carries that spread.
 *  Source: Crane TP-410; Hooper 1981; Darby 1999; entries with another status say so.
 *  Example: fittings.length  ->  18                                                                            */
export const fittings: readonly FittingRow[] = [
  row("elbow90", "90° elbow", "elbow90", 1.6, crane, square),
  row("elbow90Bend", "90° bend, r = D", "elbow90Bend", 3.4, crane, "Smooth bore, radius of one bore."),
  row("elbow90Sweep", "90° sweep, r = 1.5 D", "elbow90Sweep", 4.8, crane, "Long radius; needs more room."),
  row("elbow45", "45° elbow", "elbow45", 1.7, crane, "Two of them lose less than one square elbow."),
  row("teeRun", "Tee, straight through", "teeRun", 2.2, craneFromMemory, "All the flow goes straight on."),
  row("teeBranch", "Tee, through the branch", "teeBranch", 2.2, craneFromMemory, "All the flow turns."),
  row("coupling", "Coupling", "coupling", 1.1, jointFromMemory, "Joins two lengths for good."),
  row("union", "Union", "union", 6.5, jointFromMemory, "Opens by hand.", { service: true }),
  row("bulkhead", "Bulkhead fitting", "bulkhead", 7.8, jointFromMemory, "Its bore is often less than the pipe's."),
  row("reducer", "Reducer", "coupling", 1.5, jointFromMemory, "The area change itself is reckoned from the two bores."),
  row("entranceSharp", "Sharp-edged inlet", "entranceSharp", 0, entrance, "Pipe flush with the wall, square edge."),
  row("entranceRounded", "Rounded inlet", "entranceRounded", 3.2, entrance, "Lip radius of 0.15 bore or more."),
  row(
    "entranceProjecting",
    "Projecting inlet",
    "entranceProjecting",
    0,
    entrance,
    "Thin pipe end standing in the water.",
  ),
  row("exit", "Outlet into still water", "exit", 0, entrance, "All the speed is lost; 1 for every shape."),
  row("strainer", "Intake strainer", "entranceSharp", 5.2, noGeneralLoss, strains, { fixedLoss: 2 }),
  row("swingCheck", "Swing check valve", "swingCheck", 14, crane, "Swings shut; sticks when overgrown.", {
    isCheckValve: true,
  }),
  row(
    "springCheck",
    "Spring check valve",
    "swingCheck",
    16,
    noGeneralLoss,
    "The spring needs about 0.1 m of head to open.",
    {
      isCheckValve: true,
      fixedLoss: 4,
    },
  ),
  row("footValve", "Foot valve with strainer", "footValve", 18, crane, "Keeps a suction line full. Poppet disc.", {
    isCheckValve: true,
  }),
];

const byId = new Map<string, FittingRow>(fittings.map((fitting) => [fitting.id, fitting]));

/** The fitting with this id, or undefined.
 *  id: text   -> FittingRow
 *  Findings: none. Throws: never.
 *  Valid: ids of fittings.
 *  Source: as the row says.
 *  Example: findFitting("union").service  ->  true                                                             */
export function findFitting(id: string): FittingRow | undefined {
  return byId.get(id);
}

/** Price of a fitting or valve at a bore: p = p25 (D / 25 mm)^1.4, rounded to cents.
 *  priceAt25mm p25 [EUR]   bore D [m]   -> price [EUR]
 *  Findings: none. Throws: never.
 *  Valid: 12 to 110 mm, as a planning figure only.
 *  Source: exponent invented for the demonstration catalogue; surface grows with D^2, labour hardly.
 *  Example: fittingPrice(6.5, 0.05)  ->  17.15                                                                 */
export function fittingPrice(priceAt25mm: number, bore: number): number {
  return Math.round(priceAt25mm * (bore / 0.025) ** 1.4 * 100) / 100;
}
