import type { Command } from "commander";
import type { RollSetup } from "../../setup/types/floorTypes.ts";
import { documentText } from "../../studies/documents/documentText.ts";
import { floorJson } from "../../studies/documents/floorJson.ts";
import { floorReport } from "../../studies/floor/floorReport.ts";
import { parseAngle, radFromDeg } from "../../units/angle.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget } from "../asked/readNumbers.ts";
import { readTruck, type Truck } from "../asked/readTruck.ts";
import { type AlignedOptions, withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { floorTable } from "../output/floorTable.ts";

interface FloorOptions extends AlignedOptions {
  readonly roll?: string;
}

/** Degrees. As the setup's own `roll.most`. */
const MOST_ROLL_DEG = 45;

const EXAMPLES = `
Examples:
  wellsweep floor truck.json              each stance in all measures, what is how far above the floor
  wellsweep floor truck.json --roll 2.5   with the body rolled 2.5 degrees each way instead of the file's roll
  wellsweep floor truck.json --json       for a program

Exit codes: 0 fine, 1 the frame or a named point is below the floor at a stance, 2 ${NO_ANSWER}.`;

/** `floor`: stances in shop measures, ground clearance, scrub line, body roll. */
export function addFloor(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withAligned(program.command("floor"))
    .description(
      "Each stance by what a shop measures, ground clearance, the scrub line, and both wheels on the floor with the body rolled or one wheel over a curb.",
    )
    .option("--roll <DEG>", "body roll each way, degrees; default the file's roll block")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: FloorOptions) => end(runFloor(file, options, terminal)));
}

function runFloor(file: string, options: FloorOptions, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { model } = truck;
  const budget = askedBudget(truck.file, options, terminal);
  const report = floorReport(model, askedRoll(truck, options), budget);
  terminal.writeOut(
    options.json ? documentText(floorJson(report, model.setup), truck) : floorTable(report, model),
  );
  return report.below ? ExitCode.Rubs : ExitCode.Fine;
}

/** The file's roll, with the degrees of the option where it is given. @throws InputError */
function askedRoll({ file, model }: Truck, { roll }: FloorOptions): RollSetup | null {
  const given = model.setup.roll;
  if (roll === undefined) return given;
  const angle = parseAngle(roll);
  if (!angle.ok) throw InputError.ofOption(file, "--roll", roll, angle.mend);
  if (!(angle.rad > 0 && angle.rad < radFromDeg(MOST_ROLL_DEG)))
    throw InputError.ofOption(
      file,
      "--roll",
      roll,
      `must be more than 0 and less than ${MOST_ROLL_DEG} degrees`,
    );
  return { most: angle.rad, curb: given?.curb ?? null };
}
