import type { AnimalGroup } from "@tidewright/design";
import { fromSI, type Quantity, toSI } from "@tidewright/units";
import { animalTargets } from "../animalTargets.ts";
import type { StartDefault, StartFigure, StartNote, StartReason } from "./firstDesignResult.ts";
import { practice, practiceOnly } from "./practice.ts";
import type { ShopGround } from "./shopGround.ts";
import type { StartAnswers } from "./startAnswers.ts";

/** A default before the design is there to read its value from. */
export interface Assumed {
  readonly path: string;
  readonly question?: string;
  readonly key: StartReason;
  readonly values?: Readonly<Record<string, StartFigure>>;
  readonly source?: string;
}

/** What was said, with everything else filled in; SI but for what goes into the document as it was said. */
export interface Ground {
  readonly answers: StartAnswers;
  readonly us: boolean;
  /** Length as written in the document: what was said stays as it was said. */
  readonly at: (metres: number, said?: Quantity) => Quantity;
  readonly length: number;
  readonly width: number;
  readonly height: number;
  readonly rockShare: number;
  readonly groups: readonly AnimalGroup[];
  readonly layout: "one" | "two" | "three";
  /** The glass must stay whole: the overflow hangs on it. */
  readonly hangOn: boolean;
  /** Diameter of holes that are there. */
  readonly hole: number | undefined;
  readonly stand: number;
  /** The sump stands under the display, beside it, or a storey below. */
  readonly sumpPlace: "under" | "beside" | "below";
  readonly room: { readonly length: number; readonly width: number; readonly height: number };
  readonly sump: { readonly length: number; readonly width: number; readonly height: number } | undefined;
  /** Evaporated water is made good by an automatic top-off. */
  readonly topOff: boolean;
  readonly horizontal: number;
  readonly elbows: number;
  readonly voltage: Quantity;
  readonly frequency: Quantity;
  readonly tariff: Quantity;
  readonly circuit: Quantity;
  readonly returnTurnover: readonly [number, number];
  readonly totalTurnover: readonly [number, number];
  readonly horizon: Quantity;
  readonly assumed: readonly Assumed[];
  readonly notes: readonly StartNote[];
}

const inchLike = new Set(["in", "ft", "ft-in", "yd", "US gal"]);
const metres = (quantity: Quantity) => toSI(quantity, "length");
const figure = (si: number, dimension: "length" | "turnover" | "volume"): StartFigure => ({ si, dimension });

/** Source of what a shop has said once for all its jobs. */
const shopSource = "the shop's settings";

/** Returns the answers with usual values where nothing was said, and a list of those. What somebody measures in says nothing of
 *  their sockets or their money: both are the shop's, and 230 V and euros where it says nothing either.
 *  answers StartAnswers as `readStart` accepts them   shop ShopGround   -> Ground, SI.
 *  Source: common practice, no source, but where it says. */
