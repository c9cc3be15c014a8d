import type { CoupledPoint } from "./coupledCurve.ts";

/** Degree of the polynomials and their checks off the nodes. */
const degree = 10;
const checks = [0.013, 0.37, 0.81];
/** A piece is built once it has been asked this often, and halved at most so many times. */
const worthwhile = 4;
const deepest = 6;

/** Chebyshev points of the second kind on 0 to 1; their barycentric weights are +-1, halved at the ends. */
const nodes = Array.from({ length: degree + 1 }, (_, k) => (1 - Math.cos((Math.PI * k) / degree)) / 2);
const weights = nodes.map((_, k) => (k % 2 === 0 ? 1 : -1) * (k === 0 || k === degree ? 0.5 : 1));

interface Piece {
  readonly low: number;
  readonly width: number;
  readonly depth: number;
  asked: number;
  /** Largest relative error at the checks; NaN until the piece is built. */
  error: number;
  /** Exact solutions at the nodes. */
  values: readonly CoupledPoint[] | undefined;
  halves: readonly [Piece, Piece] | undefined;
}

/** A system curve that need not be solved anew for every pump: where it is asked often it is laid down in pieces, polynomials
 *  through exact solutions. A piece is used only if it meets three further exact solutions as closely as asked; otherwise it is halved, and
 *  where halving does not help (a pipe turns turbulent there) every answer is an exact solution.
 *  Source: J.-P. Berrut and L. N. Trefethen, Barycentric Lagrange interpolation, SIAM Review 46 (2004), eq. 4.2 and 5.4. */
export class CertifiedCurve {
  readonly #exact: (flow: number) => CoupledPoint;
  readonly #octaves = new Map<number, Piece>();

  /** the exact solution at a pump flow [m3/s] */
  constructor(exact: (flow: number) => CoupledPoint) {
    this.#exact = exact;
  }

  /** The system at a pump flow: exact, or certified to the relative error allowed [-]. */
  at(flow: number, allowed: number): CoupledPoint {
    if (!(flow > 1e-9)) return this.#exact(flow);
    const octave = Math.floor(Math.log2(flow));
    let piece = this.#octaves.get(octave);
    if (!piece) {
      piece = newPiece(2 ** octave, 2 ** octave, 0);
      this.#octaves.set(octave, piece);
    }
    for (;;) {
      if (Number.isNaN(piece.error)) {
        piece.asked++;
        if (piece.asked < worthwhile) return this.#exact(flow);
        this.#build(piece);
      }
      if (piece.error <= allowed) return read(piece, flow);
      if (piece.depth === deepest) return this.#exact(flow);
      const half: number = piece.width / 2;
      piece.halves ??= [newPiece(piece.low, half, piece.depth + 1), newPiece(piece.low + half, half, piece.depth + 1)];
      piece = piece.halves[flow < piece.halves[1].low ? 0 : 1];
    }
  }

  #build(piece: Piece): void {
    const values: CoupledPoint[] = [];
    for (const node of nodes) values.push(this.#exact(piece.low + node * piece.width));
    piece.values = values;
    piece.error = 0;
    for (const share of checks) {
      const flow = piece.low + share * piece.width;
      const exact = this.#exact(flow);
      const found = read(piece, flow);
      piece.error = Math.max(
        piece.error,
        Math.abs(found.head - exact.head) / Math.abs(exact.head),
        Math.abs(found.flowToDisplay - exact.flowToDisplay) / flow,
        Math.abs(found.others - exact.others) / flow,
        Math.abs(found.displayLevel - exact.displayLevel),
      );
    }
    // An exact solution that is no number leaves the piece unusable for good.
    if (Number.isNaN(piece.error)) piece.error = Number.POSITIVE_INFINITY;
  }
}

function newPiece(low: number, width: number, depth: number): Piece {
  return { low, width, depth, asked: 0, error: Number.NaN, values: undefined, halves: undefined };
}

function read(piece: Piece, flow: number): CoupledPoint {
  const values = piece.values as NonNullable<Piece["values"]>;
  const share = (flow - piece.low) / piece.width;
  let below = 0;
  let head = 0;
  let flowToDisplay = 0;
  let others = 0;
  let displayLevel = 0;
  for (let k = 0; k <= degree; k++) {
    const distance = share - (nodes[k] as number);
    const value = values[k] as CoupledPoint;
    if (distance === 0) return value;
    const weight = (weights[k] as number) / distance;
    below += weight;
    head += weight * value.head;
    flowToDisplay += weight * value.flowToDisplay;
    others += weight * value.others;
    displayLevel += weight * value.displayLevel;
  }
  return {
    head: head / below,
    flowToDisplay: flowToDisplay / below,
    others: others / below,
    displayLevel: displayLevel / below,
  };
}
