import type { Design } from "@tidewright/design";
import { fromPointer } from "@tidewright/design";
import type { Dimension } from "@tidewright/units";
import type { MessageKey } from "@tidewright/words";
import { runPartAt } from "./runPart.ts";

/** The one quantity of a part that is changed most, which can be typed right at its label. */
export interface MainQuantity {
  /** JSON Pointer of the value. */
  readonly path: string;
  readonly kind: "quantity" | "share" | "count";
  readonly dimension: Dimension;
  readonly name: MessageKey;
  /** It may be left out. */
  readonly optional?: boolean;
}

/** Returns the main quantity of the part at a path, or undefined where it has none: a device is chosen, not measured.
 *  The valve of a siphon that is set for a share of the flow has that share: its opening is found and not set.
 *  design checked design   path JSON Pointer of a part   -> MainQuantity
 *  Source: own construction. */
export function mainQuantity(design: Design, path: string): MainQuantity | undefined {
  const there = runPartAt(design, path);
  if (there !== undefined) {
    switch (there.part.kind) {
      case "pipe":
        return length(`${path}/length`, "drawing.quantity.length");
      case "fitting":
        return {
          path: `${path}/count`,
          kind: "count",
          dimension: "ratio",
          name: "drawing.quantity.count",
          optional: true,
        };
      case "valve": {
        const shared = sharePathOf(design, path);
        return shared === undefined
          ? share(`${path}/opening`, "drawing.quantity.opening")
          : share(shared, "drawing.quantity.flowShare");
      }
      case "outlet":
        return { ...length(`${path}/depth`, "drawing.quantity.depth"), optional: true };
      default:
        return undefined;
    }
  }
  const [section, second, third] = fromPointer(path) ?? [];
  if (section === "loops" && third === "pumps")
    return { ...share(`${path}/speed`, "drawing.quantity.speed"), optional: true };
  if (section === "tankPumps" && second !== undefined)
    return { ...share(`${path}/speed`, "drawing.quantity.speed"), optional: true };
  if (section === "drains" && second !== undefined)
    return length(`${path}/inlet/elevation`, "drawing.quantity.inletHeight");
  if (section === "sump" && second === "chambers" && third !== undefined) {
    const last = Number(third) === design.sump.chambers.length - 1;
    if (last) return length("/sump/operatingLevel", "drawing.quantity.operatingLevel");
    return { ...length(`${path}/baffle`, "drawing.quantity.baffle"), optional: true };
  }
  switch (path) {
    case "/sump":
      return length("/sump/height", "drawing.quantity.sumpHeight");
    case "/display":
      return length("/display/length", "drawing.quantity.displayLength");
    case "/display/standHeight":
      return length("/display/standHeight", "drawing.quantity.standHeight");
    case "/overflow/weir":
      return length("/overflow/weir/crest", "drawing.quantity.crest");
    case "/overflow/box":
      return length("/overflow/box/rim", "drawing.quantity.boxRim");
    default:
      return undefined;
  }
}

/** Returns where the share is kept that a valve is set for, if it is: the first valve of a drain with one.
 *  design   path JSON Pointer of a valve   -> JSON Pointer of the share
 *  Findings: none. Throws: never.
 *  Valid: any path; undefined where nothing is shared.
 *  Source: own construction.
 *  Example: sharePathOf({ drains: [{ share: 0.8, run: [{ kind: "valve" }] }] }, "/drains/0/run/0")  ->  "/drains/0/share" */
export function sharePathOf(design: Pick<Design, "drains">, path: string): string | undefined {
  const [, i, part] = /^\/drains\/(\d+)\/run\/(\d+)$/.exec(path) ?? [];
  const drain = design.drains[Number(i ?? -1)];
  if (drain?.share === undefined) return undefined;
  return drain.run.findIndex(({ kind }) => kind === "valve") === Number(part) ? `/drains/${i}/share` : undefined;
}

const length = (path: string, name: MessageKey): MainQuantity => ({
  path,
  kind: "quantity",
  dimension: "length",
  name,
});
const share = (path: string, name: MessageKey): MainQuantity => ({ path, kind: "share", dimension: "ratio", name });
