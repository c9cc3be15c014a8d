import { tidyPolyline } from "../elevation/polyline.ts";
import type { Extent, Point } from "../elevation/scene.ts";

/** A bend counts like so much pipe [m]: a 90 degree elbow loses about as much as 30 diameters of straight pipe (Crane TP-410,
 *  from memory), which is a metre of a 32 mm line. */
const bendLength = 1;

/** Way that is kept from a solid beside it and above or below it, where there is room [m]. */
const clearance = { beside: 0.1, over: 0.06 } as const;

/** One end of a way: the point, and which way a pipe stands there, if it has to. */
interface WayEnd {
  readonly at: Point;
  readonly upright?: "up" | "down";
}

/** Returns the right-angled way between two points that crosses no solid, with few bends and then short.
 *  from, to ends [m]; an end inside a solid leaves it upright first   solids what must not be crossed [m]
 *  side +1 where the way prefers to pass on the right of them all, -1 on the left   -> corners [m]
 *  Findings: none. Throws: never.
 *  Valid: any solids; where they leave no way at all it is the one that looks at none of them. The same question has always the
 *  same answer.
 *  Source: E. W. Dijkstra, A note on two problems in connexion with graphs, Numerische Mathematik 1 (1959), on the lines beside
 *  the solids' edges, which always hold a shortest way. */
export function wayAround(from: WayEnd, to: WayEnd, solids: readonly Extent[], side: 1 | -1): Point[] {
  const start = outOf(from, solids);
  const end = outOf(to, solids);
  const between =
    shortest(start, end, solids, side) ??
    shortest(start, end, solids, undefined) ??
    shortest(start, end, [], undefined);
  return tidyPolyline([from.at, ...(between ?? [start.at, end.at]), to.at]);
}

/** A port's way out: where it is clear of the solids that hold it, and the direction from the port to there. */
interface Outside {
  readonly at: Point;
  /** Place of the direction in `ways`; none where the end is outside already. */
  readonly way: number | undefined;
}

const holds = ({ x0, x1, y0, y1 }: Extent, { x, y }: Point): boolean => x > x0 && x < x1 && y > y0 && y < y1;

function outOf({ at, upright = "up" }: WayEnd, solids: readonly Extent[]): Outside {
  const over = solids.filter(({ x0, x1 }) => at.x > x0 && at.x < x1);
  let y = at.y;
  // What lies on another solid is left through both.
  for (let i = 0; i <= over.length; i += 1) {
    const inside = over.find((solid) => holds(solid, { x: at.x, y }));
    if (inside === undefined) break;
    y = upright === "up" ? above(inside, over) : below(inside, over);
  }
  return y === at.y ? { at, way: undefined } : { at: { x: at.x, y }, way: upright === "up" ? 2 : 3 };
}

/** Half way into a gap that is too low for the whole clearance. */
function above({ y1 }: Extent, over: readonly Extent[]): number {
  const next = Math.min(...over.map(({ y0 }) => (y0 >= y1 ? y0 : Infinity)));
  return y1 + Math.min(clearance.over, (next - y1) / 2);
}
function below({ y0 }: Extent, over: readonly Extent[]): number {
  const next = Math.max(...over.map(({ y1 }) => (y1 <= y0 ? y1 : -Infinity)));
  return y0 - Math.min(clearance.over, (y0 - next) / 2);
}

/** Right, left, up, down. */
const ways = [
  { x: 1, y: 0 },
  { x: -1, y: 0 },
  { x: 0, y: 1 },
  { x: 0, y: -1 },
] as const;

