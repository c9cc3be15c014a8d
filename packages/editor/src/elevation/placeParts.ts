import { cornerDistances, distance, pointAlong, polylineLength } from "./polyline.ts";
import type { Point } from "./scene.ts";

/** What the placing of a run's parts needs to know of each of them. */
export interface Bead {
  /** Pipes stretch between beads; the rest sit at a point. */
  readonly kind: "pipe" | "point" | "elbow" | "end";
  /** Length of a pipe [m]; it sets its share of the drawn line. */
  readonly length: number;
  /** Half the room that a symbol takes on the line [m]. */
  readonly half: number;
  /** Change of elevation along a pipe [m]. */
  readonly rise?: number;
}

/** Where a part lies on the line: its stretch, and the place of its symbol or of a pipe's middle [m along]. */
export interface Placed {
  readonly from: number;
  readonly to: number;
  readonly at: number;
}

/** Returns for each part of a run where it lies on the drawn line: elbows go to corners, parts on upright pieces to
 *  their true elevation, pipes share what is between in proportion to their lengths, and symbols keep their distance.
 *  The stretches follow each other without gaps, so that a run drawn part by part is one pipe.
 *  points the drawn line [m]   beads the parts in order   -> places along the line [m], one for each part
 *  Findings: none. Throws: never.
 *  Valid: any line and any run; where the line is too short for all symbols they move closer evenly.
 *  Source: own construction. */
export function placeParts(points: readonly Point[], beads: readonly Bead[]): Placed[] {
  const total = polylineLength(points);
  const nominal = levelPlaces(points, beads, nominalPlaces(beads, total), total);
  const corners = cornerDistances(points);
  const pinned = pinElbows(beads, nominal, corners, total);
  const spots = offCorners(beads, spread(beads, pinned, total), corners, total);
  const edges = beads.slice(1).map((bead, i) => edgeBetween(beads[i]!, bead, spots[i]!, spots[i + 1]!));
  let last = 0;
  return beads.map((bead, i) => {
    const from = last;
    last = Math.max(from, Math.min(total, edges[i] ?? total));
    return { from, to: last, at: bead.kind === "pipe" ? (from + last) / 2 : spots[i]! };
  });
}

/** A pipe reaches to the symbol or to the elbow's socket; two symbols, like two pipes, share what is between them. */
function edgeBetween(a: Bead, b: Bead, from: number, to: number): number {
  if (a.kind === "pipe" && b.kind !== "pipe") return b.kind === "elbow" ? to - b.half : to;
  if (b.kind === "pipe" && a.kind !== "pipe") return a.kind === "elbow" ? from + a.half : from;
  return (from + to) / 2;
}

/** Where the line runs up or down, a part moves to where the line has the part's true elevation. */
function levelPlaces(points: readonly Point[], beads: readonly Bead[], places: number[], total: number): number[] {
  let y = points[0]!.y;
  let least = 0;
  return places.map((place, i) => {
    const rise = beads[i]!.rise ?? 0;
    const level = y + rise / 2;
    y += rise;
    const found = beads[i]!.kind === "end" ? total : (placeAtLevel(points, level, place) ?? place);
    least = Math.max(least, found);
    return least;
  });
}

/** The place on an upright piece at an elevation, nearest to the wished one and not far from it. */
function placeAtLevel(points: readonly Point[], level: number, wish: number): number | undefined {
  if (Math.abs(pointAlong(points, wish).y - level) < 1e-6) return wish;
  let best: number | undefined;
  let along = 0;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1]!;
    const b = points[i]!;
    if (Math.abs(a.x - b.x) < 1e-9 && (level - a.y) * (level - b.y) <= 0) {
      const place = along + Math.abs(level - a.y);
      if (Math.abs(place - wish) < 0.35 && (best === undefined || Math.abs(place - wish) < Math.abs(best - wish)))
        best = place;
    }
    along += distance(a, b);
  }
  return best;
}

/** Middle of each part if only pipe lengths counted. */
function nominalPlaces(beads: readonly Bead[], total: number): number[] {
  const sum = beads.reduce((length, bead) => length + (bead.kind === "pipe" ? bead.length : 0), 0);
  let along = 0;
  return beads.map((bead, i) => {
    if (bead.kind === "end") return total;
    if (sum <= 0) return (total * (i + 0.5)) / beads.length;
    const share = bead.kind === "pipe" ? (bead.length / sum) * total : 0;
    along += share;
    return along - share / 2;
  });
}

