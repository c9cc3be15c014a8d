#!/usr/bin/env node
import { StoreFailure } from "@tidewright/store";
import { CommanderError } from "commander";
import { BadInput } from "./commands/badInput.ts";
import { type ExitCode, exitCodes } from "./exitCodes.ts";
import { buildProgram } from "./program.ts";

process.exitCode = await run(process.argv);

/** Runs one command line and returns its exit code; the only place where failures of commands are caught. */
async function run(argv: readonly string[]): Promise<ExitCode> {
  try {
    await buildProgram().parseAsync(argv);
    return exitCodes.done;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitCodes.done : exitCodes.badInput;
    const message = error instanceof Error ? error.message : String(error);
    if (error instanceof BadInput || error instanceof StoreFailure) {
      // A folder in use, a full disk, a server out of reach: whoever started the command can mend it.
      process.stderr.write(`${message}\n`);
      return exitCodes.badInput;
    }
    process.stderr.write(`Tidewright failed, and the fault is its own: ${message}\n`);
    return exitCodes.ourFault;
  }
}
