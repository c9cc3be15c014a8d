import {
  describeScenario,
  describeVerdict,
  type SafetyRow,
  type SafetySweep,
  safetyCautions,
  timeWords,
} from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import type { Look } from "../../output/deliver.ts";
import { counted } from "../../output/format.ts";
import { tableText } from "../../output/table.ts";
import { wrap } from "../../output/wrap.ts";
import { findingsText } from "../assessment/findingsText.ts";
import { paragraphs, section } from "../section.ts";
import { safetyAnswersText } from "./safetyAnswersText.ts";
import { verdictLegend, verdictWords } from "./verdictWords.ts";

/** Returns the safety sweep as a person reads it: the answer, the table, what follows from it, findings and cautions. */
export function safetyText({ rows, answers, findings }: SafetySweep, design: Design, look: Look): string {
  const { styles, width } = look;
  const cautions = safetyCautions(design).map((each) => `  ${wrap(`- ${each}`, width, "    ")}`);
  return paragraphs([
    styles.bold(design.name),
    wrap(answerSentence(rows, design, look), width),
    section("What can happen, worst first", rowsText(rows, look), look),
    section("What follows from it", safetyAnswersText(answers, design, look), look),
    section(
      "Findings",
      findingsText(
        findings.filter((finding) => !finding.code.startsWith("caution/")),
        look,
      ),
      look,
    ),
    section("Cautions", cautions.join("\n"), look),
  ]);
}

function answerSentence(rows: readonly SafetyRow[], design: Design, { format }: Look): string {
  const count = (verdict: SafetyRow["verdict"]) => rows.filter((row) => row.verdict === verdict).length;
  const [wet, unsolved, dry] = [count("wet"), count("unsolved"), count("dry")];
  const worst = rows[0];
  const told = [
    wet === 0 ? "None wets the floor" : `${wet === 1 ? "One wets" : `${wet} wet`} the floor`,
    ...(dry === 0 ? [] : [`${dry === 1 ? "one lets" : `${dry} let`} a pump draw air`]),
    ...(unsolved === 0 ? [] : [`${unsolved === 1 ? "one was" : `${unsolved} were`} not solved to the end`]),
  ];
  const example =
    worst === undefined ? "" : ` Worst: ${describeScenario(worst.scenario)}. ${describeVerdict(worst, design, format)}`;
  return `${counted(rows.length, "scenario")} played. ${told.join(", ")}.${example}`;
}

function rowsText(rows: readonly SafetyRow[], { format, width }: Look): string {
  const right = { align: "right" } as const;
  const margin = (value: number | undefined) => (value === undefined ? "—" : format(value, "length"));
  return tableText(
    [
      { head: "scenario", flexible: true },
      { head: "verdict" },
      { head: "display", ...right },
      { head: "box", ...right },
      { head: "sump", ...right },
      { head: "after", ...right },
      { head: "spilt", ...right },
      { head: "to sump", ...right },
    ],
    rows.map((row) => [
      describeScenario(row.scenario),
      verdictWords[row.verdict],
      margin(row.margins.display),
      margin(row.margins.overflowBox),
      margin(row.margins.sump),
      row.timeToTrouble === undefined ? "—" : timeWords(row.timeToTrouble),
      row.spilled > 0 ? format(row.spilled, "volume") : "—",
      format(row.sumpGain, "volume"),
    ]),
    width,
  ).concat(`\n\n  ${wrap(`Display, box and sump: the least that is left to each rim. ${verdictLegend}`, width, "  ")}`);
}
