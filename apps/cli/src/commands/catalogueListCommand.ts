import { type ExitCode, exitCodes } from "../exitCodes.ts";
import { loadCatalogue } from "../input/loadCatalogue.ts";
import { type AnswerOptions, deliver } from "../output/deliver.ts";
import { catalogueText } from "../views/catalogueText.ts";

/** Lists what a design may refer to. */
export async function catalogueListCommand(file: string | undefined, options: AnswerOptions): Promise<ExitCode> {
  const catalogue = await loadCatalogue(file);
  await deliver(
    options,
    () => catalogue,
    (look) => catalogueText(catalogue, look),
  );
  return exitCodes.done;
}
