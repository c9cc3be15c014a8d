import type { Catalogue } from "@tidewright/catalogue";
import type { Design, Part } from "@tidewright/design";
import { toSI } from "@tidewright/units";
import { assess } from "../assess.ts";
import { labelled } from "../levers/labelled.ts";
import { type Change, proposePlumbing } from "../levers/proposeChanges.ts";
import { withValue } from "../levers/withValue.ts";
import type { LeverKind, Told } from "../levers.ts";
import type { SafetySweep } from "./safety.ts";
import { whatIf } from "./whatIf.ts";
import { type Verdict, verdicts } from "./whatIfResult.ts";

/** One change on its own, with every scenario that was in trouble played again. */
export interface SafetyLever {
  readonly kind: LeverKind | "taller-sump";
  /** JSON Pointer of what changes. */
  readonly at: string;
  readonly label: string;
  /** What the label says, for other languages; absent where it is a pump's name. */
  readonly told?: Told;
  /** The changed document, ready to take over. */
  readonly design: Design;
  /** Parts to buy [catalogue currency], labour not counted. */
  readonly price: number;
  /** Each scenario in trouble: how it ended and how it ends now, and its worst margin then [m]. */
  readonly effects: readonly {
    readonly scenario: string;
    readonly before: Verdict;
    readonly after: Verdict;
    readonly margin?: number;
  }[];
  /** Scenarios that wet the floor, before and after. */
  readonly wetBefore: number;
  readonly wetAfter: number;
}

/** Changes of the running system that also bear on what happens over time. */
const bearing = new Set<LeverKind>([
  "add-emergency-drain",
  "drain-size-up",
  "lower-speed",
  "longer-weir",
  "set-siphon-valve",
  "raise-siphon-break",
]);

/** Returns the changes that make troubled scenarios end better, each by playing them again on the changed design, best first.
 *  design Design   catalogue Catalogue   sweep of that design   -> SafetyLever[]; none where nothing is in trouble
 *  Findings: none. Throws: never for an accepted document.
 *  Valid: one change at a time, as `levers`.
 *  Source: own search; every effect is a simulation, none a rule. */
export function safetyLevers(design: Design, catalogue: Catalogue, sweep: SafetySweep): SafetyLever[] {
  const troubled = sweep.rows.filter((row) => row.verdict !== "safe" && row.scenario.kind !== "topOffFails");
  if (troubled.length === 0) return [];
  const state = assess(design, catalogue, { curves: false });
  const changes = [
    ...directChanges(design, sweep),
    ...proposePlumbing(design, catalogue, state).filter((change) => bearing.has(change.kind)),
  ];
  const rank = (verdict: Verdict) => verdicts.indexOf(verdict);
  return changes
    .map((change): SafetyLever => {
      const effects = troubled.map((row) => {
        const played = whatIf(change.design, catalogue, row.scenario, false);
        const margins = played.vessels.flatMap((vessel) => vessel.margin ?? []);
        return {
          scenario: row.scenario.id,
          before: row.verdict,
          after: played.verdict,
          ...(margins.length > 0 ? { margin: Math.min(...margins) } : {}),
        };
      });
      return {
        ...change,
        effects,
        wetBefore: troubled.filter((row) => row.verdict === "wet").length,
        wetAfter: effects.filter((effect) => effect.after === "wet").length,
      };
    })
    .filter(({ effects }) => effects.some((effect) => rank(effect.after) > rank(effect.before)))
    .filter(({ effects }) => effects.every((effect) => rank(effect.after) >= rank(effect.before)))
    .sort((a, b) => gain(b) - gain(a) || a.price - b.price);
}

/** Steps of verdict won over all scenarios; a floor kept dry counts most. */
function gain(lever: SafetyLever): number {
  const steps = lever.effects.reduce(
    (sum, effect) => sum + verdicts.indexOf(effect.after) - verdicts.indexOf(effect.before),
    0,
  );
  return 10 * (lever.wetBefore - lever.wetAfter) + steps;
}

type DirectChange = Omit<Change, "kind"> & { readonly kind: SafetyLever["kind"] };

/** What the sweep's own answers ask for: level, siphon breaks, height of glass. Rounded to the safe side, to what a rule can show. */
function directChanges(design: Design, { answers }: SafetySweep): DirectChange[] {
  const changes: DirectChange[] = [];
  const millimetres = (metres: number) => `${Math.round(1000 * metres)}`;
  const level = toSI(design.sump.operatingLevel, "length");
  const safe = answers.highestSafeOperatingLevel;
  if (safe !== undefined && safe < level) {
    const to = Math.floor(safe * 1000) / 1000;
    changes.push({
      kind: "lower-operating-level",
      at: "/sump/operatingLevel",
      ...labelled("levers.operating-level-from", { from: millimetres(level), to: millimetres(to) }),
      design: withValue(design, "/sump/operatingLevel", { value: Math.round(1000 * to), unit: "mm" }),
      price: 0,
    });
  }
  const deepest = answers.deepestSiphonBreak;
  if (deepest !== undefined) {
    const to = Math.floor(deepest * 1000);
    const deep = answers.siphonBreaks.filter((entry) => entry.depth > deepest);
    if (deep.length > 0 && to >= 1) {
      const changed = deep.reduce((document, { path }) => {
        const outlet = partAt(document, path);
        return outlet?.kind === "outlet"
          ? withValue(document, path, { ...outlet, siphonBreak: { value: to, unit: "mm" } })
          : document;
      }, design);
      changes.push({
        kind: "raise-siphon-break",
        at: deep[0]?.path ?? "",
        ...labelled("levers.siphon-breaks", { depth: `${to}`, count: deep.length }),
        design: changed,
        price: 0,
      });
    }
  }
  const height = toSI(design.sump.height, "length");
  if (answers.minimumSumpHeight > height) {
    const to = Math.ceil(answers.minimumSumpHeight * 100) * 10;
    changes.push({
      kind: "taller-sump",
      at: "/sump/height",
      ...labelled("levers.taller-sump", { from: millimetres(height), to: `${to}` }),
      design: withValue(design, "/sump/height", { value: to, unit: "mm" }),
      price: 0,
    });
  }
  return changes;
}

function partAt(design: Design, path: string): Part | undefined {
  let at: unknown = design;
  for (const key of path.split("/").slice(1)) at = (at as Record<string, unknown> | undefined)?.[key];
  return at as Part | undefined;
}
