import { type Command, CommanderError } from "commander";
import { visibleLines, visibleText } from "../units/words.ts";
import { ExitCode, InputError } from "./asked/inputError.ts";
import type { Terminal } from "./asked/terminal.ts";
import { StreamFailure } from "./disk/outStream.ts";
import { makeProgram } from "./program.ts";
import { ThreadsRefused } from "./threads/shareOut.ts";

/**
 * A command line with `help [VERB]` as `[VERB] --help`. What is no verb stays alone, to be refused: not even with --help
 * behind it does it mean the program. @throws CommanderError for more than one word after help
 */
function helpAsOption(args: readonly string[], verbs: readonly string[]): readonly string[] {
  const [first, second, ...rest] = args;
  if (first === undefined || first.startsWith("-")) return args;
  if (first !== "help") return verbs.includes(first) ? args : [first];
  if (rest.length > 0) throw new CommanderError(2, "wellsweep.help", "help takes one verb");
  if (second === undefined || second === "help") return ["--help"];
  return verbs.includes(second) ? [second, "--help"] : [second];
}

/** A mistake in the command line itself, on one line with its mend. */
function usageLine(error: CommanderError, verbs: readonly string[], args: readonly string[]): string {
  const verb = args[0] !== undefined && verbs.includes(args[0]) ? ` ${args[0]}` : "";
  const help = `see wellsweep${verb} --help`;
  const said = error.message
    .replace(/^error: /, "")
    .replace(/\s+/g, " ")
    .trim()
    .replace(/\.$/, "");
  switch (error.code) {
    case "commander.help":
      return `wellsweep: no verb given: say ${verbs.join(", ")}; ${help}`;
    case "commander.unknownCommand":
      return `wellsweep: ${said}: the verbs are ${verbs.join(", ")}; ${help}`;
    case "commander.excessArguments":
      return `wellsweep${verb}: ${said}: name one setup file, and quote lengths with spaces, like "-3 3/4"; ${help}`;
    case "commander.missingArgument":
      return `wellsweep${verb}: ${said}: name a setup file; ${help}`;
    default:
      return `wellsweep${verb}: ${said}; ${help}`;
  }
}

/** A terminal to which nothing out of a file or the command line gets that would act on it instead of being read. */
function visibleTerminal(terminal: Terminal): Terminal {
  return {
    ...terminal,
    writeOut: (text) => terminal.writeOut(visibleLines(text)),
    writeError: (text) => terminal.writeError(visibleLines(text)),
  };
}

/**
 * Runs one command line. Never throws: whatever keeps it from an answer is one line on standard error.
 * @param args without the program's own name
 * @returns the exit code
 */
export function run(args: readonly string[], terminal: Terminal): ExitCode {
  const visible = visibleTerminal(terminal);
  let code: ExitCode = ExitCode.Fine;
  const remarks: string[] = [];
  let program: Command | null = null;
  try {
    program = makeProgram({ ...visible, remark: (line) => remarks.push(line) }, (verbCode) => {
      code = verbCode;
    });
    program.parse(helpAsOption(args, verbsOf(program)), { from: "user" });
    // Only beside an answer: what keeps it from one is told alone, on one line.
    for (const line of remarks) tell(visible, line);
    return code;
  } catch (error) {
    if (error instanceof CommanderError && error.exitCode === 0) return ExitCode.Fine;
    tell(visible, errorLine(error, verbsOf(program), args));
    return ExitCode.NoAnswer;
  }
}

function verbsOf(program: Command | null): readonly string[] {
  return program === null ? [] : program.commands.map((verb) => verb.name());
}

function tell(terminal: Terminal, line: string): void {
  try {
    terminal.writeError(`${line}\n`);
  } catch (error) {
    // Where nothing can be said the exit code has to do.
    if (!(error instanceof StreamFailure)) throw error;
  }
}

function errorLine(error: unknown, verbs: readonly string[], args: readonly string[]): string {
  if (error instanceof InputError) return error.message;
  if (error instanceof StreamFailure || error instanceof ThreadsRefused) return `wellsweep: ${error.message}`;
  if (error instanceof CommanderError) return usageLine(error, verbs, args);
  return faultLine(error);
}

/** What is no user's mistake. */
function faultLine(error: unknown): string {
  const what = error instanceof Error ? error.message : String(error);
  return visibleText(
    `wellsweep: a fault of the program itself, please report it: ${what}`.replace(/\s+/g, " "),
  );
}
