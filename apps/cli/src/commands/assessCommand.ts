import { type Assessment, assess, safetySweep, withSweep } from "@tidewright/advice";
import { type ExitCode, exitCodes } from "../exitCodes.ts";
import { loadAllDesigns } from "../input/loadAllDesigns.ts";
import { loadCatalogue } from "../input/loadCatalogue.ts";
import { type AnswerOptions, deliver } from "../output/deliver.ts";
import { withProgress } from "../output/progress.ts";
import { assessmentText } from "../views/assessmentText.ts";

/** Options of `assess`. */
export interface AssessOptions extends AnswerOptions {
  readonly catalogue?: string;
  /** False leaves out what the scenarios over time find. */
  readonly sweep: boolean;
}

/** Works out every design named and answers what its water does; one file gives one answer, several give a list. */
export async function assessCommand(files: readonly string[], options: AssessOptions): Promise<ExitCode> {
  const catalogue = await loadCatalogue(options.catalogue);
  const designs = await loadAllDesigns(files, catalogue);
  const answers: Assessment[] = [];
  for (const { file, design } of designs)
    answers.push(
      await withProgress(`Assessing ${file}`, () => {
        const running = assess(design, catalogue);
        return options.sweep ? withSweep(running, safetySweep(design, catalogue)) : running;
      }),
    );
  await deliver(
    options,
    () => (answers.length === 1 ? answers[0] : answers),
    (look) => answers.map((answer) => assessmentText(answer, look)).join(`\n\n${"=".repeat(look.width)}\n\n`),
  );
  const danger = answers.some((answer) => answer.findings.some((finding) => finding.severity === "danger"));
  return danger ? exitCodes.danger : exitCodes.done;
}