export function groundOf(answers: StartAnswers, shop: ShopGround = {}): Ground {
  const assumed: Assumed[] = [];
  const notes: StartNote[] = [];
  const assume = (entry: Assumed) => {
    assumed.push(entry);
  };
  const said = [answers.tank.length, answers.tank.volume].find((each) => each !== undefined);
  const us = answers.units === undefined ? inchLike.has(said?.unit ?? "mm") : answers.units === "us";
  const { overflow, power, wishes } = answers;

  const sides = sidesOf(answers, assume, us);
  if (answers.rockShare === undefined) assume({ path: "/display/rockShare", key: "rock" });
  assume({
    path: "/water/salinity",
    key: "seaWater",
    source: "practical salinity 35: UNESCO Technical Papers in Marine Science 44 (1983)",
  });
  assume({ path: "/water/temperature", key: "temperature" });
  if (answers.animals === undefined) assume({ path: "/display/zones", question: "/animals", key: "animals" });
  const groups = [...new Set(answers.animals ?? (["mixedReef"] as const))];
  const stand = answers.standHeight === undefined ? standardStand(us) : metres(answers.standHeight);
  if (answers.standHeight === undefined)
    assume({ path: "/display/standHeight", question: "/standHeight", key: "stand" });

  const glass = overflow?.glass ?? (overflow?.holes === undefined ? "drill" : "drilled");
  const holes = glass === "drilled" ? overflow?.holes : undefined;
  if (glass === "drilled" && holes === undefined)
    notes.push({ code: "holesUnknown", weight: "care", at: "/drains", values: {} });
  const wanted = overflow?.drains ?? "three";
  const counts = ["one", "two", "three"] as const;
  const most = counts[Math.min(3, holes?.count ?? 3) - 1] ?? "three";
  const layout = counts[Math.min(counts.indexOf(wanted), counts.indexOf(most))] ?? "three";
  if (overflow?.drains === undefined && layout === "three")
    assume({ path: "/drains", question: "/overflow/drains", key: "threeDrains" });
  if (holes !== undefined && layout !== wanted && overflow?.drains !== undefined)
    notes.push({ code: "fewHoles", weight: "unmet", at: "/drains", values: { count: holes.count } });
  if (layout === "one") notes.push({ code: "oneDrain", weight: "unmet", at: "/drains", values: {} });

  const { sumpPlace, room } = roomOf(answers, sides, stand);
  if (sumpPlace === "beside" && answers.sump === undefined)
    notes.push({ code: "sumpBeside", weight: "care", at: "/sump", values: { stand: figure(stand, "length") } });
  const sump = answers.sump && {
    length: metres(answers.sump.length),
    width: metres(answers.sump.width),
    height: metres(answers.sump.height),
  };
  if (sump && sumpPlace !== "below" && sump.height > stand - 0.05 && stand > 0.05)
    notes.push({
      code: "sumpTooHigh",
      weight: "care",
      at: "/sump/height",
      values: { height: figure(sump.height, "length"), stand: figure(stand, "length") },
    });

  const voltage = power?.voltage ?? { value: shop.us ? 120 : 230, unit: "V" };
  const american = toSI(voltage, "voltage") < 160;
  if (power?.voltage === undefined)
    assume({
      path: "/power/voltage",
      question: "/power/voltage",
      ...(shop.us ? fromShop("shopMains") : { key: "mains" }),
    });
  if (power?.tariff === undefined)
    assume({
      path: "/power/tariff",
      question: "/power/tariff",
      ...(shop.tariff ? fromShop("shopTariff") : { key: "tariff" }),
    });
  if (power?.circuit === undefined)
    assume({ path: "/power/circuits/0/rating", question: "/power/circuit", key: "circuit" });
  assume({
    path: "/power/circuits/0/otherLoad",
    key: "otherLoad",
    values: { watts: practice.otherWattsPerLitre },
  });
  const turnover = wishes?.returnTurnover;
  if (turnover === undefined)
    assume({ path: "/wishes/returnTurnover", question: "/wishes/returnTurnover", key: "returnTurnover" });
  const bands = groups.map((group) => animalTargets[group].practice);
  const low = Math.max(...bands.map((band) => band[0]));
  const high = Math.max(...bands.map((band) => band[1]));
  const calmest = Math.min(...bands.map((band) => band[1]));
  if (low > calmest)
    notes.push({
      code: "animalsConflict",
      weight: "care",
      at: "/display/zones",
      values: { low: figure(low, "turnover"), high: figure(calmest, "turnover") },
    });
  assume({
    path: "/wishes/totalTurnover",
    key: "totalTurnover",
    source: animalTargets[groups[0] as AnimalGroup].source,
  });
  if (wishes?.horizon === undefined) assume({ path: "/wishes/horizon", question: "/wishes/horizon", key: "horizon" });
  if (answers.returnWay?.horizontal === undefined)
    assume({ path: "/loops/0/run/0/length", question: "/returnWay/horizontal", key: "returnWay" });
  if (answers.returnWay?.elbows === undefined)
    assume({ path: "/loops/0/run/2/count", question: "/returnWay/elbows", key: "elbows" });

  return {
    answers,
    us,
    at: lengthWriter(us),
    ...sides,
    rockShare: answers.rockShare ?? practice.rockShare,
    groups,
    layout,
    hangOn: glass === "keep",
    hole: holes && metres(holes.diameter),
    stand,
    sumpPlace,
    room,
    sump,
    topOff: answers.topOff?.kind !== "none",
    horizontal: answers.returnWay?.horizontal ? metres(answers.returnWay.horizontal) : practice.horizontal,
    elbows: answers.returnWay?.elbows ?? practice.elbows,
    voltage,
    frequency: power?.frequency ?? { value: american ? 60 : 50, unit: "Hz" },
    tariff: power?.tariff ?? shop.tariff ?? exampleTariff(shop.currency),
    circuit: power?.circuit ?? { value: american ? 15 : 16, unit: "A" },
    returnTurnover: turnover
      ? [toSI(turnover[0], "turnover"), toSI(turnover[1], "turnover")]
      : [practice.returnTurnover[0], practice.returnTurnover[1]],
    totalTurnover: [low, high],
    horizon: wishes?.horizon ?? { value: 5, unit: "a" },
    assumed,
    notes,
  };
}

