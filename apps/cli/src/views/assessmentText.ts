import type { Assessment } from "@tidewright/advice";
import type { Look } from "../output/deliver.ts";
import { wrap } from "../output/wrap.ts";
import { answerSentence } from "./assessment/answerSentence.ts";
import { drainsText } from "./assessment/drainsText.ts";
import { findingsText } from "./assessment/findingsText.ts";
import { levelsText } from "./assessment/levelsText.ts";
import { loopsText } from "./assessment/loopsText.ts";
import { powerAndCostText } from "./assessment/powerAndCostText.ts";
import { pumpsText } from "./assessment/pumpsText.ts";
import { paragraphs, section } from "./section.ts";

/** Returns an assessment as a person reads it: the answer first, then how the water goes, then what to mind. */
export function assessmentText(assessment: Assessment, look: Look): string {
  const { findings, solve } = assessment;
  const cautions = findings.filter((finding) => finding.code.startsWith("caution/"));
  const others = findings.filter((finding) => !finding.code.startsWith("caution/"));
  const { styles, width } = look;
  return paragraphs([
    styles.bold(assessment.name),
    wrap(answerSentence(assessment, look.format), width),
    solve.converged ? "" : styles.red("The numbers did not settle; take none of them as the answer."),
    section("Flows and heads", loopsText(assessment, look), look),
    section("Drains", drainsText(assessment, look), look),
    section("Levels", levelsText(assessment, look), look),
    section("Pumps", pumpsText(assessment, look), look),
    section("Power, sound and cost", powerAndCostText(assessment, look), look),
    section("Findings", others.length === 0 ? "  none" : findingsText(others, look), look),
    section("Cautions", findingsText(cautions, look), look),
  ]);
}
