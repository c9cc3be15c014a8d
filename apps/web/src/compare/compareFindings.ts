import type { Assessment, Finding } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { partTitle } from "../document/partTitle.ts";

/** Findings of two sides: what the right no longer has, what only it has, and what both have (the right one's). */
export interface ComparedFindings {
  readonly gone: readonly Finding[];
  readonly fresh: readonly Finding[];
  readonly same: readonly Finding[];
}

/** Returns the findings of two designs sorted; one is the same where its code and the name of its part are.
 *  left   right each an assessment and its document   -> ComparedFindings, each list worst first */
export function compareFindings(
  [left, leftDesign]: readonly [Assessment, Design],
  [right, rightDesign]: readonly [Assessment, Design],
): ComparedFindings {
  // Two like parts may each have a finding of one kind: they are counted off against each other.
  const open = new Map<string, Finding[]>();
  for (const finding of left.findings) {
    const key = keyOf(finding, leftDesign);
    open.set(key, [...(open.get(key) ?? []), finding]);
  }
  const fresh: Finding[] = [];
  const same: Finding[] = [];
  for (const finding of right.findings) {
    const met = open.get(keyOf(finding, rightDesign))?.shift();
    (met === undefined ? fresh : same).push(finding);
  }
  const unmet = new Set([...open.values()].flat());
  return { gone: left.findings.filter((finding) => unmet.has(finding)), fresh, same };
}

const keyOf = ({ code, at, data }: Finding, design: Design) =>
  `${code} ${partTitle(design, at)} ${String(data?.["name"] ?? "")}`;
