import type { Assessment, DrainState } from "@tidewright/advice";
import type { Dimension } from "@tidewright/units";
import type { Words } from "@tidewright/words";
import type { ScreenFormat } from "../format/useFormat.ts";

/** One number of both sides; undefined where a side has none. */
export interface NumberRow {
  readonly key: string;
  readonly label: string;
  readonly left: string | undefined;
  readonly right: string | undefined;
  /** How much more the right side has, with its sign; undefined where it cannot be said, "" where both are alike. */
  readonly change: string | undefined;
}

/** A number that a design is judged by, and how it is written. */
interface Figure {
  readonly key: string;
  readonly label: string;
  readonly value: number;
  readonly write: (value: number) => string;
}

/** Returns the numbers of two assessments in rows: those of both sides first in the order of the left one.
 *  left   right   format   words   -> rows */
export function compareNumbers(
  left: Assessment,
  right: Assessment,
  format: ScreenFormat,
  words: Words,
): readonly NumberRow[] {
  const [ours, theirs] = [figuresOf(left, format, words), figuresOf(right, format, words)];
  const others = new Map(theirs.map((figure) => [figure.key, figure]));
  const rows = ours.map((figure) => row(figure, others.get(figure.key)));
  const known = new Set(ours.map(({ key }) => key));
  return [...rows, ...theirs.filter(({ key }) => !known.has(key)).map((figure) => row(undefined, figure))];
}

function row(left: Figure | undefined, right: Figure | undefined): NumberRow {
  const { key, label } = (left ?? right)!;
  return {
    key,
    label,
    left: left?.write(left.value),
    right: right?.write(right.value),
    change: left === undefined || right === undefined ? undefined : change(left, right),
  };
}

function change(left: Figure, right: Figure): string {
  // What is written alike is alike: nobody wants to read of a change in a digit that is not shown.
  if (left.write(left.value) === right.write(right.value)) return "";
  const by = right.value - left.value;
  return `${by < 0 ? "−" : "+"}${right.write(Math.abs(by))}`;
}

function figuresOf(assessment: Assessment, format: ScreenFormat, { say }: Words): readonly Figure[] {
  const { loops, turnover, drains, sump, power, cost, sound, findings } = assessment;
  const plain = (key: string, label: string, value: number, dimension: Dimension): Figure => ({
    key,
    label,
    value,
    write: (one) => format(one, dimension),
  });
  const money = (key: string, label: string, value: number, currency: string): Figure => ({
    // Sums of two currencies are two things.
    key: `${key} ${currency}`,
    label,
    value,
    write: (one) => format.sum(one, currency),
  });
  return [
    ...loops.flatMap(({ name, flow, totalHead }) => [
      plain(`flow ${name}`, `${say("keeping.compareFlow")}: ${name}`, flow, "flow"),
      plain(`head ${name}`, `${say("keeping.compareHead")}: ${name}`, totalHead, "head"),
    ]),
    plain("turnover", say("keeping.compareTurnover"), turnover.return.value, "turnover"),
    plain("totalTurnover", say("keeping.compareTotalTurnover"), turnover.total.value, "turnover"),
    ...drains.map((drain) =>
      plain(`drain ${drain.name}`, say("keeping.compareDrain", { name: drain.name }), marginOf(drain), "flow"),
    ),
    plain("powerCut", say("keeping.comparePowerCut"), sump.margin, "volume"),
    plain("watts", say("keeping.compareWatts"), power.watts, "power"),
    money("annual", say("keeping.compareAnnual"), power.annualCost, power.tariffCurrency),
    money("price", say("keeping.comparePrice"), cost.purchase, cost.currency),
    // Absent where it cannot be added up.
    ...(cost.total === undefined
      ? []
      : [
          money(
            "horizon",
            say("keeping.compareHorizon", { years: format(cost.horizon, "time") }),
            cost.total,
            cost.currency,
          ),
        ]),
    plain("sound", say("keeping.compareSound"), sound.level, "soundLevel"),
    {
      key: "dangers",
      label: say("keeping.compareDangers"),
      value: findings.filter(({ severity }) => severity === "danger").length,
      write: String,
    },
  ];
}

/** What a drain could carry more before it leaves its way of working: a siphon runs full, every other one stays quiet. */
const marginOf = ({ kind, capacity, flow }: DrainState) =>
  (kind === "throttledSiphon" ? capacity.siphon : capacity.quiet) - flow;
