import { readdirSync, readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { type Design, readDesign } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { rank } from "./rank.ts";
import type { Reason, ReasonCode } from "./ranking.ts";
import { describeReason } from "./wording/describeReason.ts";

const root = new URL("../../../examples/", import.meta.url);

function read(file: string, change: (design: Design) => void = () => {}): Design {
  const draft = JSON.parse(readFileSync(new URL(file, root), "utf8")) as Design;
  change(draft);
  const reading = readDesign(JSON.stringify(draft), demoCatalogue);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.design;
}

const mm = (value: number) => ({ value, unit: "mm" });

/** A short wide lift of 300 mm, beside the sump, that asks for a flow. */
function easyLift(litresPerHour: number): Design {
  return read("first-tank-110.json", (design) => {
    design.display.standHeight = mm(100);
    design.sump.operatingLevel = mm(160);
    design.wishes.returnFlow = { value: litresPerHour, unit: "L/h" };
    delete design.wishes.budget;
    for (const drain of design.drains) for (const part of drain.run) if (part.kind === "pipe") part.series = "pn16-50";
    const loop = design.loops[0];
    if (!loop) throw new Error("no loop");
    loop.suction = [{ kind: "pipe", series: "pn16-50", length: mm(200) }];
    loop.pumps = [{ ref: "calder-fold-p30", placed: "external" }];
    loop.run = [
      { kind: "pipe", series: "pn16-50", length: mm(600), rise: mm(300) },
      { kind: "outlet", to: "display", depth: mm(20) },
    ];
  });
}

const designs: readonly Design[] = [
  ...["", "golden/"].flatMap((folder) =>
    readdirSync(new URL(folder || ".", root))
      .filter((name) => name.endsWith(".json"))
      .map((name) => read(folder + name)),
  ),
  // A trickle through pumps for much more.
  read("first-tank-110.json", (design) => {
    design.wishes.returnFlow = { value: 80, unit: "L/h" };
    delete design.wishes.budget;
  }),
  // More than the last point, at 2760 L/h and 0.73 m.
  easyLift(2850),
];

/** Every reason there is, checked by the compiler; no design brings about those marked false, since nothing gives them yet. */
const given: Readonly<Record<ReasonCode, boolean>> = {
  "meets-aim": true,
  "within-wish": true,
  "below-wish": true,
  "above-wish": true,
  "too-weak-to-lift": true,
  "wrong-place": true,
  "wrong-voltage": true,
  "over-budget": true,
  "over-sound": true,
  "near-shutoff": true,
  "near-runout": true,
  "beyond-curve": true,
  "needs-controller": true,
  "efficient-point": true,
  "spare-flow": true,
  cheapest: true,
  "lowest-cost-over-horizon": true,
  quietest: true,
  "least-power": true,
  "two-pumps-redundant": true,
  "drain-cannot-carry": true,
  "circuit-overload": false,
  "in-tank-pump": true,
};

describe("the reasons of a ranking", () => {
  const reasons = new Map<ReasonCode, Reason>();
  for (const design of designs) {
    const { candidates, rejections } = rank(design, demoCatalogue);
    const all = [...candidates.flatMap((entry) => entry.reasons), ...rejections.flatMap((entry) => entry.causes)];
    for (const reason of all) if (!reasons.has(reason.code)) reasons.set(reason.code, reason);
  }

  it.each(Object.entries(given).filter(([, isGiven]) => isGiven))("name %s where it is so", (code) => {
    const reason = reasons.get(code as ReasonCode);
    expect([...reasons.keys()]).toContain(code);
    if (!reason) return;
    const words = describeReason(reason, (si, dimension) => `${si.toPrecision(4)} [${dimension}]`);
    expect(words).not.toMatch(/[{}—]|NaN|undefined/);
    expect(words).not.toMatch(/-\d/);
  });

  it("are none that nothing gives", () => {
    expect([...reasons.keys()].filter((code) => !given[code])).toEqual([]);
  });
});
