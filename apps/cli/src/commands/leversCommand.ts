import { levers } from "@tidewright/advice";
import { type ExitCode, exitCodes } from "../exitCodes.ts";
import { catalogueCurrency } from "../input/catalogueCurrency.ts";
import { loadCatalogue } from "../input/loadCatalogue.ts";
import { loadDesign } from "../input/loadDesign.ts";
import { tariffCurrency } from "../input/tariffCurrency.ts";
import { type AnswerOptions, deliver } from "../output/deliver.ts";
import { withProgress } from "../output/progress.ts";
import { leversText } from "../views/leversText.ts";

/** Options of `levers`. */
export interface LeversOptions extends AnswerOptions {
  readonly catalogue?: string;
}

/** Tries single changes of a design and answers which would help most. */
export async function leversCommand(file: string, options: LeversOptions): Promise<ExitCode> {
  const catalogue = await loadCatalogue(options.catalogue);
  const design = await loadDesign(file, catalogue);
  const found = await withProgress("Trying changes", () => levers(design, catalogue));
  await deliver(
    options,
    () => found,
    (look) => leversText(found, { prices: catalogueCurrency(catalogue), running: tariffCurrency(design) }, look),
  );
  return exitCodes.done;
}
