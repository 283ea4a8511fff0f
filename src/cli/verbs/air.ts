import type { Command } from "commander";
import { airOf } from "../../studies/air/airOf.ts";
import { airJson } from "../../studies/documents/airJson.ts";
import { documentText } from "../../studies/documents/documentText.ts";
import { parseQuantity } from "../../units/quantity.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget } from "../asked/readNumbers.ts";
import { readTruck, type Truck } from "../asked/readTruck.ts";
import { type AlignedOptions, withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { airTable } from "../output/airTable.ts";

interface AirOptions extends AlignedOptions {
  readonly pressure?: string;
}

const EXAMPLES = `
Examples:
  wellsweep air truck.json                   height, motion ratio, pressure, rate and ride at each stance
  wellsweep air truck.json --pressure 60     where it stands with 60 psi in (kPa in a file in mm)
  wellsweep air truck.json --pressure "4.1 bar" --json

Exit codes: 0 fine, 1 a height or pressure is outside its limits, 2 ${NO_ANSWER}.`;

/** `air`: the air springs at each stance and over travel. */
export function addAir(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withAligned(program.command("air"))
    .description(
      "Air springs: height, motion ratio, the pressure that carries each corner, wheel rate and ride frequency.",
    )
    .option("--pressure <P>", 'gauge pressure to stand at, in the file\'s unit or such as "60 psi"')
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: AirOptions) => end(runAir(file, options, terminal)));
}

function runAir(file: string, options: AirOptions, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { model } = truck;
  // Solves a fixed number of poses: the shortest budget does.
  askedBudget(truck.file, options, terminal);
  const pressure = askedPressure(truck, options);
  const report = airOf(model, pressure);
  if (report === null)
    throw InputError.ofFile(truck.file, "has no airSpring block; add one to ask about air");
  terminal.writeOut(
    options.json ? documentText(airJson(report, model.setup.units), truck) : airTable(report, model),
  );
  return report.passed ? ExitCode.Rubs : ExitCode.Fine;
}

function askedPressure({ file, model }: Truck, { pressure }: AirOptions): number | null {
  if (pressure === undefined) return null;
  const refuse = (mend: string) => InputError.ofOption(file, "--pressure", pressure, mend);
  const { airSpring, masses, units } = model.setup;
  const parsed = parseQuantity(pressure, "pressure", units);
  if (!parsed.ok) throw refuse(parsed.mend);
  if (!(parsed.value >= 0)) throw refuse("must be 0 or more");
  if (masses === null || (airSpring !== null && airSpring.curve === null))
    throw refuse("needs masses and airSpring.curve in the setup");
  return parsed.value;
}
