import type { PumpRow, SpeedCurve } from "../pumps/pump.ts";

/** Says what is wrong with one field of a row. */
export type Complain = (
  column: string,
  value: unknown,
  problem: string,
  fix: string,
  severity?: "error" | "doubt",
) => void;

// Sea water at 35 g/kg and 25 C, UNESCO 44; standard gravity.
const specificWeight = 1023.343 * 9.80665;
/** Best water-over-wire efficiency that a pump of this size is believed to reach; more asks for a second look. */
const believableEfficiency = 0.75;
/** Share by which a maker's slower curve may leave the affinity laws before it is doubted. */
const affinitySpread = 0.35;

/** Lists what cannot be, or is hard to believe, in the curves of a pump. */
export function checkCurves(pump: PumpRow, complain: Complain): void {
  if (pump.curves.length === 0) {
    complain("curve 1.00", "", "there is no head curve", "give points at full speed, as in 0@4.1;1000@3.9");
    return;
  }
  const sound = pump.curves.map((curve) => checkPoints(curve, complain));
  checkSpeeds(pump, complain);
  pump.curves.forEach((curve, index) => {
    if (!sound[index]) return;
    checkEfficiency(pump, curve, complain);
    const full = pump.curves[0];
    if (index > 0 && full !== undefined && sound[0]) checkAffinity(full, curve, complain);
  });
}

/** Heading of a curve in messages. */
function curveName(curve: SpeedCurve): string {
  return `curve ${Number.isFinite(curve.speedRatio) ? curve.speedRatio.toFixed(2) : curve.speedRatio}`;
}

function checkPoints(curve: SpeedCurve, complain: Complain): boolean {
  const column = curveName(curve);
  const points = curve.points;
  let sound = true;
  const error = (value: unknown, problem: string, fix: string) => {
    sound = false;
    complain(column, value, problem, fix);
  };
  const count = points.length;
  if (count < 2)
    error(`${count} points`, "a curve needs at least two points", "add the shut-off head and a second point");
  if (count > 50) error(`${count} points`, "a curve holds at most 50 points", "keep every second or third point");
  points.forEach((point, index) => {
    const place = `point ${index + 1}`;
    const text = `${litres(point.flow)} at ${point.head} m`;
    if (!Number.isFinite(point.flow) || !Number.isFinite(point.head)) {
      error(`${place}: ${text}`, "flow and head must be finite numbers", "give both as numbers");
      return;
    }
    if (point.flow < 0) error(`${place}: ${text}`, "the flow is below zero", "give flows from 0 upward");
    if (point.head < 0 || (index === 0 && point.head === 0)) {
      error(`${place}: ${text}`, "the head is not above zero", "begin above zero and end no lower than zero");
    }
    const before = points[index - 1];
    if (before === undefined) return;
    if (point.flow <= before.flow) {
      error(`${place}: ${text}`, "the flow does not rise from the point before", "sort points by flow, each once");
    }
    if (point.head >= before.head) {
      error(
        `${place}: ${text}`,
        "the head does not fall from the point before",
        "a pump's head falls as flow rises: check whether flow and head are swapped or a digit is wrong",
      );
    }
  });
  if (sound && points[0]!.flow > 0) {
    complain(
      column,
      litres(points[0]!.flow),
      "the shut-off head (at no flow) is not given",
      "add the point 0@…",
      "doubt",
    );
  }
  return checkPower(curve, complain) && sound;
}

function checkPower(curve: SpeedCurve, complain: Complain): boolean {
  if (curve.power === undefined) return true;
  const column = curveName(curve).replace("curve", "power");
  const points = curve.power;
  let sound = points.length >= 2;
  if (!sound)
    complain(
      column,
      `${points.length} points`,
      "a power curve needs at least two points",
      "add points or leave it out",
    );
  points.forEach((point, index) => {
    const text = `point ${index + 1}: ${litres(point.flow)} at ${point.power} W`;
    const before = points[index - 1];
    const finite = Number.isFinite(point.flow) && Number.isFinite(point.power);
    if (finite && point.flow >= 0 && point.power > 0 && (before === undefined || point.flow > before.flow)) return;
    sound = false;
    complain(
      column,
      text,
      "power must be above zero and flow must rise from 0",
      "sort points by flow and check the watts",
    );
  });
  return sound;
}

