import {
  type FittingKind,
  type FittingMethod,
  fittingLoss,
  fittingLossSpread,
  type ValveKind,
  valveLoss,
} from "@tidewright/engine";

/** What a fitting or valve loses on the velocity head of its bore [-], and the range of the published methods at Re 3e4. */
interface KnownLoss {
  readonly turbulent: number;
  readonly laminar: number;
  readonly range: readonly [number, number];
}

/** Answers kept by the numbers that they depend on, and by nothing else: bores come from a short list of pipe sizes. */
class Known {
  readonly #byMethod: Readonly<Record<FittingMethod, Map<number, Map<string, KnownLoss>>>> = {
    crane: new Map(),
    hooper: new Map(),
    darby: new Map(),
  };
  #count = 0;

  get(method: FittingMethod, number: number, kind: string): KnownLoss | undefined {
    return this.#byMethod[method].get(number)?.get(kind);
  }

  /** A drag passes through many numbers, of which few come again: now and then all is forgotten. */
  set(method: FittingMethod, number: number, kind: string, loss: KnownLoss): KnownLoss {
    if (++this.#count > 2000) {
      for (const map of Object.values(this.#byMethod)) map.clear();
      this.#count = 1;
    }
    const map = this.#byMethod[method];
    const kinds = map.get(number);
    if (kinds) kinds.set(kind, loss);
    else map.set(number, new Map([[kind, loss]]));
    return loss;
  }
}

const fittings = new Known();

/** Loss of one fitting with the range of the methods. kind   bore [m]   method   -> KnownLoss. Source: engine `fittingLoss`. */
export function fittingLosses(kind: FittingKind, bore: number, method: FittingMethod): KnownLoss {
  const known = fittings.get(method, bore, kind);
  if (known) return known;
  const { turbulent, laminar } = fittingLoss(kind, method, bore);
  const { low, high } = fittingLossSpread(kind, bore, 3e4);
  return fittings.set(method, bore, kind, { turbulent, laminar, range: [low, high] });
}

const methods = ["crane", "hooper", "darby"] as const;
/** One table a bore: openings vary, bores hardly. */
const valves = new Map<number, Known>();

/** Loss of a valve at an opening with the range of the methods. kind   opening [-]   bore [m]   method   -> KnownLoss.
 *  Source: engine `valveLoss`. */
export function valveLosses(kind: ValveKind, opening: number, bore: number, method: FittingMethod): KnownLoss {
  let table = valves.get(bore);
  if (!table) {
    if (valves.size > 100) valves.clear();
    table = new Known();
    valves.set(bore, table);
  }
  const known = table.get(method, opening, kind);
  if (known) return known;
  const { turbulent, laminar } = valveLoss(kind, opening, bore, method);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const other of methods) {
    const loss = valveLoss(kind, opening, bore, other);
    const k = loss.turbulent + loss.laminar / 3e4;
    low = Math.min(low, k);
    high = Math.max(high, k);
  }
  return table.set(method, opening, kind, { turbulent, laminar, range: [low, high] });
}
