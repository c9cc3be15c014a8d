import { toSI } from "@tidewright/units";
import type { Finding } from "../finding.ts";
import { collect } from "./collect.ts";
import { limits } from "./limits.ts";
import type { Subject } from "./subject.ts";

/** A tank that stands no higher than this has nothing under it, so that its sump can only be elsewhere [m]: own limit. */
const onTheFloor = 0.05;
/** Sums of lengths that were typed in millimetres are right to this [m]. */
const rounding = 1e-9;

/** Flow against the wishes, sump, power, heat, money, sound, and the usual cautions. */
export function systemFindings({ system, solved, state }: Subject): Finding[] {
  const { found, add } = collect();
  const { design } = system;
  const { turnover, sump, power, heat, cost, sound, overflow } = state;
  if (!solved.converged) {
    const loop = system.loops[solved.records.findIndex((record) => record.status !== "converged")];
    // Every loop may have settled while levels and flows still push one another about.
    if (!loop)
      add("solve/not-converged", "danger", "/overflow", "settled", { data: { name: "display, box and sump" } });
    else
      add("solve/not-converged", "danger", loop.loop.path, "settled", {
        data: { name: `loop ${design.loops[loop.index]?.name ?? ""}` },
      });
  }
  const wish = turnover.returnFlowWish;
  const at = `/loops/${Math.max(
    0,
    system.loops.findIndex((loop) => loop.purpose === "return"),
  )}`;
  if (wish) {
    if (overflow.flow < wish.low * 0.999)
      add("flow/below-wish", "warning", at, "wish", { value: overflow.flow, limit: wish.low, dimension: "flow" });
    else if (overflow.flow > wish.high * 1.001)
      add("flow/above-wish", "warning", at, "wish", { value: overflow.flow, limit: wish.high, dimension: "flow" });
  }
  const total = turnover.total;
  if (total.wish) {
    if (total.value < total.wish[0])
      add("flow/total-turnover-low", "warning", "/wishes/totalTurnover", "wish", {
        value: total.value,
        limit: total.wish[0],
        dimension: "turnover",
      });
    else if (total.value > total.wish[1])
      add("flow/total-turnover-high", "notice", "/wishes/totalTurnover", "wish", {
        value: total.value,
        limit: total.wish[1],
        dimension: "turnover",
      });
  }
  const over = sump.chambers.filter((chamber) => chamber.level > sump.rim);
  for (const chamber of over)
    add("sump/over-rim", "danger", chamber.path, "geometry", {
      value: chamber.depth,
      limit: sump.rim - system.geometry.sumpFloor,
      dimension: "length",
      data: { name: design.sump.chambers.find(({ id }) => id === chamber.id)?.name ?? chamber.id },
    });
  const { displayFloor } = system.geometry;
  if (sump.rim > displayFloor + rounding && displayFloor > onTheFloor)
    add("sump/does-not-fit", "warning", "/sump/height", "geometry", {
      value: sump.rim,
      limit: displayFloor,
      dimension: "length",
    });
  if (over.length > 0) {
    // What runs over as it is has no room for what falls back, and that is said already.
  } else if (sump.margin < 0)
    add("sump/too-small", "danger", "/sump", "geometry", {
      value: sump.drainDown.total,
      limit: sump.room,
      dimension: "volume",
    });
  else if (sump.margin < limits.sumpReserve.value * sump.drainDown.total)
    add("sump/little-room", "warning", "/sump", "sumpReserve", {
      value: sump.margin,
      limit: limits.sumpReserve.value * sump.drainDown.total,
      dimension: "volume",
    });
  const last = sump.chambers.at(-1);
  if (last && last.depth < limits.returnDepth.value)
    add("sump/return-chamber-low", "warning", last.path, "returnDepth", {
      value: last.depth,
      limit: limits.returnDepth.value,
      dimension: "length",
    });
  sump.chambers.forEach((chamber, i) => {
    const baffle = system.geometry.chambers[i]?.baffle;
    const next = sump.chambers[i + 1];
    if (baffle !== undefined && next && next.depth > baffle)
      add("sump/baffle-drowned", "notice", chamber.path, "geometry", {
        value: next.depth,
        limit: baffle,
        dimension: "length",
      });
  });
  for (const circuit of power.circuits)
    if (circuit.current > circuit.limit)
      add("power/circuit-overload", "danger", circuit.path, "circuit", {
        value: circuit.current,
        limit: circuit.limit,
        dimension: "current",
        data: { name: circuit.name },
      });
  if (heat.chillerCapacity > 0 && heat.intoWater > heat.chillerCapacity)
    add("heat/beyond-chiller", "warning", "/loops", "maker", {
      value: heat.intoWater,
      limit: heat.chillerCapacity,
      dimension: "power",
    });
  if (design.wishes.budget) {
    if (design.wishes.budget.unit === cost.currency) {
      const budget = toSI(design.wishes.budget, "money");
      if (cost.purchase > budget)
        add("cost/over-budget", "warning", "/wishes/budget", "wish", {
          value: cost.purchase,
          limit: budget,
          dimension: "money",
        });
    } else
      add("cost/mixed-currencies", "notice", "/wishes/budget", "wish", {
        data: { one: design.wishes.budget.unit, other: cost.currency },
      });
  }
  if (power.tariffCurrency !== cost.currency)
    add("cost/mixed-currencies", "notice", "/power/tariff", "wish", {
      data: { one: power.tariffCurrency, other: cost.currency },
    });
  if (sound.wish !== undefined && sound.level > sound.wish)
    add("sound/over-wish", "warning", "/wishes/sound", "wish", {
      value: sound.level,
      limit: sound.wish,
      dimension: "soundLevel",
    });
  add("caution/leakage-protection", "notice", "/power", "caution");
  add("caution/plug-test", "notice", "/sump", "caution");
  if (state.parts.some((part) => part.label.includes("check")))
    add("caution/check-valve-alone", "notice", "/sump", "caution");
  return found;
}
