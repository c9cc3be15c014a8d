import { type Scenario, scenariosOf } from "@tidewright/advice";
import { checkScenario, type Design } from "@tidewright/design";

/** A scenario document as it was opened; its parts are found anew in every design that it is played on. */
export interface OwnDocument {
  /** Name of the file. */
  readonly file: string;
  readonly value: unknown;
}

/** Returns whether a value read from a file means to be a scenario of one's own and not a design.
 *  Example: isScenarioDocument({ tidewright: 1, scenario: {} })  ->  true */
export function isScenarioDocument(value: unknown): boolean {
  return typeof value === "object" && value !== null && "scenario" in value && !("display" in value);
}

/** Returns every scenario that can be played on a design: those that the tool knows, then one's own as far as the design has their
 *  parts.
 *  design checked design   own documents opened   -> scenarios; own ones have ids by their place among the documents
 *  Findings: none; a document that does not fit this design is left out. Throws: never.
 *  Valid: any documents. */
export function scenariosFor(design: Design, own: readonly OwnDocument[]): Scenario[] {
  return [
    ...scenariosOf(design),
    ...own.flatMap(({ value }, place): Scenario[] => {
      const reading = checkScenario(value, design);
      if (!reading.ok) return [];
      const { name, duration, evaporation, events } = reading.scenario;
      return [{ id: ownId(place), kind: "own", subjects: [name], duration, evaporation, events }];
    }),
  ];
}

/** Returns the id of the scenario of a document by its place. Example: ownId(0)  ->  "own:0" */
export const ownId = (place: number): string => `own:${place}`;