const fromShop = (key: StartReason) => ({ key, source: shopSource });

/** A price to begin with where nobody gave one: in dollars for a shop that reckons in them, else in the catalogue's euros. */
const exampleTariff = (currency: string | undefined): Quantity =>
  currency === "USD" ? { value: 0.17, unit: "USD/kWh" } : { value: 0.31, unit: "EUR/kWh" };

const standardStand = (us: boolean) => (us ? 32 * 0.0254 : practice.standHeight);

function sidesOf(
  { tank }: StartAnswers,
  assume: (entry: Assumed) => void,
  us: boolean,
): { length: number; width: number; height: number } {
  const { length, width, height, volume } = tank;
  if (length && width && height) return { length: metres(length), width: metres(width), height: metres(height) };
  // readStart sees to it that there is a volume here.
  const litres = toSI(volume as Quantity, "volume");
  const known = { length: length && metres(length), width: width && metres(width), height: height && metres(height) };
  const step = us ? 0.0254 / 2 : 0.01;
  const round = (side: number) => Math.max(0.15, Math.round(side / step) * step);
  const { lengthPerWidth: l, heightPerWidth: h, highestGlass } = practice;
  // One scale for all that is not said: volume = product of the sides.
  const shape = { length: l, width: 1, height: h };
  let high = known.height;
  const scaleOf = () => {
    let rest = litres;
    let unknown = 1;
    let count = 0;
    for (const side of ["length", "width", "height"] as const) {
      const value = side === "height" ? high : known[side];
      if (value !== undefined) rest /= value;
      else {
        unknown *= shape[side];
        count++;
      }
    }
    return (rest / unknown) ** (1 / Math.max(1, count));
  };
  if (high === undefined && scaleOf() * h > highestGlass) high = highestGlass;
  const scale = scaleOf();
  for (const side of ["length", "width", "height"] as const)
    if (tank[side] === undefined)
      assume({
        path: `/display/${side}`,
        question: `/tank/${side}`,
        key: "proportions",
        values: { volume: figure(litres, "volume") },
      });
  return {
    length: known.length ?? round(scale * l),
    width: known.width ?? round(scale),
    height: high ?? round(scale * h),
  };
}

function roomOf(answers: StartAnswers, sides: { length: number; width: number }, stand: number) {
  const said = answers.sumpRoom;
  const sumpPlace = stand > 1.6 ? ("below" as const) : stand < 0.45 ? ("beside" as const) : ("under" as const);
  const usual =
    sumpPlace === "below"
      ? { length: 2.4, width: 0.9, height: 1.2 }
      : sumpPlace === "beside"
        ? { length: Math.max(0.6, sides.length), width: Math.max(0.4, sides.width), height: 0.5 }
        : {
            length: Math.max(0.3, sides.length - practice.standFrame),
            width: Math.max(0.2, sides.width - practice.standFrame),
            height: Math.max(0.25, stand - practice.overSump),
          };
  const room = {
    length: said?.length ? metres(said.length) : usual.length,
    width: said?.width ? metres(said.width) : usual.width,
    height: said?.height ? metres(said.height) : usual.height,
  };
  return { sumpPlace, room };
}

/** Lengths of our own are whole millimetres, or eighths of an inch. */
function lengthWriter(us: boolean): Ground["at"] {
  return (si, said) => {
    if (said !== undefined) return said;
    if (us) return { value: Math.round(fromSI(si, "in", "length") * 8) / 8, unit: "in" };
    return { value: Math.round(si * 1000), unit: "mm" };
  };
}

/** Returns defaults as they are handed out, with the values read from the design. */
export function toldDefaults(assumed: readonly Assumed[], read: (path: string) => unknown): StartDefault[] {
  return assumed.flatMap(({ path, question, key, values, source }) => {
    const value = read(path);
    if (value === undefined) return [];
    return [
      {
        path,
        ...(question === undefined ? {} : { question }),
        value,
        why: { key, values: values ?? {} },
        source: source ?? practiceOnly,
      },
    ];
  });
}
