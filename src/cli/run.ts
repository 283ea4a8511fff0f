import { type Command, CommanderError } from "commander";
import { visibleText } from "../units/visibleText.ts";
import { ExitCode } from "./asked/exitCode.ts";
import { InputError } from "./asked/inputError.ts";
import type { Terminal } from "./asked/terminal.ts";
import { StreamFailure } from "./disk/outStream.ts";
import { helpAsOption } from "./helpAsOption.ts";
import { makeProgram } from "./program.ts";
import { usageLine } from "./usageLine.ts";
import { visibleTerminal } from "./visibleTerminal.ts";

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
  if (error instanceof StreamFailure) return `wellsweep: ${error.message}`;
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
