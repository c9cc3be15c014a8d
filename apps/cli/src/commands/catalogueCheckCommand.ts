import { type ExitCode, exitCodes } from "../exitCodes.ts";
import { openCatalogue } from "../input/loadCatalogue.ts";
import { sourceName } from "../input/readInput.ts";
import { type AnswerOptions, deliver } from "../output/deliver.ts";
import { catalogueProblemsText } from "../views/catalogueProblemsText.ts";

/** Checks the demonstration catalogue or a pump table; errors are bad input, doubts are not. */
export async function catalogueCheckCommand(file: string | undefined, options: AnswerOptions): Promise<ExitCode> {
  const { catalogue, problems } = await openCatalogue(file);
  const source = file === undefined ? "demonstration catalogue" : sourceName(file);
  const errors = problems.filter((each) => each.severity === "error").length;
  const text = catalogueProblemsText(source, catalogue.pumps.length, problems);
  // A table with errors is bad input, so its problems go to the error stream, all of them.
  if (errors > 0) process.stderr.write(`${text}\n`);
  if (errors === 0 || options.json === true || options.out !== undefined)
    await deliver(
      options,
      () => ({ source, pumps: catalogue.pumps.length, errors, problems }),
      () => text,
    );
  return errors === 0 ? exitCodes.done : exitCodes.badInput;
}
