import type { Command } from "commander";
import { alignTruck } from "../../studies/alignment/alignSide.ts";
import { alignJson } from "../../studies/documents/alignJson.ts";
import { documentText } from "../../studies/documents/documentText.ts";
import { ExitCode, NO_ANSWER, stanceError } from "../asked/inputError.ts";
import { askedBudget } from "../asked/readNumbers.ts";
import { readTruck } from "../asked/readTruck.ts";
import { type SharedOptions, withShared } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { alignTable } from "../output/alignTable.ts";

const EXAMPLES = `
Examples:
  wellsweep align truck.json                              shims, tie rods, what stays off target
  wellsweep align truck.json --variant "narrow hub face"  the same with one of the file's variants
  wellsweep align truck.json --json                       for a program

The setup's alignment.targets says what is wanted and at which stance, its adjusters what can be set. Without
targets it gives the readings as bolted on, and what a little more of each setting does.

Exit codes: 0 the targets are reached, to the nearest whole shim, 1 a target cannot be reached in range, 2 ${NO_ANSWER}.`;

/** `align`: settings of shims, eccentrics or arms and tie rods that meet the setup's targets. */
export function addAlign(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withShared(program.command("align"))
    .description(
      "Alignment: the shims, eccentrics or arm lengths and the tie rods that meet the setup's targets, how far off target they leave it, and what a little more of each setting does.",
    )
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: SharedOptions) => end(runAlign(file, options, terminal)));
}

function runAlign(file: string, options: SharedOptions, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { file: name, model } = truck;
  const { setup } = model;
  // Solves a fixed number of poses: the shortest budget does.
  askedBudget(name, options, terminal);
  const result = alignTruck(model);
  if (!result.ok) throw stanceError(name, model, result.travel);
  const { alignment } = result;
  terminal.writeOut(
    options.json
      ? documentText(alignJson(alignment, setup.units, setup.alignment), truck)
      : alignTable(alignment, model),
  );
  return alignment.reached ? ExitCode.Fine : ExitCode.Rubs;
}
