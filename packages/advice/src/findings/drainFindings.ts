import type { Finding } from "../finding.ts";
import { collect } from "./collect.ts";
import { limits } from "./limits.ts";
import type { Subject } from "./subject.ts";

/** Overflow, box and drains. */
export function drainFindings({ system, solved, state }: Subject): Finding[] {
  const { found, add } = collect();
  const { overflow, drains } = state;
  const flow = { dimension: "flow" } as const;
  const box = solved.drains.box;

  if (box.overflows) {
    add("overflow/box-over-rim", "danger", "/overflow/box", "geometry", { value: box.spilled, limit: 0, ...flow });
    const all = drains.reduce((sum, drain) => sum + drain.capacityAtRim, 0);
    add("drain/beyond-siphon", "danger", drains[0]?.path ?? "/drains", "siphon", {
      value: overflow.flow,
      limit: all,
      ...flow,
      data: { name: "all drains together" },
    });
  } else if (overflow.boxFreeboard < limits.freeboard.value)
    add("overflow/little-freeboard", "warning", "/overflow/box", "freeboard", {
      value: overflow.boxFreeboard,
      limit: limits.freeboard.value,
      dimension: "length",
    });
  if (overflow.displayFreeboard < 0)
    add("overflow/display-over-rim", "danger", "/display", "geometry", {
      value: -overflow.displayFreeboard,
      limit: 0,
      dimension: "length",
    });
  else if (overflow.displayFreeboard < limits.freeboard.value)
    add("overflow/little-freeboard", "warning", "/display", "freeboard", {
      value: overflow.displayFreeboard,
      limit: limits.freeboard.value,
      dimension: "length",
    });
  if (overflow.fall < 0)
    add("overflow/weir-drowned", "warning", "/overflow/weir", "geometry", {
      value: -overflow.fall,
      limit: 0,
      dimension: "length",
    });

  const { siphon } = overflow;
  if (siphon) {
    const data = { name: String(siphon.tubes), count: siphon.tubes };
    // One siphon stands between the return pump and the floor, however many tubes it has: air finds its way into all of them.
    add("overflow/siphon-alone", siphon.overflows ? "danger" : "warning", "/overflow/siphon", "hangOn", {
      value: siphon.timeToTrouble,
      dimension: "time",
      data: { ...data, seconds: siphon.timeToTrouble, verdict: siphon.overflows ? "wet" : "dry" },
    });
    if (siphon.standingCover < 0)
      add("overflow/siphon-runs-dry", "danger", "/overflow/siphon", "geometry", {
        value: -siphon.standingCover,
        limit: 0,
        dimension: "length",
        data,
      });
    if (overflow.flow > 0 && siphon.froude < limits.clearingFroude.value)
      add("overflow/siphon-gathers-air", "notice", "/overflow/siphon", "clearingFroude", {
        value: siphon.froude,
        limit: limits.clearingFroude.value,
        data,
      });
    if (siphon.vacuumMargin < limits.npshMargin.value)
      add("overflow/siphon-vacuum", "danger", "/overflow/siphon", "npshMargin", {
        value: siphon.vacuumMargin,
        limit: limits.npshMargin.value,
        dimension: "length",
        data,
      });
  }

  drains.forEach((drain, i) => {
    const data = { name: drain.name };
    const working = drain.flow > 0;
    if (drain.kind === "throttledSiphon") {
      if (solved.drains.valves[i]?.unreachable)
        add("drain/siphon-share-unreachable", "warning", drain.path, "siphon", {
          value: (system.design.drains[i]?.share ?? 0) * overflow.flow,
          limit: drain.capacity.siphon,
          ...flow,
          data,
        });
      if (working && drain.froude < limits.clearingFroude.value)
        add("drain/siphon-not-clearing-air", "notice", drain.path, "clearingFroude", {
          value: drain.froude,
          limit: 1,
          data,
        });
    } else if (working && drain.role !== "emergency") {
      if (drain.flow > drain.capacity.siphon * 0.999 || drain.regime === "siphon" || drain.regime === "beyondSiphon")
        add("drain/beyond-siphon", "danger", drain.path, "siphon", {
          value: drain.flow,
          limit: drain.capacity.siphon,
          ...flow,
          data,
        });
      else if (drain.flow > drain.capacity.practice)
        add("drain/beyond-practice", "warning", drain.path, "practice", {
          value: drain.flow,
          limit: drain.capacity.practice,
          ...flow,
          data,
        });
      else if (drain.flow > drain.capacity.quiet)
        add("drain/beyond-quiet", drain.kind === "openChannel" ? "notice" : "warning", drain.path, "quietFroude", {
          value: drain.flow,
          limit: drain.capacity.quiet,
          ...flow,
          data,
        });
    }
    if (drain.role === "emergency") {
      if (drain.capacityAtRim < overflow.flow)
        add("drain/emergency-too-small", "danger", drain.path, "siphon", {
          value: drain.capacityAtRim,
          limit: overflow.flow,
          ...flow,
          data,
        });
      if (working && drain.flow > 1e-3 * overflow.flow)
        add("drain/emergency-wet", "warning", drain.path, "geometry", { value: drain.flow, limit: 0, ...flow, data });
    }
  });
  if (!drains.some((drain) => drain.role === "emergency")) {
    // Any single drain blocked must leave enough for all the flow.
    const spare = Math.max(
      0,
      drains.reduce((sum, drain) => sum + drain.capacityAtRim, 0) -
        Math.max(...drains.map((drain) => drain.capacityAtRim)),
    );
    add(
      "drain/no-emergency",
      spare >= overflow.flow && drains.length > 1 ? "warning" : "danger",
      "/drains",
      "caution",
      { value: spare, limit: overflow.flow, ...flow },
    );
  }
  return found;
}
