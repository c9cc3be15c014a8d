import type { Catalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { fromSI, toSI } from "@tidewright/units";
import { assess } from "../assess.ts";
import { choosePump } from "./choosePump.ts";
import { chooseTankPumps } from "./chooseTankPumps.ts";
import { composeDesign } from "./composeDesign.ts";
import type { FirstDesign, StartNote } from "./firstDesignResult.ts";
import { type Assumed, type Ground, groundOf, toldDefaults } from "./ground.ts";
import { keepFloorDry } from "./keepFloorDry.ts";
import { boxFor, layDrains } from "./layDrains.ts";
import { layOverflow } from "./layOverflow.ts";
import { laySiphon } from "./laySiphon.ts";
import type { Plan } from "./plan.ts";
import { evaporationPerDay } from "./planTopOff.ts";
import { ownReckoning, practice } from "./practice.ts";
import { returnPipes } from "./returnPipe.ts";
import type { ShopGround } from "./shopGround.ts";
import type { StartAnswers } from "./startAnswers.ts";

/** Returns a first design from what was said at the start, every part sized by solving: crest for the wished flow, drains by their
 *  ratings on their own lines, sump and levels until power cut, restart and any one blocked drain leave the floor dry, the return pipe by
 *  its speed, the best ranked pump at its speed, stream pumps for the animals. What nobody said is listed as defaults, what could not be
 *  had as notes.
 *  answers StartAnswers as `readStart` accepts them   catalogue Catalogue   shop what the shop has said once for all its jobs
 *  -> FirstDesign; the same answers give the same design
 *  Findings: none of its own; a danger that remains is a note. Throws: never for accepted answers and a catalogue with pipe.
 *  Valid: rectangular tanks with an internal overflow box, or a hang-on overflow where the glass must stay whole, and one return loop; 60 to 3000 L are tested.
 *  Source: `assess`, `rank`, engine `simulate`; defaults each with their own. */
export function firstDesign(answers: StartAnswers, catalogue: Catalogue, shop: ShopGround = {}): FirstDesign {
  const ground = groundOf(answers, shop);
  const notes: StartNote[] = [...ground.notes];
  const laid = layOut(ground, catalogue, notes);
  const compose = (plan: Plan) => composeDesign(ground, plan);
  let plan = laid.plan;
  let dry: ReturnType<typeof keepFloorDry> | undefined;
  let pumpNotes: readonly StartNote[] = [];
  // The pump needs the sump's level and the sump needs the pump's flow: the second round hardly moves either.
  for (let round = 0; round < 2; round++) {
    const { pump: _, ...bare } = plan;
    const choice = choosePump(bare, laid.pipes, compose, catalogue);
    pumpNotes = choice.notes;
    dry = keepFloorDry(ground, choice.plan, compose, catalogue);
    plan = dry.plan;
    if (dry.steps === 0) break;
  }
  notes.push(...pumpNotes);
  const streams = streamsFor(ground, plan, compose, catalogue);
  plan = { ...plan, tankPumps: streams.tankPumps };
  notes.push(...streams.notes);
  const design = compose(plan);
  const assessment = assess(design, catalogue, { curves: false });
  notes.push(...remaining(ground, design, assessment, dry, evaporationPerDay(design, catalogue)));
  const assumed = [...ground.assumed, ...laid.assumed, ...ownChoices(ground, plan, assessment.overflow.flow)];
  return { design, defaults: toldDefaults(assumed, (path) => valueAt(design, path)), notes };
}

/** Crest, box, drains, sump and line before any pump is there. */
function layOut(
  ground: Ground,
  catalogue: Catalogue,
  notes: StartNote[],
): { readonly plan: Plan; readonly pipes: readonly string[]; readonly assumed: readonly Assumed[] } {
  const freeboard = ground.layout === "one" ? practice.freeboard + 0.015 : practice.freeboard;
  const sump = firstSump(ground);
  const level = sump.operating + 0.07;
  let box = { length: 0.2, width: 0.12 };
  let [low, high] = ground.returnTurnover;
  let layout: ReturnType<typeof layDrains> | undefined;
  let crest: ReturnType<typeof layOverflow> | undefined;
  // The box takes its plan off the display, whose water sets the flow, which sets the box.
  for (let round = 0; round < 3; round++) {
    // A box that hangs outside has one inside that is hardly wider than its tubes.
    const inside = ground.hangOn ? box.length * practice.innerWidth : box.length * box.width;
    const area = (ground.length * ground.width - inside) * (1 - ground.rockShare);
    const depth = crest ? crest.weir.crest + 0.5 * crest.head : ground.height - 0.05;
    const perTurn = (area * depth) / 3600;
    crest = layOverflow(ground, high * perTurn, freeboard);
    const flow = { aim: ((low + high) / 2) * perTurn, high: high * perTurn };
    layout = layDrains(ground, catalogue, crest.weir.crest, flow, level);
    box = boxFor(layout.drains, crest.weir.length, ground);
    const asked = ground.returnTurnover;
    const quiet = layout.quiet / perTurn;
    const carries = Math.min(layout.carries, layout.spare) / perTurn;
    if (round === 2) notes.push(...flowNotes(asked, [low, high], quiet, carries));
    // Quiet first, as far as it stays within the wish; then what the trade lets a drain carry; else the wish gives way.
    const most = quiet >= asked[0] * 1.1 ? Math.min(quiet, carries) : carries;
    if (most < high * 0.999) {
      high = Math.min(high, most);
      low = Math.min(low, 0.7 * high);
    }
  }
  const { weir } = crest as NonNullable<typeof crest>;
  const { drains, assumed } = layout as NonNullable<typeof layout>;
  const aim = ((low + high) / 2 / 3600) * ground.length * ground.width * ground.height * (1 - ground.rockShare);
  const pipes = returnPipes(catalogue, ground.us, aim)
    .slice(0, 3)
    .map((series) => series.id);
  const watts = practice.otherWattsPerLitre * 1000 * ground.length * ground.width * ground.height;
  return {
    plan: {
      weir,
      box,
      drains,
      ...(ground.hangOn ? { siphon: laySiphon(ground, weir, drains, practice.siphonSpare * aim) } : {}),
      sump,
      line: {
        series: pipes[0] as string,
        nozzleDepth: practice.nozzleDepth,
        siphonBreak: practice.siphonBreak,
        intake: sump.operating - practice.intakeHeight,
      },
      returnTurnover: [low, high],
      placed: "inSump",
      tankPumps: [],
      otherLoads: loadsFor(ground, watts),
    },
    pipes,
    assumed,
  };
}

function flowNotes(
  asked: readonly [number, number],
  had: readonly [number, number],
  quiet: number,
  carries: number,
): StartNote[] {
  const turnover = (value: number) => ({ si: value, dimension: "turnover" }) as const;
  const values = {
    low: turnover(asked[0]),
    high: turnover(asked[1]),
    most: turnover(had[1]),
    quiet: turnover(quiet),
    carries: turnover(carries),
  };
  const found: StartNote[] = [];
  const at = "/wishes/returnTurnover";
  if (had[1] < asked[0] * 0.999) found.push({ code: "returnLowered", weight: "unmet", at, values });
  else if (had[1] < ((asked[0] + asked[1]) / 2) * 0.999)
    found.push({ code: "returnNarrowed", weight: "care", at, values });
  if ((had[0] + had[1]) / 2 > quiet * 1.001)
    found.push({ code: "drainLoud", weight: "unmet", at: "/drains/0", values });
  return found;
}

/** Sump to begin with: the one that is there, or seven tenths of the tank's plan under it. */
function firstSump(ground: Ground): Plan["sump"] {
  const { room } = ground;
  const size = ground.sump ?? {
    length: Math.min(room.length, Math.max(0.35, 0.65 * ground.length)),
    width: Math.min(room.width, Math.max(0.22, Math.min(0.6, 0.7 * ground.width))),
    height: Math.min(room.height, 0.4),
  };
  const step = (side: number) => (ground.sump ? side : Math.floor(side * 100 + 1e-9) / 100);
  const height = step(size.height);
  return {
    length: step(size.length),
    width: step(size.width),
    height,
    operating: Math.round(Math.min(0.2, Math.max(0.12, 0.45 * height)) * 1000) / 1000,
  };
}

/** Loads besides the pumps, one entry for each circuit: on the pumps' own where there is room, else on circuits of their own. */
function loadsFor(ground: Ground, watts: number): number[] {
  const most = 0.8 * toSI(ground.circuit, "current") * toSI(ground.voltage, "voltage");
  if (watts <= 0.6 * most) return [watts];
  const others = Math.ceil(watts / most);
  return [50, ...Array.from({ length: others }, () => watts / others)];
}

function streamsFor(ground: Ground, plan: Plan, compose: (plan: Plan) => Design, catalogue: Catalogue) {
  const { overflow, volumes, cost } = assess(compose(plan), catalogue, { curves: false });
  const [low, high] = ground.totalTurnover.map((value) => (value * volumes.display) / 3600) as [number, number];
  const { budget } = ground.answers.wishes ?? {};
  const money =
    budget?.unit === cost.currency ? fromSI(toSI(budget, "money"), budget.unit, "money") - cost.purchase : Infinity;
  return chooseTankPumps(ground, catalogue, {
    low: low - overflow.flow,
    aim: (low + high) / 2 - overflow.flow,
    high: high - overflow.flow,
    money,
  });
}

/** What the solved design still has against it: told, never silent. */
function remaining(
  ground: Ground,
  design: Design,
  assessment: ReturnType<typeof assess>,
  dry: ReturnType<typeof keepFloorDry> | undefined,
  perDay: number,
): StartNote[] {
  const found: StartNote[] = [];
  const { sound, power, wishes } = { sound: assessment.sound, power: assessment.power, wishes: ground.answers.wishes };
  if (dry?.sumpShort)
    found.push({
      code: "sumpSmall",
      weight: "unmet",
      at: "/sump",
      values: {
        falls: { si: assessment.sump.drainDown.total, dimension: "volume" },
        room: { si: assessment.sump.room, dimension: "volume" },
      },
    });
  for (const result of dry?.wet ?? [])
    found.push({
      code: "wet",
      weight: "unmet",
      at:
        result.scenario.kind === "drainBlocked"
          ? "/drains"
          : result.scenario.kind === "topOffStuckOpen"
            ? "/topOff"
            : result.scenario.kind === "overflowSiphonLost"
              ? "/overflow/siphon"
              : "/sump",
      values: {
        scenario: result.scenario.kind,
        part: result.scenario.subjects.join(" + "),
        spilled: { si: result.spilled, dimension: "volume" },
      },
    });
  const { siphon } = assessment.overflow;
  if (siphon) {
    const wet = (dry?.wet ?? []).some(({ scenario }) => scenario.kind === "overflowSiphonLost");
    found.push({
      code: "hangOn",
      weight: "care",
      at: "/overflow/siphon",
      values: { tubes: siphon.tubes, ends: wet || siphon.overflows ? "wet" : "dry" },
    });
  }
  if (!ground.topOff)
    found.push({
      code: "noTopOff",
      weight: "care",
      at: "/sump",
      values: { perDay: { si: perDay, dimension: "volume" } },
    });
  if (sound.wish !== undefined && sound.level > sound.wish)
    found.push({
      code: "soundOver",
      weight: "unmet",
      at: "/wishes/sound",
      values: {
        level: { si: sound.level, dimension: "soundLevel" },
        wish: { si: sound.wish, dimension: "soundLevel" },
      },
    });
  if (wishes?.budget && wishes.budget.unit !== assessment.cost.currency)
    found.push({
      code: "budgetOtherCurrency",
      weight: "care",
      at: "/wishes/budget",
      values: { budget: wishes.budget.unit, prices: assessment.cost.currency },
    });
  for (const circuit of power.circuits)
    if (circuit.current > circuit.limit)
      found.push({
        code: "circuitSmall",
        weight: "unmet",
        at: circuit.path,
        values: {
          current: { si: circuit.current, dimension: "current" },
          limit: { si: circuit.limit, dimension: "current" },
        },
      });
  for (const finding of assessment.findings) {
    if (finding.severity !== "danger" || finding.code === "power/circuit-overload") continue;
    // One pipe alone has been told as such.
    if (finding.code === "drain/no-emergency" && ground.layout === "one") continue;
    found.push({ code: "danger", weight: "unmet", at: finding.at, values: {}, finding });
  }
  if (design.drains.some((drain) => drain.role === "emergency")) {
    const spare = assessment.drains.find((drain) => drain.role === "emergency");
    if (spare && spare.capacityAtRim < assessment.overflow.flow)
      found.push({
        code: "emergencySmall",
        weight: "unmet",
        at: spare.path,
        values: {
          carries: { si: spare.capacityAtRim, dimension: "flow" },
          flow: { si: assessment.overflow.flow, dimension: "flow" },
        },
      });
  }
  return found;
}

const tubeSource = "head of full tubes: energy equation; losses after Crane TP-410";

/** Water that evaporates, and the usual time between two visits. */
const evaporationSource =
  "evaporation: ASHRAE Handbook HVAC Applications, Natatoriums; a week common practice, no source";

/** Defaults that were found on the way. */
function ownChoices(ground: Ground, plan: Plan, assessedFlow: number): Assumed[] {
  const weirSource = "Th. Rehbock 1929 in ISO 1438:2017 without the head term; flow as wished";
  const length = (si: number) => ({ si, dimension: "length" }) as const;
  return [
    { path: "/overflow/weir/length", key: "weirLength", source: weirSource },
    {
      path: "/overflow/weir/crest",
      key: "crest",
      values: { freeboard: length(ground.height - plan.weir.crest) },
      source: weirSource,
    },
    { path: "/overflow/weir/toothHeight", key: "teeth" },
    ...(plan.siphon
      ? ([
          {
            path: "/overflow/siphon/tubes",
            key: "siphonTubes",
            values: { flow: { si: assessedFlow, dimension: "flow" } },
            source: tubeSource,
          },
          { path: "/overflow/siphon/bore", key: "siphonBore", source: tubeSource },
          { path: "/overflow/siphon/mouth", key: "siphonMouth", source: ownReckoning },
          { path: "/overflow/siphon/crest", key: "siphonCrest" },
        ] as const)
      : []),
    { path: "/overflow/box/length", key: "boxLength" },
    { path: "/overflow/box/width", key: "boxWidth" },
    ...(ground.sump
      ? []
      : [
          ...["drain", "skimmer", "return"].map(
            (name, i): Assumed => ({
              path: `/sump/chambers/${i}/length`,
              question: "/sump",
              key: "chamberLength",
              values: { name },
              source: ownReckoning,
            }),
          ),
          { path: "/sump/chambers/0/width", question: "/sump", key: "sumpWidth", source: ownReckoning } as const,
          { path: "/sump/height", question: "/sump", key: "sumpHeight", source: ownReckoning } as const,
        ]),
    { path: "/sump/floor", key: "sumpFloor" },
    { path: "/sump/chambers/0/baffle", key: "chambers" },
    { path: "/sump/operatingLevel", key: "operatingLevel", source: ownReckoning },
    ...topOffChoices(ground, plan),
    { path: "/loops/0/from/depth", key: "intake" },
    {
      path: "/loops/0/run/0/series",
      key: "returnPipe",
      values: { speed: { si: practice.returnSpeed, dimension: "velocity" } },
    },
    { path: `/loops/0/run/${ground.elbows > 0 ? 4 : 3}/depth`, key: "nozzleDepth" },
    { path: `/loops/0/run/${ground.elbows > 0 ? 4 : 3}/siphonBreak`, key: "siphonBreak" },
    ...(plan.pump
      ? ([
          { path: "/loops/0/pumps/0/ref", key: "pump", source: "ranking of the catalogue on this design" },
          {
            path: "/loops/0/pumps/0/speed",
            key: "pumpSpeed",
            source: "affinity laws (ISO 9906:2012); solved on this design",
          },
        ] as const)
      : []),
    ...plan.tankPumps.map((_, i) => ({ path: `/tankPumps/${i}/ref`, key: "tankPumps" }) as const),
  ];
}

function topOffChoices(ground: Ground, { topOff }: Plan): Assumed[] {
  if (topOff === undefined) return [];
  const perDay = { si: topOff.evaporationPerDay, dimension: "volume" } as const;
  const days = Number((topOff.reservoir / topOff.evaporationPerDay).toPrecision(2));
  return [
    ...(ground.answers.topOff?.reservoir === undefined
      ? [
          {
            path: "/topOff/reservoir",
            question: "/topOff/reservoir",
            key: topOff.boundBySump ? "topOffBySump" : "topOffReservoir",
            values: { perDay, days },
            source: evaporationSource,
          } as const,
        ]
      : []),
    { path: "/topOff/flow", key: "topOffFlow", values: { perDay, minutes: practice.topOffTime / 60 } },
  ];
}

function valueAt(design: Design, path: string): unknown {
  let value: unknown = design;
  for (const name of path.split("/").slice(1)) value = (value as Record<string, unknown> | undefined)?.[name];
  return value;
}
