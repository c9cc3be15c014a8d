import { rank } from "@tidewright/advice";
import { type ExitCode, exitCodes } from "../exitCodes.ts";
import { badSource } from "../input/badInput.ts";
import { catalogueCurrency } from "../input/catalogueCurrency.ts";
import { loadCatalogue } from "../input/loadCatalogue.ts";
import { loadDesign } from "../input/loadDesign.ts";
import { tariffCurrency } from "../input/tariffCurrency.ts";
import { type AnswerOptions, deliver } from "../output/deliver.ts";
import { withProgress } from "../output/progress.ts";
import { rankingText } from "../views/rankingText.ts";

/** Options of `rank`: `loop` counts from 1 as people do. */
export interface RankCommandOptions extends AnswerOptions {
  readonly loop: number;
  readonly top: number;
  readonly pairs: boolean;
  readonly catalogue?: string;
}

/** Ranks the catalogue's pumps for one loop of a design. */
export async function rankCommand(file: string, options: RankCommandOptions): Promise<ExitCode> {
  const catalogue = await loadCatalogue(options.catalogue);
  const design = await loadDesign(file, catalogue);
  if (options.loop > design.loops.length)
    throw badSource("--loop", `the design has ${design.loops.length} loops`, "give 1 for the first", options.loop);
  const loop = options.loop - 1;
  const ranking = await withProgress("Trying pumps", () => rank(design, catalogue, { loop, pairs: options.pairs }));
  const facts = {
    loopName: design.loops[loop]?.name ?? `loop ${options.loop}`,
    top: options.top,
    currency: catalogueCurrency(catalogue),
    tariffCurrency: tariffCurrency(design),
  };
  await deliver(
    options,
    () => ({ ...ranking, candidates: ranking.candidates.slice(0, options.top) }),
    (look) => rankingText(ranking, facts, look),
  );
  return exitCodes.done;
}
