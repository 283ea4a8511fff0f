import type { Command } from "commander";
import { documentText } from "../../studies/documents/documentText.ts";
import { windowJson } from "../../studies/documents/windowJson.ts";
import { isInside, variantTicks } from "../../studies/window/variantTicks.ts";
import type { WindowField } from "../../studies/window/windowField.ts";
import { windowOfField } from "../../studies/window/windowOf.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { askedField, type FieldOptions, readMeasure } from "../asked/askedField.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget } from "../asked/readNumbers.ts";
import { readTruck, type Truck } from "../asked/readTruck.ts";
import { withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { windowTable } from "../output/windowTable.ts";

interface AskedWindow extends FieldOptions {
  readonly tolerance?: string;
}

/** mm or radians. Finer than this the search ends in rounding, not in an answer. */
const LEAST_TOLERANCE = { length: 0.001, angle: Math.PI / 180 / 1000 } as const;

const EXAMPLES = `
Examples:
  wellsweep window truck.json --field knuckle.hubFace           how narrow and how wide it may be, and what sets each end
  wellsweep window truck.json --field knuckle.pinHeight         the same for the drop
  wellsweep window truck.json --field wheel.backspacing --from 4 --to "5 1/2"   only between these
  wellsweep window truck.json --field knuckle.pinAngle --json   for a program

Exit codes: 0 the value of the file fits, 1 it does not, 2 ${NO_ANSWER}.`;

/** `window`: which values of one field fit, and what sets each end. */
export function addWindow(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withAligned(program.command("window"))
    .description(
      "How little and how much one length or angle may be for everything to keep the allowance, and what sets each end.",
    )
    .requiredOption("--field <KEY>", "a length or an angle of the file, such as knuckle.hubFace")
    .option("--from <VALUE>", "least value to look at; default 6 in or 10 degrees below the file's")
    .option("--to <VALUE>", "greatest value to look at; default 6 in or 10 degrees above the file's")
    .option("--tolerance <VALUE>", "how closely the ends are found; default 0.1 mm or 0.01 degrees")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: AskedWindow) => end(runWindow(file, options, terminal)));
}

function runWindow(file: string, options: AskedWindow, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { model, document } = truck;
  const { setup } = model;
  const { field, subject, range } = askedField(truck, options);
  const tolerance = askedTolerance(truck, field, options);
  const budget = askedBudget(truck.file, options, terminal);
  const window = windowOfField(subject, field, { ...range, ...tolerance, budget });
  const speech = { model, format: formatOf(setup), document: subject.document };
  const ticks = variantTicks(document, setup, field.key, truck.file);
  terminal.writeOut(
    options.json ? documentText(windowJson(window, setup.units), truck) : windowTable(window, speech, ticks),
  );
  return isInside(window, window.now) ? ExitCode.Fine : ExitCode.Rubs;
}

function askedTolerance(
  truck: Truck,
  { kind }: WindowField,
  { tolerance: value }: AskedWindow,
): { readonly tolerance?: number } {
  if (value === undefined) return {};
  const { file } = truck;
  const tolerance = readMeasure(kind, value, truck, { file, option: "--tolerance", value });
  if (!(tolerance >= LEAST_TOLERANCE[kind]))
    throw InputError.ofOption(file, "--tolerance", value, "must be at least 0.001 mm, or 0.001 degrees");
  return { tolerance };
}
