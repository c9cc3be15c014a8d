import { endHead, type Levels, levelOf, levelsFor, netFlowTo, setLoopHeads } from "../system/levels.ts";
import type { WorkNetwork } from "../system/networkLoan.ts";
import { onlyLinks } from "../system/onlyLinks.ts";
import type { PreparedLoop, PreparedSystem } from "../system/prepare.ts";
import { type DrainSolution, solveDrains } from "../system/solveDrains.ts";
import { solveNear } from "../system/solveNear.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";
import { BroydenSearch } from "./broydenSearch.ts";

/** The whole system while one loop's pumps give a flow. */
export interface CoupledPoint {
  /** Head between the pumps' inlet and where their water joins [m]. */
  readonly head: number;
  /** What the loop's outlets bring to the display [m3/s]. */
  readonly flowToDisplay: number;
  /** What all else brings over the weir [m3/s]; negative where it draws on the display, as this loop's own source may. */
  readonly others: number;
  /** Surface of the display [m above room floor]. */
  readonly displayLevel: number;
}

/** Flows to the places are right to this share of the pumps' flow [-]. */
const settled = 5e-8;
/** Rounds before the display's surface is searched for instead; where the box stands below the crest it takes two or three. */
const quickRounds = 20;
/** Rounds of the sump's chambers, which hardly move one another, with the surface searched for in each. */
const chamberRounds = 12;
/** Steps of one search for the surface, and how closely it is found [m]. */
const surfaceSteps = 80;
const surfaceFound = 1e-12;

/** The system seen from one loop's pumps: the same networks with those pumps taken out and their flow put in. Display, box, sump and
 *  all other loops follow that flow, as they do when the whole system is solved with a pump in it. */
export class CoupledCurve {
  readonly #system: PreparedSystem;
  readonly #prepared: PreparedLoop;
  readonly #work: WorkNetwork;
  readonly #source: number;
  readonly #inlet: number;
  readonly #suction: boolean;
  readonly #discharge: number;
  readonly #outlets: readonly { node: number; link: number; place: number; name: string; depth: number }[];
  readonly #places: readonly string[];
  /** Which of the places the loop draws on. */
  readonly #drawsOn: number;
  /** Chamber that all drains end in, if they do, and nothing else asks for the box's level. */
  readonly #onlyDrainTo: number | undefined;
  readonly #othersTo: Float64Array;
  /** Weir flow up to which the box is known to stand below the crest, so that its level moves nothing [m3/s]; at first it is not known of
   *  any, nor of none: where the lowest drain opens above the crest, the box lifts the display even without flow. */
  #freeUpTo = Number.NEGATIVE_INFINITY;
  #drains: DrainSolution | undefined;
  #spills = false;
  readonly #search: BroydenSearch;
  #levels: Levels;
  #warm = false;
  #last: { flow: number; given: Float64Array } | undefined;
  #before: { flow: number; given: Float64Array } | undefined;

