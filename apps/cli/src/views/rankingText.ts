import { type Candidate, describeReason, type Ranking } from "@tidewright/advice";
import type { Look } from "../output/deliver.ts";
import { money, percent } from "../output/format.ts";
import { tableText } from "../output/table.ts";
import { wrap } from "../output/wrap.ts";
import { paragraphs, section } from "./section.ts";

const right = { align: "right" } as const;

/** What a ranking is told with besides its numbers. */
export interface RankingFacts {
  readonly loopName: string;
  /** How many candidates to show. */
  readonly top: number;
  /** Currency of prices, and of running costs. */
  readonly currency: string;
  readonly tariffCurrency: string;
}

/** Returns a ranking as text: the best in a sentence, the table, then reasons for each and why others are out. */
export function rankingText(ranking: Ranking, facts: RankingFacts, look: Look): string {
  const { format, width } = look;
  const { candidates, rejections, aim, wish } = ranking;
  const shown = candidates.slice(0, facts.top);
  const best = shown[0];
  // The wish is water that arrives; the aim is what the pump must move for it, side branches included.
  const wished = `wish ${format(wish.low, "flow")} to ${format(wish.high, "flow")}, for which the pump moves ${format(aim, "flow")}`;
  const answer =
    best === undefined
      ? `None of ${ranking.considered} choices fits ${facts.loopName} (${wished}).`
      : `${best.label} at ${percent(best.speed)} speed suits ${facts.loopName} best: ${format(best.flowToDisplay, "flow")} arrive (${wished}), ${format(best.watts, "power")}, ${money(best.price, facts.currency)}.`;
  return paragraphs([
    wrap(answer, width),
    section(
      `Best ${shown.length} of ${candidates.length} that fit`,
      shown.length === 0 ? "" : rows(shown, facts, look),
      look,
    ),
    section("Why", shown.map((candidate, i) => reasonsText(candidate, i + 1, look)).join("\n"), look),
    section("Out", rejectionsText(rejections, look), look),
  ]);
}

function rows(
  shown: readonly Candidate[],
  { currency, tariffCurrency }: RankingFacts,
  { format, width }: Look,
): string {
  return tableText(
    [
      { head: "", ...right },
      { head: "pump", flexible: true },
      { head: "speed", ...right },
      { head: "flow", ...right },
      { head: "head", ...right },
      { head: "power", ...right },
      { head: "sound", ...right },
      { head: "price", ...right },
      { head: "a year", ...right },
    ],
    shown.map((each, i) => [
      String(i + 1),
      `${each.label}${each.paretoFront ? " *" : ""}`,
      percent(each.speed),
      format(each.flow, "flow"),
      format(each.head, "head"),
      format(each.watts, "power"),
      format(each.soundLevel, "soundLevel"),
      money(each.price, currency),
      money(each.annualCost, tariffCurrency),
    ]),
    width,
  ).concat("\n\n  * no other is better in everything at once");
}

function reasonsText(candidate: Candidate, place: number, { format, width }: Look): string {
  const reasons = candidate.reasons.map((reason) => describeReason(reason, format));
  return `  ${wrap(`${place}. ${candidate.label}: ${reasons.join("; ")}`, width, "     ")}`;
}

const mostOut = 12;

function rejectionsText(rejections: Ranking["rejections"], { format, width }: Look): string {
  const lines = rejections.slice(0, mostOut).map(({ label, causes }) => {
    const told = causes.map((cause) => describeReason(cause, format)).join("; ");
    return `  ${wrap(`${label}: ${told}`, width, "    ")}`;
  });
  const more = rejections.length - lines.length;
  if (more > 0) lines.push(`  and ${more} more; --json has them all`);
  return lines.join("\n");
}
