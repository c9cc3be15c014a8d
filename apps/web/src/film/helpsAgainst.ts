import {
  levers,
  type SafetySweep,
  type Scenario,
  scenariosOf,
  verdictFacts,
  verdicts,
  whatIf,
} from "@tidewright/advice";
import type { Catalogue } from "@tidewright/catalogue";
import { applyEdit, checkDesign, type Design } from "@tidewright/design";
import { toSI } from "@tidewright/units";
import type { Help } from "./filmProtocol.ts";

interface Candidate {
  readonly label: string;
  readonly at: string;
  readonly design: Design;
  readonly price: number;
}

/** Changes among the levers that have to do with where water stays when something fails. */
const plausible: ReadonlySet<string> = new Set([
  "lower-operating-level",
  "raise-siphon-break",
  "add-emergency-drain",
  "drain-size-up",
  "longer-weir",
  "lower-speed",
]);
/** The most that are simulated, so that an answer comes within a moment. */
const mostTried = 14;

/** Returns changes that help against a scenario, each simulated again in the whole changed design, best first; those that leave the
 *  verdict and every margin as they were are left out.
 *  design Design   catalogue Catalogue   scenario what goes wrong   sweep SafetySweep of this very design   -> Help[], SI
 *  Findings: none. Throws: never for an accepted document.
 *  Valid: one change at a time.
 *  Source: own search; every effect is a simulation, none a rule. */
export function helpsAgainst(design: Design, catalogue: Catalogue, scenario: Scenario, sweep: SafetySweep): Help[] {
  const before = verdictFacts(whatIf(design, catalogue, scenario, false));
  const candidates = [
    ...fromAnswers(design, sweep),
    ...levers(design, catalogue).filter(({ kind }) => plausible.has(kind)),
  ];
  const told = new Set<string>();
  return candidates
    .filter(({ label, at }) => !told.has(`${label} ${at}`) && told.add(`${label} ${at}`))
    .slice(0, mostTried)
    .flatMap(({ label, at, design: changed, price }): Help[] => {
      if (!checkDesign(changed, catalogue).ok) return [];
      // The changed design may meet the scenario by another index, or no longer meet it at all.
      const same = scenariosOf(changed).find(({ id }) => id === scenario.id) ?? scenario;
      const after = verdictFacts(whatIf(changed, catalogue, same, false));
      const better =
        verdicts.indexOf(after.verdict) - verdicts.indexOf(before.verdict) ||
        Math.sign((after.worst?.margin ?? 0) - (before.worst?.margin ?? 0) - 5e-4);
      if (better <= 0) return [];
      return [
        {
          label,
          at,
          design: changed,
          price: Math.max(0, price),
          before: before.verdict,
          after: after.verdict,
          spilledBefore: before.spilled,
          spilledAfter: after.spilled,
          ...(before.worst ? { marginBefore: before.worst.margin } : {}),
          ...(after.worst ? { marginAfter: after.worst.margin } : {}),
          ...(after.timeToTrouble === undefined ? {} : { troubleAfter: after.timeToTrouble }),
        },
      ];
    })
    .sort(
      (a, b) =>
        verdicts.indexOf(b.after) - verdicts.indexOf(a.after) ||
        a.spilledAfter - b.spilledAfter ||
        a.price - b.price ||
        (b.marginAfter ?? 0) - (a.marginAfter ?? 0),
    );
}

/** The changes that the sweep's own answers ask for: level at the safe line, siphon breaks high enough, sump high enough. */
function fromAnswers(design: Design, { answers }: SafetySweep): Candidate[] {
  const found: Candidate[] = [];
  const level = toSI(design.sump.operatingLevel, "length");
  const safe = answers.highestSafeOperatingLevel;
  if (safe !== undefined && safe < level) {
    const value = { value: Math.floor(safe * 1000), unit: "mm" };
    found.push({
      label: `operating level to ${value.value} mm`,
      at: "/sump/operatingLevel",
      design: set(design, "/sump/operatingLevel", value),
      price: 0,
    });
  }
  const deepest = answers.deepestSiphonBreak;
  if (deepest !== undefined && answers.siphonBreaks.some(({ depth }) => depth > deepest)) {
    const value = { value: Math.max(1, Math.floor(deepest * 1000)), unit: "mm" };
    let changed = design;
    for (const { path } of answers.siphonBreaks) changed = set(changed, `${path}/siphonBreak`, value);
    found.push({
      label: `siphon break ${value.value} mm below the surface`,
      at: answers.siphonBreaks[0]!.path,
      design: changed,
      price: 2 * answers.siphonBreaks.length,
    });
  }
  if (answers.minimumSumpHeight > toSI(design.sump.height, "length")) {
    const value = { value: Math.ceil(answers.minimumSumpHeight * 100) * 10, unit: "mm" };
    found.push({
      label: `sump glass ${value.value} mm high`,
      at: "/sump/height",
      design: set(design, "/sump/height", value),
      price: 0,
    });
  }
  return found;
}

const set = (design: Design, path: string, value: unknown): Design =>
  applyEdit(design, { op: "set", path, value }).design;