  /** system PreparedSystem, whose other loops are solved on the way   prepared one of its loops   solved its running state */
  constructor(system: PreparedSystem, prepared: PreparedLoop, solved: SolvedSystem) {
    const { model, outlets } = prepared.loop;
    const beside = new Set(prepared.loop.pumps.map((pump) => `${pump.link}out`));
    const links = model.links.filter((link) => link.kind !== "pump" && !beside.has(link.from));
    this.#work = system.networks.take(onlyLinks(model, links));
    const { net } = this.#work;
    this.#system = system;
    this.#prepared = prepared;
    this.#levels = solved.levels;
    this.#drains = solved.drains;
    this.#source = net.nodeIndex.get("source") as number;
    const suction = net.nodeIndex.get("suction");
    this.#suction = suction !== undefined;
    this.#inlet = suction ?? this.#source;
    this.#discharge = net.nodeIndex.get("discharge") as number;
    this.#places = ["display", ...system.chamberPlaces];
    this.#drawsOn = this.#places.indexOf(prepared.loop.sourcePlace);
    this.#search = new BroydenSearch(this.#places.length);
    this.#othersTo = new Float64Array(this.#places.length);
    this.#outlets = outlets.map((outlet) => ({
      node: net.nodeIndex.get(outlet.node) as number,
      link: net.linkIndex.get(outlet.link) as number,
      place: this.#places.indexOf(outlet.place),
      name: outlet.place,
      depth: outlet.depth,
    }));
    const asked = system.loops.flatMap(({ loop }) => [loop.sourcePlace, ...loop.outlets.map(({ place }) => place)]);
    const to = system.drains[0]?.place;
    const together = system.drains.every(({ place }) => place === to);
    const known = to !== undefined && system.chamberPlaces.includes(to);
    if (known && together && asked.every((place) => this.#places.includes(place)))
      this.#onlyDrainTo = system.chamberPlaces.indexOf(to);
  }

  /** Exact head, split and levels at a pump flow [m3/s]. */
  at(flow: number): CoupledPoint {
    const { net, state } = this.#work;
    net.demand[this.#discharge] = -flow;
    if (this.#suction) net.demand[this.#inlet] = flow;
    const taken = this.#expected(flow);
    if (!this.#warm) this.#solveOthers(1e-10);
    this.#setLevels(flow, taken);
    const found = this.#searchFlows(flow, taken) || this.#searchSurface(flow, taken);
    // A line through what is not settled leads anywhere.
    if (found) {
      this.#before = this.#last;
      this.#last = { flow, given: taken };
    }
    const inletHead = (this.#suction ? state.head : net.head)[this.#inlet] as number;
    return {
      head: (state.head[this.#discharge] as number) - inletHead,
      flowToDisplay: taken[0] as number,
      others: (this.#othersTo[0] as number) - (this.#drawsOn === 0 ? flow : 0),
      displayLevel: levelOf(this.#levels, "display"),
    };
  }

  /** Searches for the flows to all places at once; true where they settled. */
  #searchFlows(flow: number, taken: Float64Array): boolean {
    const given = new Float64Array(this.#places.length);
    let low = Number.NEGATIVE_INFINITY;
    let high = Number.POSITIVE_INFINITY;
    const search = this.#search;
    search.begin();
    for (let round = 0; round < quickRounds; round++) {
      this.#give(given);
      let far = 0;
      for (let i = 0; i < given.length; i++) far = Math.max(far, Math.abs((given[i] as number) - (taken[i] as number)));
      const tried = taken[0] as number;
      if ((given[0] as number) > tried) low = Math.max(low, tried);
      else high = Math.min(high, tried);
      // Wrong by so little, levels move the head by 1e-10 m, and the split by a hundredth of it, which the last step still corrects.
      const done = far <= settled * Math.max(flow, 1e-6);
      search.next(taken, given, far);
      if (!done) {
        // What is given falls as what is taken rises, hardly where the box stands free, steeply where it lifts the display.
        if (!((taken[0] as number) >= low && (taken[0] as number) <= high))
          taken[0] = Number.isFinite(high - low) ? (low + high) / 2 : (given[0] as number);
      }
      this.#setLevels(flow, taken);
      if (done) return true;
    }
    search.forget();
    return false;
  }

  /** Searches for the display's surface, which always has an answer where the flow over the weir may have none: a box that lifts the
   *  display stands at its lowest inlet without flow and at once at a higher one with any, so that between them the surface floats and just no
   *  water runs over. A higher surface lets less water up, which raises it less: with the chambers held, its root is bracketed by the crest
   *  and what the surface comes to from there.
   *  True where the chambers settled too. */
  #searchSurface(flow: number, taken: Float64Array): boolean {
    const given = new Float64Array(this.#places.length);
    const rise = (surface: number): number => {
      this.#levels.set("display", surface);
      this.#give(given);
      taken[0] = given[0] as number;
      this.#setLevels(flow, taken);
      return levelOf(this.#levels, "display") - surface;
    };
    for (let round = 0; round < chamberRounds; round++) {
      const surface = surfaceWhereStill(rise, this.#system.geometry.weirCrest);
      let far = 0;
      for (let i = 1; i < given.length; i++) {
        far = Math.max(far, Math.abs((given[i] as number) - (taken[i] as number)));
        taken[i] = given[i] as number;
      }
      this.#setLevels(flow, taken);
      this.#levels.set("display", surface);
      if (far <= settled * Math.max(flow, 1e-6)) return true;
    }
    return false;
  }

  /** Solves the networks at the levels as they stand; puts what the loop brings to each place into `given`. */
  #give(given: Float64Array): void {
    const { state } = this.#work;
    this.#setHeads();
    solveNear(this.#work, this.#warm, 1e-10);
    this.#warm = true;
    this.#solveOthers(1e-10);
    given.fill(0);
    for (const { place, link } of this.#outlets)
      if (place >= 0) given[place] = (given[place] as number) + (state.flow[link] as number);
  }

  /** Whether the box runs over at a pump flow [m3/s]. */
  spillsAt(flow: number): boolean {
    this.at(flow);
    return this.#spills;
  }

  #solveOthers(tolerance: number): void {
    this.#othersTo.fill(0);
    for (const loop of this.#system.loops) {
      if (loop === this.#prepared) continue;
      setLoopHeads(loop, this.#levels);
      solveNear(loop, true, tolerance);
      for (let i = 0; i < this.#places.length; i++)
        this.#othersTo[i] = (this.#othersTo[i] as number) + netFlowTo(loop, this.#places[i] as string);
    }
  }

  /** Levels of all places for what the loop brings to them. */
  #setLevels(flow: number, given: Float64Array): void {
    const system = this.#system;
    const { geometry } = system;
    const inflows: number[] = [];
    for (let i = 0; i < given.length; i++)
      inflows.push((given[i] as number) + (this.#othersTo[i] as number) - (i === this.#drawsOn ? flow : 0));
    const weirFlow = Math.max(0, inflows.shift() as number);
    let boxLevel = geometry.boxFloor;
    if (this.#onlyDrainTo !== undefined && weirFlow <= this.#freeUpTo) {
      inflows[this.#onlyDrainTo] = (inflows[this.#onlyDrainTo] ?? 0) + weirFlow;
      this.#spills = false;
    } else {
      const drains = solveDrains(system, weirFlow, this.#levels, this.#drains);
      const { box } = drains;
      this.#drains = drains;
      boxLevel = box.level;
      this.#spills = box.overflows;
      // More water up never stands lower in the box.
      if (!box.overflows && boxLevel < geometry.weirCrest - 1e-3) this.#freeUpTo = weirFlow;
      system.drains.forEach(({ place }, i) => {
        const chamber = system.chamberPlaces.indexOf(place);
        if (chamber >= 0) inflows[chamber] = (inflows[chamber] ?? 0) + (box.flows[i] ?? 0);
      });
    }
    this.#levels = levelsFor(system, weirFlow, inflows, boxLevel);
  }

  #setHeads(): void {
    const { net } = this.#work;
    net.head[this.#source] = levelOf(this.#levels, this.#prepared.loop.sourcePlace);
    for (const { node, name, depth } of this.#outlets) net.head[node] = endHead(levelOf(this.#levels, name), depth);
  }

  /** What each place will be given, by the straight line through the last two points. */
  #expected(flow: number): Float64Array {
    const expected = new Float64Array(this.#places.length);
    const last = this.#last;
    const before = this.#before;
    for (let i = 0; i < expected.length; i++) {
      const a = last?.given[i] ?? (i === 0 ? flow : 0);
      if (!last) expected[i] = a;
      else if (!before || before.flow === last.flow) expected[i] = a;
      else expected[i] = a + ((a - (before.given[i] as number)) * (flow - last.flow)) / (last.flow - before.flow);
    }
    return expected;
  }
}

/** The surface that the display comes back to [m]: `rise`, how far it would move from a surface, falls steadily with it, by jumps too.
 *  Source: regula falsi (Illinois), halved every third step. */
function surfaceWhereStill(rise: (surface: number) => number, crest: number): number {
  let low = crest;
  let atLow = rise(low);
  if (atLow <= surfaceFound) return low;
  let high = low + atLow;
  let atHigh = rise(high);
  if (Math.abs(atHigh) <= surfaceFound) return high;
  let surface = high;
  let side = 0;
  for (let step = 0; step < surfaceSteps && high - low > surfaceFound; step++) {
    surface = step % 3 === 2 ? (low + high) / 2 : (low * atHigh - high * atLow) / (atHigh - atLow);
    const moved = rise(surface);
    if (Math.abs(moved) <= surfaceFound) return surface;
    if (moved > 0) {
      low = surface;
      atLow = moved;
      if (side === 1) atHigh /= 2;
      side = 1;
    } else {
      high = surface;
      atHigh = moved;
      if (side === -1) atLow /= 2;
      side = -1;
    }
  }
  return surface;
}
