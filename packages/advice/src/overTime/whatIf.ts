import type { Catalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { prepareSystem } from "../system/prepare.ts";
import { solveSystem } from "../system/solveSystem.ts";
import { playScenario } from "./playScenario.ts";
import type { Scenario } from "./scenario.ts";
import { transientModelOf } from "./transientModelOf.ts";
import type { WhatIf } from "./whatIfResult.ts";

/** Returns what a course of events does to a design, second by second: levels, flows, what happens when, and whether the floor
 *  stays dry.
 *  design Design accepted by `checkDesign` and `checkReferences`   catalogue Catalogue   scenario Scenario, as from `scenariosOf`
 *  film false leaves out what only a drawing needs   -> WhatIf, SI
 *  Findings: none; `verdict` and `status` tell. Throws: never for an accepted document.
 *  Valid: as the engine's `simulate`: slow levels, no water hammer; from the running state that `assess` finds.
 *  Source: engine. */
export function whatIf(design: Design, catalogue: Catalogue, scenario: Scenario, film = true): WhatIf {
  const system = prepareSystem(design, catalogue);
  const solved = solveSystem(system);
  return playScenario(system, transientModelOf(system, solved, scenario.evaporation), scenario, film);
}
