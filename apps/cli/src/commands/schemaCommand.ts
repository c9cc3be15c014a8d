import { designJsonSchema, networkJsonSchema, scenarioJsonSchema } from "@tidewright/design";
import { type ExitCode, exitCodes } from "../exitCodes.ts";
import { jsonText, write } from "../output/deliver.ts";

const schemas = { design: designJsonSchema, network: networkJsonSchema, scenario: scenarioJsonSchema } as const;

/** Writes the JSON Schema of a kind of document. */
export async function schemaCommand(kind: keyof typeof schemas, options: { readonly out?: string }): Promise<ExitCode> {
  await write(`${jsonText(schemas[kind]())}\n`, options.out);
  return exitCodes.done;
}
