import { type Catalogue, findDevice } from "@tidewright/catalogue";
import { type Add, asTyped, fieldOf, listOf, numberOf, siOf, textOf } from "./loose.ts";
import { unknownName } from "./unknownName.ts";

/** What a run is for: a line under pressure, a drain, or the way from a place to a pump. */
type RunSide = "pressure" | "drain" | "suction";

/** What the parts of a run may refer to. */
export interface RunContext {
  readonly catalogue: Catalogue;
  readonly chambers: readonly string[];
  readonly side: RunSide;
  readonly add: Add;
}

/** Adds what is wrong with the order and the references of a run's parts, branches included.
 *  `sized`: a pipe lies before the run already, as before a branch. */
export function runProblems(run: readonly unknown[], path: string, context: RunContext, sized = false): void {
  const { side, add } = context;
  const hasPipe = sized || run.some((part) => textOf(part, "kind") === "pipe");
  run.forEach((part, i) => {
    const kind = textOf(part, "kind");
    const at = `${path}/${i}`;
    const ends = endsRun(part);
    if (ends && side === "suction")
      add({
        path: at,
        message: `${kind === "tee" ? "a tee" : "an outlet"} lies on the way to the pump; that way has one end, the pump`,
        value: part,
        fix: "remove it, or put it into the loop's run",
      });
    else if (kind === "tee" && side === "drain")
      add({
        path: at,
        message: "a drain is one line from its inlet to its chamber; it cannot branch",
        value: part,
        fix: "give every branch a drain of its own",
      });
    else if (ends && i < run.length - 1)
      add({
        path: `${path}/${i + 1}`,
        message: `${run.length - 1 - i} ${run.length - 2 === i ? "part follows" : "parts follow"} after the ${kind} at ${at}, where the run ends`,
        value: run[i + 1],
        fix: kind === "tee" ? "put the parts into one of the tee's branches" : "put the parts before the outlet",
      });
    partProblems(part, kind, at, hasPipe, context);
    if (kind === "tee")
      listOf(part, "branches").forEach((branch, b) => {
        if (Array.isArray(branch)) runProblems(branch, `${at}/branches/${b}`, context, hasPipe);
      });
  });
  const last = textOf(run.at(-1), "kind");
  if (side !== "suction" && run.length > 0 && last !== undefined && !run.some(endsRun))
    add({
      path: `${path}/${run.length - 1}`,
      message: `the run ends in a ${last}; the water has nowhere to go`,
      value: run.at(-1),
      fix: 'end it with an outlet { "kind": "outlet", "to": "display" }, or with a tee and its branches',
    });
}

function endsRun(part: unknown): boolean {
  const kind = textOf(part, "kind");
  return kind === "outlet" || kind === "tee";
}

function partProblems(
  part: unknown,
  kind: string | undefined,
  at: string,
  hasPipe: boolean,
  context: RunContext,
): void {
  const { catalogue, add } = context;
  const named = (field: string, rows: readonly { id: string }[], what: string) => {
    const name = textOf(part, field);
    if (name !== undefined) unknownName(name, rows, `${at}/${field}`, what, add);
  };
  if (kind === "pipe") pipeProblems(part, at, context);
  if (kind === "fitting") named("fitting", catalogue.fittings, "fitting");
  if (kind === "valve") named("valve", catalogue.valves, "valve");
  if (kind === "device") {
    const ref = textOf(part, "ref");
    if (ref !== undefined && findDevice(catalogue, ref) === undefined)
      unknownName(ref, catalogue.devices, `${at}/ref`, "device", add);
  }
  if (kind === "outlet") outletProblems(part, at, context);
  const bare =
    kind === "fitting" ||
    kind === "valve" ||
    kind === "tee" ||
    (kind === "outlet" && fieldOf(part, "nozzle") === undefined);
  if (bare && !hasPipe)
    add({
      path: at,
      message: `no pipe lies before or after this ${kind} to give its size`,
      value: part,
      fix: kind === "outlet" ? "add a pipe to the run, or give the outlet a nozzle" : "add a pipe to the run",
    });
}

function pipeProblems(part: unknown, at: string, { catalogue, add }: RunContext): void {
  const series = textOf(part, "series");
  const bore = fieldOf(part, "bore");
  if (fieldOf(part, "series") === undefined && bore === undefined)
    add({
      path: at,
      message: "the pipe has no size",
      value: part,
      fix: 'give "series" from the catalogue, or "bore" of its own',
    });
  if (series !== undefined && bore !== undefined)
    add({
      path: at,
      message: `the pipe has both the series "${series}" and a bore of ${asTyped(bore)}`,
      value: part,
      fix: "keep one of them",
    });
  if (series !== undefined) unknownName(series, catalogue.pipeSeries, `${at}/series`, "pipe series", add);
  const length = siOf(part, "length", "length");
  const rise = siOf(part, "length", "rise");
  if (length !== undefined && rise !== undefined && Math.abs(rise) > length * (1 + 1e-6))
    add({
      path: `${at}/rise`,
      message: `a pipe of ${asTyped(fieldOf(part, "length"))} cannot ${rise > 0 ? "rise" : "fall"} by ${asTyped(fieldOf(part, "rise")).replace("-", "")}`,
      value: fieldOf(part, "rise"),
      fix: "make the pipe longer, or the rise smaller",
    });
}

function outletProblems(part: unknown, at: string, { chambers, side, add }: RunContext): void {
  const to = textOf(part, "to");
  if (to === undefined) return;
  placeProblems(to, chambers, `${at}/to`, add);
  if (side === "drain" && (to === "display" || to === "overflowBox"))
    add({
      path: `${at}/to`,
      message: `a drain ends in "${to}", which lies above it`,
      value: to,
      fix: 'let it end in a chamber of the sump, "sump.<id>"',
    });
}

/** Adds that a place does not exist. */
export function placeProblems(place: string, chambers: readonly string[], path: string, add: Add): void {
  if (place === "display" || place === "overflowBox") return;
  unknownName(
    place,
    [...chambers.map((id) => ({ id: `sump.${id}` })), { id: "display" }, { id: "overflowBox" }],
    path,
    "place",
    add,
  );
}

/** The opening of the first valve of a run, its branches aside, or undefined where there is none. */
export function firstValveOpening(run: readonly unknown[]): number | undefined {
  const valve = run.find((part) => textOf(part, "kind") === "valve");
  return valve === undefined ? undefined : (numberOf(valve, "opening") ?? 1);
}
