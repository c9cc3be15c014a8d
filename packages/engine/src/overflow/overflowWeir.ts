import { standardGravity } from "../water/index.ts";

/** The crest over which a display spills into its overflow box: plain, or with teeth that close part of it. */
export interface OverflowWeir {
  /** Whole crest, teeth included [m]. */
  readonly length: number;
  /** Share of the crest that is open between the teeth [-], 0 to 1; 1 is a plain crest. */
  readonly toothOpenShare: number;
  /** Height of the teeth above the crest [m]; 0 is a plain crest. */
  readonly toothHeight: number;
  /** Crest above the floor of the display [m]; Infinity leaves the approach speed out. */
  readonly crestHeight: number;
}

/** Relative uncertainty [-] of an overflow's flow at a given head. Aquarium heads of 5 to 25 mm lie below the 30 mm where
 *  ISO 1438 begins: surface tension and film cling to the crest.
 *  Source: engineering judgement, stated; ISO 1438:2017 gives 1 to 3 % inside its limits only.
 *  Example: weirUncertainty  ->  0.15 */
export const weirUncertainty = 0.15;

/** Head [m] below which the published weir standards no longer hold.
 *  Source: ISO 1438:2017, limits of application of the full-width form.
 *  Example: weirHeadLimit  ->  0.03 */
export const weirHeadLimit = 0.03;

/** Returns the flow over an overflow's crest: Q = Ce (2/3) sqrt(2 g) (b_open h^1.5 + (b - b_open) (h - t)^1.5 above the teeth),
 *  Ce = 0.602 + 0.083 h/P; below the tops only the open length counts, above them the whole length carries the water over t.
 *  weir OverflowWeir   head h [m] above the crest   -> flow [m3/s]; 0 at or below the crest
 *  Findings: none. Throws: never.
 *  Valid: free nappe, slots wider than their depth of water; continuous and rising with head; weirUncertainty below weirHeadLimit.
 *  Rehbock's 1.2 mm head term is left out, since it is not a flow at zero head; h/P is held at 1.
 *  Source: Th. Rehbock 1929 in ISO 1438:2017 without the head term; teeth by adding weirs, own derivation.
 *  Example: overflowWeirFlow({ length: 0.3, toothOpenShare: 1, toothHeight: 0, crestHeight: Infinity }, 0.0163) * 3600  ->  3.995 */
export function overflowWeirFlow(weir: OverflowWeir, head: number): number {
  if (!(head > 0) || !(weir.length > 0)) return 0;
  const open = weir.length * Math.min(1, Math.max(0, weir.toothOpenShare));
  const overTeeth = head - Math.max(0, weir.toothHeight);
  const approach = weir.crestHeight > head ? head / weir.crestHeight : 1;
  const effective =
    open * head * Math.sqrt(head) + (overTeeth > 0 ? (weir.length - open) * overTeeth * Math.sqrt(overTeeth) : 0);
  return (0.602 + 0.083 * approach) * (2 / 3) * Math.sqrt(2 * standardGravity) * effective;
}

/** Returns the head above an overflow's crest that carries a flow: the exact inverse of overflowWeirFlow, to 1e-15 m.
 *  weir OverflowWeir   flow [m3/s, >= 0]   -> head [m]; 0 for no flow, Infinity where the crest has no length
 *  Findings: none. Throws: never.
 *  Valid: as overflowWeirFlow; with every slot shut the head of the smallest flow is the tooth height.
 *  Source: root of overflowWeirFlow, by Newton's method inside a bracket.
 *  Example: overflowWeirHead({ length: 0.3, toothOpenShare: 0.5, toothHeight: 1, crestHeight: Infinity }, 4 / 3600)  ->  0.0259 */
export function overflowWeirHead(weir: OverflowWeir, flow: number): number {
  if (!(flow > 0)) return 0;
  if (!(weir.length > 0) || flow === Number.POSITIVE_INFINITY) return Number.POSITIVE_INFINITY;
  const unit = 0.602 * (2 / 3) * Math.sqrt(2 * standardGravity);
  // A full-length weir without approach speed, raised onto the teeth, needs at least the true head; so does the open part alone.
  const open = weir.length * Math.min(1, Math.max(0, weir.toothOpenShare));
  const teeth = Math.max(0, weir.toothHeight);
  let high = Math.min(teeth + headOver(unit * weir.length, flow), open > 0 ? headOver(unit * open, flow) : Infinity);
  high *= 1 + 1e-9;
  let low = 0;
  let head = high;
  // The flow is convex in the head, but where the approach speed stops counting; from above Newton then cannot miss.
  for (let step = 0; step < 100; step++) {
    const surplus = overflowWeirFlow(weir, head) - flow;
    if (surplus > 0) high = head;
    else low = head;
    let next = head - surplus / overflowWeirSlope(weir, head);
    if (Math.abs(next - head) <= 2e-16 * head) return next;
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (next === head || next === low || next === high) return head;
    head = next;
  }
  return head;
}

function headOver(unit: number, flow: number): number {
  return Math.cbrt((flow / unit) ** 2);
}

/** dQ/dh [m2/s] of `overflowWeirFlow`. */
function overflowWeirSlope(weir: OverflowWeir, head: number): number {
  const open = weir.length * Math.min(1, Math.max(0, weir.toothOpenShare));
  const overTeeth = head - Math.max(0, weir.toothHeight);
  const above = overTeeth > 0 ? (weir.length - open) * Math.sqrt(overTeeth) : 0;
  const approach = weir.crestHeight > head ? head / weir.crestHeight : 1;
  const root = open * Math.sqrt(head);
  const effective = root * head + above * overTeeth;
  const growth = (0.602 + 0.083 * approach) * 1.5 * (root + above);
  const faster = weir.crestHeight > head ? (0.083 / weir.crestHeight) * effective : 0;
  return (2 / 3) * Math.sqrt(2 * standardGravity) * (growth + faster);
}
