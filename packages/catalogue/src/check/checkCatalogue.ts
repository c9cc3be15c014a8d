import type { Catalogue } from "../catalogue.ts";
import { type CatalogueProblem, shown } from "../catalogueProblem.ts";
import { type Complain, litres } from "./checkCurves.ts";
import { checkPump, idPattern } from "./checkPump.ts";

/** Everything that cannot be, or is hard to believe, in a catalogue; complete.
 *  catalogue: Catalogue in SI   -> CatalogueProblem[], errors and doubts, list by list; row is the place from 1
 *  Findings: for pumps as `checkPump`; ids used twice; controllers that are referred to but not listed, or listed at
 *  another price; device losses that do not rise with flow; bores not inside their walls; prices below zero.
 *  Throws: never.
 *  Valid: any catalogue. Limits of doubt are common practice, no source.
 *  Source: as checkPump.
 *  Example: checkCatalogue(demoCatalogue)  ->  []                                                              */
export function checkCatalogue(catalogue: Catalogue): CatalogueProblem[] {
  const problems: CatalogueProblem[] = [];
  for (const [index, pump] of catalogue.pumps.entries()) {
    for (const problem of checkPump(pump, index + 1)) problems.push(problem);
  }
  checkControllerRefs(catalogue, problems);
  eachRow("devices", catalogue.devices, problems, checkDevice);
  eachRow("controllers", catalogue.controllers, problems, (row, complain) => checkPrice("price", row.price, complain));
  eachRow("pipeSeries", catalogue.pipeSeries, problems, checkPipe);
  eachRow("fittings", catalogue.fittings, problems, (row, complain) => {
    checkPrice("priceAt25mm", row.priceAt25mm, complain);
    const loss = row.fixedLoss;
    if (loss !== undefined && !(Number.isFinite(loss) && loss >= 0)) {
      complain("fixedLoss", loss, "is below zero or no number", "give a loss coefficient from 0 upward");
    }
  });
  eachRow("valves", catalogue.valves, problems, (row, complain) =>
    checkPrice("priceAt25mm", row.priceAt25mm, complain),
  );
  for (const list of ["pumps", "devices", "controllers", "pipeSeries", "fittings", "valves"] as const) {
    checkDoubles(list, catalogue[list], problems);
  }
  return problems;
}

type List = CatalogueProblem["list"];

function complainer(list: List, row: number, id: string, problems: CatalogueProblem[]): Complain {
  return (column, value, problem, fix, severity = "error") => {
    problems.push({ list, row, id: shown(id), column, value: shown(value), problem, fix, severity });
  };
}

function eachRow<Row extends { id: string }>(
  list: List,
  rows: readonly Row[],
  problems: CatalogueProblem[],
  check: (row: Row, complain: Complain) => void,
): void {
  for (const [index, row] of rows.entries()) {
    const complain = complainer(list, index + 1, row.id, problems);
    if (!idPattern.test(row.id)) {
      complain("id", row.id, "holds something other than letters, digits, . _ -", "write it like chiller-600");
    }
    check(row, complain);
  }
}

function checkDoubles(list: List, rows: readonly { id: string }[], problems: CatalogueProblem[]): void {
  const first = new Map<string, number>();
  for (const [index, { id }] of rows.entries()) {
    const before = first.get(id);
    if (before === undefined) first.set(id, index + 1);
    else {
      const complain = complainer(list, index + 1, id, problems);
      complain("id", id, `the id is used already in row ${before}`, "give every row an id of its own");
    }
  }
}

function checkControllerRefs(catalogue: Catalogue, problems: CatalogueProblem[]): void {
  const listed = new Map(catalogue.controllers.map((controller) => [controller.id, controller]));
  for (const [index, pump] of catalogue.pumps.entries()) {
    const ref = pump.controller?.ref;
    if (ref === undefined) continue;
    const complain = complainer("pumps", index + 1, pump.id, problems);
    const controller = listed.get(ref);
    if (controller === undefined) {
      complain("controller ref", ref, "is no controller of this catalogue", "list the controller or mend the ref");
    } else if (pump.controller?.price !== undefined && pump.controller.price !== controller.price) {
      const price = pump.controller.price;
      complain("controller price", price, `the controller is listed at ${controller.price}`, "keep one price", "doubt");
    }
  }
}

function checkPrice(column: string, price: number, complain: Complain): void {
  if (!(Number.isFinite(price) && price >= 0)) complain(column, price, "is below zero or no number", "give EUR");
}

function checkDevice(device: Catalogue["devices"][number], complain: Complain): void {
  checkPrice("price", device.price, complain);
  const points = device.lossPoints;
  if (points.length < 2) complain("lossPoints", `${points.length} points`, "fewer than two points", "add points");
  points.forEach((point, index) => {
    const before = points[index - 1];
    const rising = before === undefined || (point.flow > before.flow && point.headLoss >= before.headLoss);
    if (point.flow >= 0 && point.headLoss >= 0 && rising && Number.isFinite(point.flow + point.headLoss)) return;
    const text = `point ${index + 1}: ${litres(point.flow)} at ${point.headLoss} m`;
    complain("lossPoints", text, "flow and loss must rise from zero", "sort points by flow and check the digits");
  });
  if (points[0] !== undefined && points[0].flow === 0 && points[0].headLoss > 0) {
    complain(
      "lossPoints",
      points[0].headLoss,
      "there is a loss without any flow",
      "begin with 0 at 0, or say why",
      "doubt",
    );
  }
  const [least, most] = device.flowRange;
  if (!(least >= 0 && most > least && Number.isFinite(most))) {
    complain("flowRange", `${litres(least)} to ${litres(most)}`, "is no range", "give the smaller flow first");
  }
  if (!(Number.isFinite(device.watts) && device.watts >= 0))
    complain("watts", device.watts, "is below zero", "give watts");
  if (!(device.connection > 0 && device.connection < 1)) {
    complain("connection", device.connection, "is not a bore in metres", "give the bore of the ports");
  }
  if (device.kind === "chiller") checkCooling(device, complain);
}

// Small vapour-compression chillers take out two to four times the power they draw; above eight something is mistyped.
function checkCooling(device: Catalogue["devices"][number], complain: Complain): void {
  const cooling = device.coolingWatts;
  if (cooling === undefined || !(cooling > 0)) {
    complain("coolingWatts", cooling ?? "", "a chiller needs its cooling power", "give the heat it takes out, in W");
  } else if (device.watts > 0 && cooling / device.watts > 8) {
    const ratio = (cooling / device.watts).toFixed(1);
    complain("coolingWatts", cooling, `is ${ratio} times the power it draws`, "check both figures", "doubt");
  }
}

function checkPipe(series: Catalogue["pipeSeries"][number], complain: Complain): void {
  checkPrice("pricePerMetre", series.pricePerMetre, complain);
  const { innerDiameter, nominalInnerDiameter, outerDiameter, roughness } = series;
  if (!(innerDiameter > 0 && innerDiameter <= nominalInnerDiameter && nominalInnerDiameter < outerDiameter)) {
    complain("innerDiameter", innerDiameter, "does not lie inside the pipe wall", "check bore and outer diameter");
  }
  if (!(roughness >= 0 && roughness < 0.05 * innerDiameter)) {
    complain("roughness", roughness, "is below zero or above 5 % of the bore", "give it in metres");
  }
}
