import { designJsonSchema, networkJsonSchema } from "@tidewright/design";
import { type ExitCode, exitCodes } from "../exitCodes.ts";
import { jsonText, write } from "../output/deliver.ts";

/** Writes the JSON Schema of a kind of document. */
export async function schemaCommand(kind: "design" | "network", options: { readonly out?: string }): Promise<ExitCode> {
  await write(`${jsonText(kind === "network" ? networkJsonSchema() : designJsonSchema())}\n`, options.out);
  return exitCodes.done;
}
