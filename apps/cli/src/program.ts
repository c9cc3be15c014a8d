import { Command, InvalidArgumentError, Option } from "commander";
import type { ExitCode } from "./exitCodes.ts";
import { systems } from "./output/format.ts";

/** Returns a reader of whole numbers within bounds, whose refusal says what is allowed. */
function whole(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (/^\d+$/.test(text) && value >= least && value <= most) return value;
    throw new InvalidArgumentError(`Give a whole number from ${least} to ${most}.`);
  };
}

function answering(command: Command): Command {
  return command
    .option("--json", "answer as JSON in SI units")
    .option("--out <file>", "write the answer into a file")
    .addOption(new Option("--units <system>", "units of the tables").choices([...systems]).default("metric"));
}

const withPumps = (command: Command): Command =>
  command.option("--catalogue <csv>", "pumps to use in place of the demonstration pumps");

/** Returns the command line. Each command is loaded when it is asked for, so that none pays for another. */
export function buildProgram(finish: (code: ExitCode) => void): Command {
  const program = new Command("tidewright")
    .description("Which pump moves the water in this tank, and why.")
    .version("0.1.0")
    .option("--debug", "show where in the program a failure came from")
    .showHelpAfterError("(tidewright --help lists the commands)")
    .exitOverride()
    .addHelpText(
      "after",
      "\nFILE may be - for the standard input.\nExit codes: 0 done, 1 done with dangers found, 2 bad input, 3 our fault.",
    );
  const subcommand = (parent: Command, name: string) => parent.command(name).copyInheritedSettings(parent);

  withPumps(answering(subcommand(program, "assess <file...>")))
    .description("what the water does in a design, and what to mind")
    .option("--no-sweep", "leave out what power cuts, blocked drains and other scenarios would do")
    .action(async (files, options) => {
      finish(await (await import("./commands/assessCommand.ts")).assessCommand(files, options));
    });
  withPumps(answering(subcommand(program, "rank <file>")))
    .description("the pumps of the catalogue for one loop, best first, with reasons")
    .option("--loop <number>", "which loop, 1 is the first (default: the first return)", whole(1, 1000))
    .option("--top <number>", "how many to show", whole(1, 100_000), 10)
    .option("--no-pairs", "leave out two equal pumps side by side")
    .action(async (file, options) => {
      finish(await (await import("./commands/rankCommand.ts")).rankCommand(file, options));
    });
  withPumps(answering(subcommand(program, "levers <file>")))
    .description("the single changes that would help most")
    .action(async (file, options) => {
      finish(await (await import("./commands/leversCommand.ts")).leversCommand(file, options));
    });
  withPumps(answering(subcommand(program, "whatif <file> [scenario]")))
    .description("what a power cut, a blocked drain and every other trouble does to a design over time")
    .option("--list", "list the scenarios that this design can meet")
    .option("--days <number>", "days that the top-off is left failing", whole(1, 60), 10)
    .option("--plot <file.svg>", "draw the levels of the scenario into a file")
    .option("--no-film", "leave the course of levels and flows out of --json")
    .addHelpText(
      "after",
      "\nSCENARIO is an id such as powerCut or drainBlocked:0, or a file with a scenario of your own (tidewright schema scenario);\nwithout it all are played and the answer is one safety table.\nExit code 1: with SCENARIO, a wet floor or a pump that draws air; without, a finding of severity danger.",
    )
    .action(async (file, scenario, options) => {
      finish(await (await import("./commands/whatIfCommand.ts")).whatIfCommand(file, scenario, options));
    });
  answering(subcommand(program, "network <file>"))
    .description("heads and flows of any pipe network")
    .action(async (file, options) => {
      finish(await (await import("./commands/networkCommand.ts")).networkCommand(file, options));
    });

  const catalogue = subcommand(program, "catalogue").description("check or list the catalogue");
  answering(subcommand(catalogue, "check [csv]"))
    .description("what is wrong or doubtful in a pump table, or in the demonstration catalogue")
    .action(async (file, options) => {
      finish(await (await import("./commands/catalogueCheckCommand.ts")).catalogueCheckCommand(file, options));
    });
  answering(subcommand(catalogue, "list [csv]"))
    .description("what a design may refer to")
    .action(async (file, options) => {
      finish(await (await import("./commands/catalogueListCommand.ts")).catalogueListCommand(file, options));
    });

  subcommand(program, "schema")
    .argument("[kind]", "design, network or scenario", oneOf("design", "network", "scenario"), "design")
    .description("the JSON Schema of a document")
    .option("--out <file>", "write it into a file")
    .option("--json", "the answer is JSON in any case")
    .action(async (kind, options) => {
      finish(await (await import("./commands/schemaCommand.ts")).schemaCommand(kind, options));
    });
  return program;
}

function oneOf(...words: readonly string[]): (text: string) => string {
  return (text) => {
    if (words.includes(text)) return text;
    throw new InvalidArgumentError(`Give ${words.join(" or ")}.`);
  };
}
