import { CommanderError } from "commander";
import { ExitCode } from "./exitCode.ts";
import { InputError } from "./inputError.ts";
import { makeProgram } from "./program.ts";
import type { Terminal } from "./terminal.ts";
import { usageLine } from "./usageLine.ts";

/**
 * Runs one command line. Never throws: bad input and usage are one line on standard error.
 * @param args without the program's own name
 * @returns the exit code
 */
export function run(args: readonly string[], terminal: Terminal): ExitCode {
  let code: ExitCode = ExitCode.Fine;
  const program = makeProgram(terminal, (verbCode) => {
    code = verbCode;
  });
  try {
    program.parse(args[0] === "help" ? [...args.slice(1, 2), "--help"] : args, { from: "user" });
    return code;
  } catch (error) {
    if (error instanceof CommanderError && error.exitCode === 0) return ExitCode.Fine;
    terminal.writeError(
      `${errorLine(
        error,
        program.commands.map((c) => c.name()),
        args,
      )}\n`,
    );
    return ExitCode.BadInput;
  }
}

function errorLine(error: unknown, verbs: readonly string[], args: readonly string[]): string {
  if (error instanceof InputError) return error.message;
  if (error instanceof CommanderError) return usageLine(error, verbs, args);
  const what = error instanceof Error ? error.message : String(error);
  return `wellsweep: a fault of the program itself, please report it: ${what}`.replace(/\s+/g, " ");
}
