/** The commands and their options. `run` does one command line and returns its exit code; it never ends the process. */
import { Argument, Command, CommanderError, InvalidArgumentError, Option } from "commander";
import { EDITION_IDS, type EditionId } from "../../rules/editions/edition.ts";
import { PALETTE_NAMES, type PaletteName } from "../drawing/palette.ts";
import { PAPER_NAMES, type PaperName } from "../drawing/paper.ts";
import { check } from "./check.ts";
import { compare } from "./compare.ts";
import { draw } from "./draw.ts";
import { listRules } from "./rules-text.ts";
import { CLEAR, type Terminal, UNREADABLE } from "./terminal.ts";

interface CheckFlags {
  json?: boolean;
  as?: EditionId;
  compare?: EditionId;
}

interface DrawFlags {
  out: string;
  as?: EditionId;
  compare?: EditionId;
  reasons?: boolean;
  paper?: PaperName;
  palette?: PaletteName;
}

const EXIT_CODES = `
Exit codes: 0 nothing missing, in conflict or in question; 1 something is missing or in conflict;
            2 a file cannot be read, or the command cannot be understood; 3 only questions remain.
            Of several files, the worst in the order 2, 1, 3, 0.`;

/** Runs the words after the program's name. */
export async function run(words: readonly string[], terminal: Terminal): Promise<number> {
  let code = CLEAR;
  let said = Promise.resolve();
  const say = (text: string) => {
    said = said.then(() => terminal.write(text));
  };
  const complain = (text: string) => {
    said = said.then(() => terminal.complain(text));
  };
  const program = commands(terminal, (result) => {
    code = result;
  });
  for (const command of [program, ...program.commands]) {
    command.exitOverride().configureOutput({ writeOut: say, writeErr: complain });
    command.showHelpAfterError("Run with --help for the commands and options.");
  }
  try {
    if (words.length === 0) complain(program.helpInformation());
    await (words.length === 0 ? Promise.reject(nothingAsked()) : program.parseAsync([...words], { from: "user" }));
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    code = error.exitCode === 0 ? CLEAR : UNREADABLE;
  }
  await said;
  return code;
}

function nothingAsked(): CommanderError {
  return new CommanderError(UNREADABLE, "copperband.nothingAsked", "no command");
}

function commands(terminal: Terminal, done: (code: number) => void): Command {
  const program = new Command("copperband")
    .description(
      "Works out what a swimming pool's electrical safety asks for, from a site file. A drawing aid, not an approval.",
    )
    .helpCommand(false);
  program
    .command("check")
    .description("list the findings of site files in the code's order")
    .addArgument(new Argument("<file...>", "site files; - reads standard input"))
    .option("--json", "print the whole report as JSON, one line a file, with the file's name")
    .addOption(editionOption())
    .addOption(
      new Option("--compare <edition>", "show instead what changes under this edition, and why").choices(EDITION_IDS),
    )
    .addHelpText("after", EXIT_CODES)
    .action(async (files: string[], flags: CheckFlags) => {
      const options = { json: flags.json === true, as: flags.as };
      done(
        flags.compare === undefined
          ? await check(files, options, terminal)
          : await compare(files, { ...options, to: flags.compare }, terminal),
      );
    });
  program
    .command("draw")
    .description("write the plan as a drawing sheet (SVG)")
    .argument("<file>", "site file; - reads standard input")
    .requiredOption("--out <name.svg>", "file to write; - writes standard output", svgName)
    .addOption(editionOption())
    .addOption(
      new Option("--compare <edition>", "add sheets with what changes under this edition").choices(EDITION_IDS),
    )
    .option("--reasons", "add sheets with the reasons of every finding in full")
    .addOption(
      new Option("--paper <size>", "paper, landscape; chosen by what has to fit when absent").choices(PAPER_NAMES),
    )
    .addOption(new Option("--palette <name>", "colors").choices(PALETTE_NAMES))
    .action(async (file: string, flags: DrawFlags) => {
      done(await draw(file, flags, terminal));
    });
  program
    .command("rules")
    .description("list the rules that hold a word or a section, with their limits; all of them without one")
    .argument("[text...]", "words, or a section such as 680.26(B)(7)")
    .addOption(new Option("--as <edition>", "the edition whose limits are shown").choices(EDITION_IDS))
    .action(async (text: string[], flags: { as?: EditionId }) => {
      done(await listRules(text.join(" "), flags.as, terminal));
    });
  return program;
}

function editionOption(): Option {
  return new Option("--as <edition>", "judge by this edition whatever the site names").choices(EDITION_IDS);
}

function svgName(name: string): string {
  if (name !== "-" && !/[^/\\]\.svg$/i.test(name))
    throw new InvalidArgumentError('It should be a name that ends with ".svg".');
  return name;
}
