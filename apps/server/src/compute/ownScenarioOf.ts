import { asScenario, type Scenario } from "@tidewright/advice";
import type { Catalogue } from "@tidewright/catalogue";
import { checkDesign, checkScenario, type Design, type Problem, readJson } from "@tidewright/design";
import { BadDocument } from "./computeRequest.ts";

/** Returns the design and the scenario of a body that holds both.
 *  Throws: `BadDocument` with the problems of each, told with the field they stand in. */
export function ownScenarioOf(
  text: string,
  catalogue: Catalogue,
): { readonly design: Design; readonly scenario: Scenario } {
  const read = readJson(text);
  if (!read.ok) throw new BadDocument(read.problems);
  const body = (read.value ?? {}) as { readonly design?: unknown; readonly scenario?: unknown };
  const missing = (["design", "scenario"] as const).flatMap((name) =>
    Object.hasOwn(body, name)
      ? []
      : [
          {
            path: `/${name}`,
            message: `the field "${name}" is missing`,
            fix: `add the ${name} document under "${name}"`,
          },
        ],
  );
  const under = (name: string, problems: readonly Problem[]) =>
    problems.map((problem) => ({ ...problem, path: `/${name}${problem.path}` }));
  if (missing.length > 0) throw new BadDocument(missing);
  const design = checkDesign(body.design, catalogue);
  // Without a sound design the scenario's parts cannot be looked for: its own form is told at the next try.
  if (!design.ok) throw new BadDocument(under("design", design.problems));
  const scenario = checkScenario(body.scenario, design.design);
  if (!scenario.ok) throw new BadDocument(under("scenario", scenario.problems));
  return { design: design.design, scenario: asScenario(scenario.scenario) };
}
