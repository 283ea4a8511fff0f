import type { Command } from "commander";
import { documentText } from "../../studies/documents/documentText.ts";
import { mapCsv } from "../../studies/documents/mapCsv.ts";
import { mapJson } from "../../studies/documents/mapJson.ts";
import { MAP_COLS, MAP_ROWS } from "../../studies/documents/reportText.ts";
import { type MapReport, mapReportOf } from "../../studies/map/mapReport.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget, readWhole } from "../asked/readNumbers.ts";
import { readTruck } from "../asked/readTruck.ts";
import { type AlignedOptions, withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { mapTable } from "../output/mapTable.ts";

interface MapVerbOptions extends AlignedOptions {
  readonly rows: string;
  readonly cols: string;
  readonly csv?: true;
}

/** Finer than a screen can show. */
const MOST_CELLS = 1000;

const EXAMPLES = `
Examples:
  wellsweep map truck.json                              worst gap at each height and steering input
  wellsweep map truck.json --rows 61 --cols 61 --json   finer, for a program
  wellsweep map truck.json --csv > map.csv              one line a side and pose, for a spreadsheet

Exit codes: 0 fine, 1 something rubs or a limit is passed, 2 ${NO_ANSWER}.`;

/** `map`: the worst gap by travel and steer, how far it steers at each height, how low it goes at each steering input. */
export function addMap(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withAligned(program.command("map"))
    .description(
      "The worst gap at each height and steering input, how far it steers at each height before something touches, and how low it goes at each steering input.",
    )
    .option("--rows <N>", "heights, from full droop to full bump", String(MAP_ROWS))
    .option("--cols <N>", "steering inputs, from full right to full left lock", String(MAP_COLS))
    .option("--csv", "print the map as comma-separated values, units in its header")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: MapVerbOptions) => end(runMap(file, options, terminal)));
}

function runMap(file: string, options: MapVerbOptions, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { file: name, model } = truck;
  if (options.csv && options.json) {
    throw InputError.ofOption(name, "--csv", null, "cannot be used with --json; choose one of them");
  }
  const whole = (option: "rows" | "cols") =>
    readWhole(options[option], 2, MOST_CELLS, { file: name, option: `--${option}`, value: options[option] });
  const [rows, cols] = [whole("rows"), whole("cols")];
  const report = mapReportOf(model, { rows, cols, budget: askedBudget(name, options, terminal) });
  terminal.writeOut(
    options.json
      ? documentText(mapJson(report, model), truck)
      : options.csv
        ? mapCsv(report, model)
        : mapTable(report, model),
  );
  return exitCodeOf(report);
}

function exitCodeOf({ rubs, limits, passesLimit }: MapReport): ExitCode {
  return rubs || passesLimit || limits.length > 0 ? ExitCode.Rubs : ExitCode.Fine;
}
