#!/usr/bin/env node
import { CommanderError } from "commander";
import { type ExitCode, exitCodes } from "./exitCodes.ts";
import { BadInput } from "./input/badInput.ts";
import { problemText } from "./output/problemText.ts";
import { stylesFor } from "./output/styles.ts";
import { buildProgram } from "./program.ts";

// A reader that has seen enough (`| head`) closes the pipe: no failure of ours, nor of the input.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  process.exit(error.code === "EPIPE" ? exitCodes.done : exitCodes.ourFault);
});

process.exitCode = await run(process.argv);

/** Runs one command line and returns its exit code; the only place where failures are caught. */
async function run(argv: readonly string[]): Promise<ExitCode> {
  let code: ExitCode = exitCodes.done;
  const program = buildProgram((result) => {
    code = result;
  });
  try {
    await program.parseAsync(argv);
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitCodes.done : exitCodes.badInput;
    if (error instanceof BadInput) {
      process.stderr.write(`${problemText(error, stylesFor(process.stderr))}\n`);
      return exitCodes.badInput;
    }
    if (error instanceof Error && "code" in error && error.code === "EPIPE") return exitCodes.done;
    process.stderr.write(`${faultText(error, argv.includes("--debug"))}\n`);
    return exitCodes.ourFault;
  }
}

function faultText(error: unknown, debug: boolean): string {
  const message = error instanceof Error ? error.message : String(error);
  const told = `Tidewright failed, and the fault is its own: ${message}`;
  if (debug) return `${told}\n${error instanceof Error ? error.stack : ""}`;
  return `${told}\nRun it again with --debug before the command to see where.`;
}