/** Elbows move to corners in order, at the least total distance; the parts between move with them. */
function pinElbows(beads: readonly Bead[], nominal: number[], corners: readonly number[], total: number): number[] {
  const elbows = beads.flatMap((bead, i) => (bead.kind === "elbow" ? [i] : []));
  if (elbows.length === 0 || corners.length === 0) return nominal;
  // best[i][j]: least cost with the first i elbows and the first j corners; an elbow without a corner costs a whole line.
  const best: { cost: number; used: number[] }[][] = [];
  for (let i = 0; i <= elbows.length; i++) {
    best[i] = [];
    for (let j = 0; j <= corners.length; j++) {
      if (i === 0) {
        best[i]![j] = { cost: 0, used: [] };
        continue;
      }
      const unpinned = best[i - 1]![j]!;
      let choice = { cost: unpinned.cost + total + 1, used: [...unpinned.used, -1] };
      if (j > 0) {
        const skip = best[i]![j - 1]!;
        if (skip.cost < choice.cost) choice = skip;
        const pin = best[i - 1]![j - 1]!;
        const cost = pin.cost + Math.abs(nominal[elbows[i - 1]!]! - corners[j - 1]!);
        if (cost < choice.cost) choice = { cost, used: [...pin.used, j - 1] };
      }
      best[i]![j] = choice;
    }
  }
  const used = best[elbows.length]![corners.length]!.used;
  const knots = [{ from: 0, to: 0 }];
  elbows.forEach((bead, i) => {
    const corner = used[i]!;
    if (corner >= 0) knots.push({ from: nominal[bead]!, to: corners[corner]! });
  });
  knots.push({ from: total, to: total });
  return nominal.map((place) => {
    let k = 1;
    while (k < knots.length - 1 && place > knots[k]!.from) k++;
    const a = knots[k - 1]!;
    const b = knots[k]!;
    const t = b.from > a.from ? (place - a.from) / (b.from - a.from) : 1;
    return a.to + (b.to - a.to) * Math.min(1, Math.max(0, t));
  });
}

/** A symbol that would sit on a bend moves to the straight piece beside it, where its neighbours leave room. */
function offCorners(beads: readonly Bead[], spots: number[], corners: readonly number[], total: number): number[] {
  const out = [...spots];
  beads.forEach((bead, i) => {
    if (bead.kind !== "point") return;
    const corner = corners.find((one) => Math.abs(one - out[i]!) < bead.half);
    if (corner === undefined) return;
    const room = (k: number) => (beads[k]!.kind === "pipe" ? leastHalf : beads[k]!.half);
    const low = i === 0 ? bead.half : out[i - 1]! + room(i - 1) + bead.half;
    const high = i === beads.length - 1 ? total - bead.half : out[i + 1]! - room(i + 1) - bead.half;
    const choices = [corner - bead.half * 1.1, corner + bead.half * 1.1].filter((spot) => spot >= low && spot <= high);
    choices.sort((a, b) => Math.abs(a - out[i]!) - Math.abs(b - out[i]!));
    out[i] = choices[0] ?? out[i]!;
  });
  return out;
}

/** Least half stretch of a pipe [m], so that each can be seen and taken. */
const leastHalf = 0.012;

/** Parts keep half-widths apart: a pass forward, a pass back, and even spacing where neither fits. */
function spread(beads: readonly Bead[], places: readonly number[], total: number): number[] {
  const halves = beads.map((bead) => (bead.kind === "pipe" ? leastHalf : bead.half));
  const need = halves.reduce((sum, half) => sum + 2 * half, 0);
  if (need > total) {
    let along = 0;
    return halves.map((half) => {
      const share = (2 * half * total) / need;
      along += share;
      return along - share / 2;
    });
  }
  const out = [...places];
  let least = 0;
  halves.forEach((half, i) => {
    out[i] = Math.max(out[i]!, least + half);
    least = out[i]! + half;
  });
  let most = total;
  for (let i = out.length - 1; i >= 0; i--) {
    const half = beads[i]!.kind === "end" ? 0 : halves[i]!;
    out[i] = Math.min(out[i]!, most - half);
    most = out[i]! - halves[i]!;
  }
  return out;
}
