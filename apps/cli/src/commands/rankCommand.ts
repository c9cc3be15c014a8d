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

/** Options of `rank`: `loop` counts from 1 as people do, and is the first return loop where it is not given. */
export interface RankCommandOptions extends AnswerOptions {
  readonly loop?: number;
  readonly top: number;
  readonly pairs: boolean;
  readonly catalogue?: string;
}

/** Ranks the catalogue's pumps for one loop of a design. */
export async function rankCommand(file: string, options: RankCommandOptions): Promise<ExitCode> {
  const catalogue = await loadCatalogue(options.catalogue);
  const design = await loadDesign(file, catalogue);
  const count = design.loops.length;
  if (options.loop !== undefined && options.loop > count)
    throw badSource(
      "--loop",
      "the design has no such loop",
      `give ${count === 1 ? "1" : `1 to ${count}`}`,
      options.loop,
    );
  const wished = { pairs: options.pairs, ...(options.loop === undefined ? {} : { loop: options.loop - 1 }) };
  const ranking = await withProgress("Trying pumps", () => rank(design, catalogue, wished));
  const facts = {
    loopName: design.loops[ranking.loop]?.name ?? `loop ${ranking.loop + 1}`,
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
