import { safetySweep, scenariosOf, type Verdict, whatIf } from "@tidewright/advice";
import type { Catalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { levelPlotSvg } from "@tidewright/report";
import { unitSystems } from "@tidewright/units";
import { type ExitCode, exitCodes } from "../exitCodes.ts";
import { badSource } from "../input/badInput.ts";
import { chooseScenario } from "../input/chooseScenario.ts";
import { loadCatalogue } from "../input/loadCatalogue.ts";
import { loadDesign } from "../input/loadDesign.ts";
import { type AnswerOptions, deliver, write } from "../output/deliver.ts";
import { withProgress } from "../output/progress.ts";
import { safetyText } from "../views/whatIf/safetyText.ts";
import { scenarioListText } from "../views/whatIf/scenarioListText.ts";
import { whatIfText } from "../views/whatIf/whatIfText.ts";

/** Options of `whatif`. */
export interface WhatIfOptions extends AnswerOptions {
  readonly catalogue?: string;
  /** Days that the top-off is left failing. */
  readonly days: number;
  readonly list?: boolean;
  /** False leaves the course of levels and flows out of the JSON answer. */
  readonly film: boolean;
  /** File for the drawing of the levels. */
  readonly plot?: string;
}

/** Plays one scenario on a design, or all that it can meet, and answers whether the floor stays dry. */
export async function whatIfCommand(
  file: string,
  scenario: string | undefined,
  options: WhatIfOptions,
): Promise<ExitCode> {
  refuseIdleOptions(file, scenario, options);
  const catalogue = await loadCatalogue(options.catalogue);
  const design = await loadDesign(file, catalogue);
  if (options.list === true) {
    const known = scenariosOf(design, options.days);
    await deliver(
      options,
      () => known,
      (look) => scenarioListText(known, design, look),
    );
    return exitCodes.done;
  }
  return scenario === undefined
    ? await sweep(design, catalogue, options)
    : await play(design, catalogue, scenario, options);
}

async function sweep(design: Design, catalogue: Catalogue, options: WhatIfOptions): Promise<ExitCode> {
  const result = await withProgress("Playing scenarios", () => safetySweep(design, catalogue, { days: options.days }));
  await deliver(
    options,
    () => result,
    (look) => safetyText(result, design, look),
  );
  return result.findings.some((finding) => finding.severity === "danger") ? exitCodes.danger : exitCodes.done;
}

async function play(design: Design, catalogue: Catalogue, word: string, options: WhatIfOptions): Promise<ExitCode> {
  const scenario = await chooseScenario(word, design, options.days);
  const result = await withProgress("Playing the scenario", () => whatIf(design, catalogue, scenario));
  if (options.plot !== undefined) {
    const size = { width: 900, height: 600, units: unitSystems[options.units] };
    await write(`${levelPlotSvg(result, { ...size, names: design, title: design.name })}\n`, options.plot, "--plot");
  }
  const { film: _, ...unfilmed } = result;
  await deliver(
    options,
    () => (options.film ? result : unfilmed),
    (look) => whatIfText(result, design, look),
  );
  return isDanger(result.verdict) ? exitCodes.danger : exitCodes.done;
}

/** A run that did not reach its end promises nothing, so it is no better than a wet floor. */
function isDanger(verdict: Verdict): boolean {
  return verdict === "wet" || verdict === "dry" || verdict === "unsolved";
}

function refuseIdleOptions(file: string, scenario: string | undefined, { plot, list }: WhatIfOptions): void {
  if (plot !== undefined && (scenario === undefined || list === true))
    throw badSource("--plot", "a drawing shows one scenario", "name the scenario, as --list shows them", plot);
  if (plot !== undefined && !/\.svg$/i.test(plot))
    throw badSource("--plot", "the drawing is SVG", "give the file a name that ends in .svg", plot);
  if (file === "-" && scenario === "-")
    throw badSource(
      "SCENARIO",
      "the standard input can hold the design or the scenario, not both",
      "name a file for one",
    );
}