function checkSpeeds(pump: PumpRow, complain: Complain): void {
  pump.curves.forEach((curve, index) => {
    const ratio = curve.speedRatio;
    const before = pump.curves[index - 1]?.speedRatio;
    if (!(ratio > 0 && ratio <= 1)) {
      complain(
        curveName(curve),
        ratio,
        "the speed ratio is not between 0 and 1",
        "divide each speed by the full speed",
      );
    } else if (index === 0 && ratio !== 1) {
      complain(curveName(curve), ratio, "the first curve is not the one at full speed", "begin with speed ratio 1");
    } else if (before !== undefined && ratio >= before) {
      complain(curveName(curve), ratio, "the speed ratios are out of order or doubled", "sort curves by falling speed");
    }
  });
}

// Water power cannot exceed electrical power. It is looked at on every point and at the middle of every stretch.
function checkEfficiency(pump: PumpRow, curve: SpeedCurve, complain: Complain): void {
  let worst = { efficiency: 0, flow: 0, water: 0, wire: 0 };
  curve.points.forEach((point, index) => {
    const before = curve.points[index - 1] ?? point;
    for (const share of [0.5, 1]) {
      const flow = before.flow + share * (point.flow - before.flow);
      const water = specificWeight * flow * (before.head + share * (point.head - before.head));
      const wire = electricalPower(pump, curve, flow);
      if (wire > 0 && water / wire > worst.efficiency) worst = { efficiency: water / wire, flow, water, wire };
    }
  });
  const value = `${worst.water.toFixed(1)} W of water from ${worst.wire.toFixed(1)} W at ${litres(worst.flow)}`;
  const column = curve.speedRatio === 1 ? "rated power" : curveName(curve);
  if (worst.efficiency > 1) {
    // At a slower speed without watts of its own the electrical power is only estimated, by P ~ n^3.
    const severity = curve.speedRatio === 1 || curve.power !== undefined ? "error" : "doubt";
    const problem = "the water gets more power than the pump takes";
    complain(column, value, problem, "check watts, flow unit and head unit", severity);
  } else if (worst.efficiency > believableEfficiency) {
    complain(column, value, "the efficiency is above 75 %", "check watts, flow unit and head unit", "doubt");
  }
}

function electricalPower(pump: PumpRow, curve: SpeedCurve, flow: number): number {
  const power = curve.power;
  if (power === undefined || power.length === 0) return pump.ratedPower * curve.speedRatio ** 3;
  const after = power.findIndex((point) => point.flow >= flow);
  if (after === 0) return power[0]!.power;
  if (after < 0) return power[power.length - 1]!.power;
  const [a, b] = [power[after - 1]!, power[after]!];
  return a.power + ((b.power - a.power) * (flow - a.flow)) / (b.flow - a.flow);
}

function checkAffinity(full: SpeedCurve, slow: SpeedCurve, complain: Complain): void {
  const above = slow.points.find((point) => point.head > headAt(full, point.flow));
  if (above !== undefined) {
    complain(
      curveName(slow),
      `${litres(above.flow)} at ${above.head} m`,
      "the slower curve lies above the one at full speed",
      "check which curve belongs to which speed",
    );
    return;
  }
  const ratio = slow.points[0]!.head / full.points[0]!.head / slow.speedRatio ** 2;
  if (slow.points[0]!.flow === 0 && full.points[0]!.flow === 0 && Math.abs(ratio - 1) > affinitySpread) {
    complain(
      curveName(slow),
      `${slow.points[0]!.head} m`,
      `the shut-off head is ${ratio.toFixed(2)} times what the affinity law H ~ n^2 gives`,
      "check the speed ratio: it is a ratio of rotational speeds, not of watts or of settings on a dial",
      "doubt",
    );
  }
}

// Straight lines between points; beyond the last point the full-speed curve is taken to be used up only if it ends at zero.
function headAt(curve: SpeedCurve, flow: number): number {
  const points = curve.points;
  const after = points.findIndex((point) => point.flow >= flow);
  if (after === 0) return points[0]!.head;
  if (after < 0) {
    const last = points[points.length - 1]!;
    return last.head === 0 ? 0 : Number.POSITIVE_INFINITY;
  }
  const [a, b] = [points[after - 1]!, points[after]!];
  return a.head + ((b.head - a.head) * (flow - a.flow)) / (b.flow - a.flow);
}

/** A flow as people say it, in L/h. */
export function litres(flow: number): string {
  return `${Number((flow * 3_600_000).toPrecision(6))} L/h`;
}
