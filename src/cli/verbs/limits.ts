import type { Command } from "commander";
import { documentText } from "../../studies/documents/documentText.ts";
import { limitsJson } from "../../studies/documents/limitsJson.ts";
import { limitsOf } from "../../studies/limits/limitsOf.ts";
import { ExitCode, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget } from "../asked/readNumbers.ts";
import { readTruck } from "../asked/readTruck.ts";
import { type AlignedOptions, withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { limitsTable } from "../output/limitsTable.ts";

const EXAMPLES = `
Examples:
  wellsweep limits truck.json          what is met first at each stance, and where each limit is passed
  wellsweep limits truck.json --json   for a program

Exit codes: 0 every limit given is kept, 1 one is passed, 2 ${NO_ANSWER}.`;

/** `limits`: ball joints, tie rod ends, stops, shocks and air springs over all travel and both locks. */
export function addLimits(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withAligned(program.command("limits"))
    .description(
      "What joints, stops, shocks and air springs allow: what is in hand at each stance, what is met first, where each limit is passed, and what sets each border of what can be reached.",
    )
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: AlignedOptions) => end(runLimits(file, options, terminal)));
}

function runLimits(file: string, options: AlignedOptions, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { file: name, model } = truck;
  const report = limitsOf(model, askedBudget(name, options, terminal));
  terminal.writeOut(
    options.json ? documentText(limitsJson(report, model.setup.units), truck) : limitsTable(report, model),
  );
  return report.passed ? ExitCode.Rubs : ExitCode.Fine;
}
