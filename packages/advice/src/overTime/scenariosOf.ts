import { type Design, hasCheckValve, hasSiphonBreak, type Part } from "@tidewright/design";
import { toSI } from "@tidewright/units";
import type { Scenario, ScenarioAction, ScenarioEvent } from "./scenario.ts";

const minute = 60;
const hour = 3600;
const day = 86400;

/** Time after which a scenario has shown what it does [s]: back-siphons end within minutes, blocked drains fill a display in less. */
const watchTime = 30 * minute;
/** The first minute runs undisturbed, so that a film shows where it began. */
const lead = 60;

/** Returns every scenario that a design can meet, in the order of their kinds: power cut, restart, each drain blocked wholly and
 *  half, each pair of drains, the siphon of a hang-on overflow lost, each pump failing where others go on, stuck check valves, clogged siphon breaks, a furring strainer,
 *  and the top-off failing or stuck open.
 *  design Design   days that the top-off is left failing   -> Scenario[]
 *  Source: common practice, no source.
 *  Example: scenariosOf({ drains: [{ name: "main", run: [] }], loops: [], sump: {} }).map((each) => each.id)  ->  ["powerCut", "restart", "drainBlocked:0", "drainHalfBlocked:0", "strainerFurs:0", "topOffFails"] */
export function scenariosOf(design: Design, days = 10): Scenario[] {
  const names = design.drains.map((drain) => drain.name);
  const one = (
    kind: Scenario["kind"],
    key: string,
    subjects: string[],
    actions: (ScenarioAction | ScenarioEvent)[],
  ): Scenario => ({
    id: key === "" ? kind : `${kind}:${key}`,
    kind,
    subjects,
    duration: watchTime,
    evaporation: false,
    events: actions.map((entry) => ("at" in entry ? entry : { at: lead, action: entry })),
  });
  const off: ScenarioAction = { kind: "powerOff" };
  const cut = one("powerCut", "", [], [off]);
  const restart: Scenario = {
    ...one("restart", "", [], [off, { at: lead + watchTime, action: { kind: "powerOn" } }]),
    duration: 2 * watchTime,
  };
  const blocked = names.flatMap((name, drain) => [
    one("drainBlocked", String(drain), [name], [{ kind: "drainBlocks", drain, share: 1 }]),
    one("drainHalfBlocked", String(drain), [name], [{ kind: "drainBlocks", drain, share: 0.5 }]),
  ]);
  const pairs = names.flatMap((first, i) =>
    names.slice(i + 1).map((second, k) =>
      one(
        "twoDrainsBlocked",
        `${i}+${i + 1 + k}`,
        [first, second],
        [
          { kind: "drainBlocks", drain: i, share: 1 },
          { kind: "drainBlocks", drain: i + 1 + k, share: 1 },
        ],
      ),
    ),
  );
  const furred = names.map(
    (name, drain): Scenario => ({
      ...one("strainerFurs", String(drain), [name], [{ kind: "drainBlocks", drain, share: 1, over: 20 * hour }]),
      duration: day,
    }),
  );
  const several = design.loops.filter(movesDisplayWater).length > 1;
  const failing = design.loops.flatMap((loop, index) =>
    loop.pumps.length < 2 && !(several && movesDisplayWater(loop))
      ? []
      : loop.pumps.map((_, pump) =>
          one(
            "pumpFails",
            `${index}.${pump}`,
            [loop.name, String(pump + 1)],
            [{ kind: "pumpStops", loop: index, pump }],
          ),
        ),
  );
  const stuck = design.loops.flatMap((loop, index) =>
    hasCheckValve(loop)
      ? [one("checkValveStuck", String(index), [loop.name], [{ kind: "checkValvesLeak", loop: index, share: 1 }, off])]
      : [],
  );
  const clogged = design.loops.flatMap((loop, index) =>
    hasSiphonBreak(loop)
      ? [one("siphonBreakClogged", String(index), [loop.name], [{ kind: "siphonBreaksClog", loop: index }, off])]
      : [],
  );
  const lost =
    design.overflow?.kind === "hangOn" ? [one("overflowSiphonLost", "", [], [{ kind: "overflowSiphonDrawsAir" }])] : [];
  const slow = { evaporation: true, duration: days * day };
  const fails: Scenario = { ...one("topOffFails", "", [], [{ kind: "topOffStops" }]), ...slow };
  // Until the reservoir is empty, and with nothing lost to the air: a damp room takes none of it away.
  const open: Scenario[] = design.topOff
    ? [{ ...one("topOffStuckOpen", "", [], [{ kind: "topOffSticksOpen" }]), duration: emptied(design.topOff) }]
    : [];
  return [cut, restart, ...lost, ...blocked, ...pairs, ...failing, ...stuck, ...clogged, ...furred, fails, ...open];
}

/** Time until a reservoir has run out through an open valve, and some more [s]: a day at least, sixty at most. */
function emptied(topOff: NonNullable<Design["topOff"]>): number {
  const time = toSI(topOff.reservoir, "volume") / toSI(topOff.flow, "flow");
  return Math.min(60 * day, Math.max(day, 1.1 * time + hour));
}

/** A loop that fills or empties the display: where one of several such pumps fails, the others go on. */
function movesDisplayWater(loop: Design["loops"][number]): boolean {
  const places = outletPlaces(loop.run);
  return loop.from.place === "display"
    ? places.some((place) => place !== "display")
    : places.some((place) => place === "display");
}

function outletPlaces(run: readonly Part[]): string[] {
  return run.flatMap((part) =>
    part.kind === "outlet" ? [part.to] : part.kind === "tee" ? part.branches.flatMap(outletPlaces) : [],
  );
}
