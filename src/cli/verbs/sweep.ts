import type { Command } from "commander";
import { type WholeSweep, wholeSweep } from "../../studies/curves/wholeSweep.ts";
import { documentText } from "../../studies/documents/documentText.ts";
import { sweepCsv } from "../../studies/documents/sweepCsv.ts";
import { sweepJson } from "../../studies/documents/sweepJson.ts";
import { DEFAULT_SWEEP_ROWS } from "../../studies/reports/sweep.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget, readWhole } from "../asked/readNumbers.ts";
import { readTruck } from "../asked/readTruck.ts";
import { type AlignedOptions, withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { sweepTable } from "../output/sweepTable.ts";

interface SweepOptions extends AlignedOptions {
  readonly steps: string;
  readonly csv?: true;
}

/** More rows than a plot has dots; far more would fill the memory. */
const MOST_STEPS = 10_000;

const EXAMPLES = `
Examples:
  wellsweep sweep truck.json                     by travel, by steering and by body roll
  wellsweep sweep truck.json --csv > truck.csv   one table for a spreadsheet
  wellsweep sweep truck.json --steps 101 --json  finer, for a program

Exit codes: 0 fine, 1 something rubs, or a row passes a limit or is out of reach, 2 ${NO_ANSWER}.`;

/** `sweep`: the tables behind the plots. */
export function addSweep(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withAligned(program.command("sweep"))
    .description(
      "Tables of alignment, suspension and gaps: over all travel straight ahead, lock to lock, and over body roll; then where each part comes nearest of all poses, as a check finds it.",
    )
    .option("--steps <N>", "rows of each table, both ends included", String(DEFAULT_SWEEP_ROWS))
    .option("--csv", "print one table of comma-separated values, units in its header")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: SweepOptions) => end(runSweep(file, options, terminal)));
}

function runSweep(file: string, options: SweepOptions, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { file: name, model } = truck;
  if (options.csv && options.json) {
    throw InputError.ofOption(name, "--csv", null, "cannot be used with --json; choose one of them");
  }
  const place = { file: name, option: "--steps", value: options.steps };
  const steps = readWhole(options.steps, 2, MOST_STEPS, place);
  const sweep = wholeSweep(model, steps, askedBudget(name, options, terminal));
  terminal.writeOut(
    options.json
      ? documentText(sweepJson(sweep, model.setup.units), truck)
      : options.csv
        ? sweepCsv(sweep, model)
        : sweepTable(sweep, model),
  );
  return exitCodeOf(sweep);
}

function exitCodeOf(sweep: WholeSweep): ExitCode {
  const rows = [...sweep.byTravel, ...sweep.bySteer];
  const isBad = rows.some((row) => !row.ok || row.past.length > 0 || row.gaps.some((entry) => entry.gap < 0));
  return isBad || sweep.worst.some(({ gap }) => gap < 0) ? ExitCode.Rubs : ExitCode.Fine;
}