function shortest(
  start: Outside,
  end: Outside,
  solids: readonly Extent[],
  side: 1 | -1 | undefined,
): Point[] | undefined {
  const [left, right] = [Math.min(...solids.map(({ x0 }) => x0)), Math.max(...solids.map(({ x1 }) => x1))];
  const lines = solids.flatMap(({ x0, x1 }) => [x0 - clearance.beside, x1 + clearance.beside]);
  // All that rises does so on one side of the tank, where the drawing has room for it.
  const allowed = lines.filter((x) => side === undefined || (side > 0 ? x > left : x < right));
  const lowest = Math.min(start.at.y, end.at.y, ...solids.map(({ y0 }) => y0));
  const heights = solids.flatMap(({ y0, y1 }) => [y0 - clearance.over, y1 + clearance.over]).filter((y) => y > lowest);
  const xs = ordered([start.at.x, end.at.x, ...allowed]);
  const ys = ordered([start.at.y, end.at.y, ...heights]);
  return cheapest(start, end, xs, ys, (a, b) => solids.some((solid) => crosses(a, b, solid)));
}

const ordered = (numbers: readonly number[]): number[] => [...new Set(numbers)].sort((a, b) => a - b);

/** Whether an upright or level piece passes through the inside of a solid. */
function crosses(a: Point, b: Point, { x0, x1, y0, y1 }: Extent): boolean {
  return (
    Math.max(a.x, b.x) > x0 + 1e-9 &&
    Math.min(a.x, b.x) < x1 - 1e-9 &&
    Math.max(a.y, b.y) > y0 + 1e-9 &&
    Math.min(a.y, b.y) < y1 - 1e-9
  );
}

/** The cheapest way over crossings of lines; of equal ones the first found, and the search is the same every time. */
function cheapest(
  start: Outside,
  end: Outside,
  xs: readonly number[],
  ys: readonly number[],
  blocked: (a: Point, b: Point) => boolean,
): Point[] | undefined {
  const pointOf = (node: number): Point => ({ x: xs[node % xs.length]!, y: ys[Math.floor(node / xs.length)]! });
  const nodeAt = ({ x, y }: Point): number => ys.indexOf(y) * xs.length + xs.indexOf(x);
  const [first, last] = [nodeAt(start.at), nodeAt(end.at)];
  const count = xs.length * ys.length * ways.length;
  const cost = new Array<number>(count).fill(Infinity);
  const before = new Array<number>(count).fill(-1);
  const done = new Array<boolean>(count).fill(false);
  // A state is a crossing and the way it was come by.
  for (const way of ways.keys())
    cost[first * ways.length + way] = start.way === undefined || start.way === way ? 0 : bendOf(start.way, way);
  // The last piece goes into the port the way that its own leads out of it.
  const into = end.way === undefined ? undefined : end.way === 2 ? 3 : 2;
  for (;;) {
    let state = -1;
    for (let i = 0; i < count; i += 1) if (!done[i] && cost[i]! < (state < 0 ? Infinity : cost[state]!)) state = i;
    if (state < 0) break;
    done[state] = true;
    const node = Math.floor(state / ways.length);
    const way = state % ways.length;
    const [column, row] = [node % xs.length, Math.floor(node / xs.length)];
    for (const [next, { x, y }] of ways.entries()) {
      const [to, up] = [column + x, row + y];
      if (to < 0 || to >= xs.length || up < 0 || up >= ys.length) continue;
      const beside = up * xs.length + to;
      const [a, b] = [pointOf(node), pointOf(beside)];
      const reached = cost[state]! + bendOf(way, next) + Math.abs(b.x - a.x) + Math.abs(b.y - a.y);
      const there = beside * ways.length + next;
      if (reached >= cost[there]! - 1e-12 || blocked(a, b)) continue;
      cost[there] = reached;
      before[there] = state;
    }
  }
  const ends = [...ways.keys()].map((way) => ({
    state: last * ways.length + way,
    cost: cost[last * ways.length + way]! + (into === undefined ? 0 : bendOf(way, into)),
  }));
  const best = ends.reduce((a, b) => (b.cost < a.cost ? b : a));
  if (!Number.isFinite(best.cost)) return undefined;
  const points: Point[] = [];
  for (let state = best.state; state >= 0; state = before[state]!)
    points.unshift(pointOf(Math.floor(state / ways.length)));
  return points;
}

/** No pipe turns back upon itself. */
function bendOf(way: number, next: number): number {
  if (way === next) return 0;
  return ways[way]!.x === -ways[next]!.x && ways[way]!.y === -ways[next]!.y ? Infinity : bendLength;
}
