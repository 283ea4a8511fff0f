import type { Command } from "commander";
import { documentText } from "../../studies/documents/documentText.ts";
import { geometryJson } from "../../studies/documents/geometryJson.ts";
import { GEOMETRY_ROWS } from "../../studies/documents/reportText.ts";
import { geometryReport } from "../../studies/geometry/geometryReport.ts";
import { reachLimits } from "../../studies/reports/reachLimits.ts";
import { ExitCode, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget, readWhole } from "../asked/readNumbers.ts";
import { readTruck } from "../asked/readTruck.ts";
import { type AlignedOptions, withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { geometryTable } from "../output/geometryTable.ts";

interface GeometryOptions extends AlignedOptions {
  readonly steps: string;
}

/** More rows than a plot has dots. */
const MOST_STEPS = 10_000;

const EXAMPLES = `
Examples:
  wellsweep geometry truck.json                     roll center, bump steer and its cure, Ackermann, turning circle
  wellsweep geometry truck.json --steps 101 --json  finer, for a program

Exit codes: 0 fine, 1 a joint cannot follow somewhere in the range, 2 ${NO_ANSWER}.`;

/** `geometry`: steering and suspension geometry over travel and steer. */
export function addGeometry(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withAligned(program.command("geometry"))
    .description(
      "Roll and instant center, camber gain, bump steer and the tie rod height that flattens it, Ackermann, turning circle, steering ratio, scrub, trail and jacking.",
    )
    .option("--steps <N>", "rows of each table, both ends included", String(GEOMETRY_ROWS))
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: GeometryOptions) => end(runGeometry(file, options, terminal)));
}

function runGeometry(file: string, options: GeometryOptions, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { file: name, model } = truck;
  const steps = readWhole(options.steps, 2, MOST_STEPS, {
    file: name,
    option: "--steps",
    value: options.steps,
  });
  // Solves a fixed number of poses: the shortest budget does.
  askedBudget(name, options, terminal);
  const report = geometryReport(model, steps);
  terminal.writeOut(
    options.json
      ? documentText(geometryJson(report, model.setup.units), truck)
      : geometryTable(report, model),
  );
  return reachLimits(model).length > 0 ? ExitCode.Rubs : ExitCode.Fine;
}
