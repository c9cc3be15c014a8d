import type { PumpRow } from "@tidewright/catalogue";
import {
  type PowerCurve,
  type PumpAtSpeed,
  powerCurve,
  pumpAtSpeed,
  pumpCurve,
  type SpeedCurve,
} from "@tidewright/engine";

/** A catalogue pump's curves, ready for the engine. */
export interface PumpHydraulics {
  readonly head: readonly SpeedCurve[];
  readonly power: readonly PowerCurve[];
  /** The pump at full speed and at the least that it may run at (full again where it knows but one). */
  readonly full: PumpAtSpeed;
  readonly slowest: PumpAtSpeed;
}

const known = new WeakMap<PumpRow, PumpHydraulics>();

/** Returns a catalogue pump's head and power curves; worked out once for each row.
 *  row PumpRow   -> PumpHydraulics
 *  Findings: none. Throws: RangeError when its points make no curve (`checkCatalogue` names them first).
 *  Valid: as the engine's `pumpCurve` and `powerCurve`; speeds without power points use the curve at full speed or the rating.
 *  Source: engine. */
export function pumpHydraulics(row: PumpRow): PumpHydraulics {
  const before = known.get(row);
  if (before) return before;
  const head = row.curves.map(({ speedRatio, points }) => ({ speedRatio, curve: pumpCurve(points) }));
  const measured = row.curves.filter((entry) => entry.power && entry.power.length > 0);
  const power =
    measured.length > 0
      ? measured.map((entry) => powerCurve(entry.power ?? [], row.ratedPower, entry.speedRatio))
      : [powerCurve([], row.ratedPower, 1)];
  const full = pumpAtSpeed(head, 1);
  const slowest = row.control === "controllable" ? pumpAtSpeed(head, row.minimumSpeed) : full;
  const hydraulics = { head, power, full, slowest };
  known.set(row, hydraulics);
  return hydraulics;
}
