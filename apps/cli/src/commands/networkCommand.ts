import { type NetworkAnswer, networkAnswer, networkModel, readNetwork } from "@tidewright/design";
import { solveNetwork } from "@tidewright/engine";
import { type ExitCode, exitCodes } from "../exitCodes.ts";
import { BadInput } from "../input/badInput.ts";
import { readInput, sourceName } from "../input/readInput.ts";
import { type AnswerOptions, deliver } from "../output/deliver.ts";
import { networkText } from "../views/networkText.ts";

/** Solves the network section of a document and answers heads, flows and how the numbers came about. */
export async function networkCommand(file: string, options: AnswerOptions): Promise<ExitCode> {
  const answer = answerOf(await readInput(file), sourceName(file));
  await deliver(
    options,
    () => answer,
    (look) => networkText(answer, look),
  );
  return exitCodes.done;
}

/** Returns the answer to a network document's text; throws BadInput with all its problems. */
function answerOf(text: string, source: string): NetworkAnswer {
  const reading = readNetwork(text);
  if (!reading.ok) throw new BadInput(source, reading.problems);
  return networkAnswer(solveNetwork(networkModel(reading.document)));
}
