import type { Command } from "commander";
import { effectiveDocument, withoutVariants } from "../../setup/editing/effectiveDocument.ts";
import { documentText } from "../../studies/documents/documentText.ts";
import { windowJson } from "../../studies/documents/windowJson.ts";
import { isInside, variantTicks } from "../../studies/window/variantTicks.ts";
import { type WindowField, windowField } from "../../studies/window/windowField.ts";
import { type WindowOptions, windowOfField } from "../../studies/window/windowOf.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { parseAngle } from "../../units/angle.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget, type OptionPlace, readLength } from "../asked/readNumbers.ts";
import { readTruck, type Truck } from "../asked/readTruck.ts";
import { type AlignedOptions, withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { windowTable } from "../output/windowTable.ts";

interface AskedWindow extends AlignedOptions {
  readonly field: string;
  readonly from?: string;
  readonly to?: string;
  readonly tolerance?: string;
}

/** mm or radians. Finer than this the search ends in rounding, not in an answer. */
const LEAST_TOLERANCE = { length: 0.001, angle: Math.PI / 180 / 1000 } as const;

const EXAMPLES = `
Examples:
  wellsweep window truck.json --field knuckle.hubFace           how narrow and how wide it may be, and what sets each end
  wellsweep window truck.json --field knuckle.pinHeight         the same of the drop
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
    .option("--tolerance <VALUE>", "how near the ends are told; default 0.1 mm or 0.01 degrees")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: AskedWindow) => end(runWindow(file, options, terminal)));
}

function runWindow(file: string, options: AskedWindow, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { model, document } = truck;
  const { setup } = model;
  const variant = options.variant ?? null;
  const shown = variant === null ? withoutVariants(document) : effectiveDocument(document, variant);
  const found = windowField(shown, setup, options.field, truck.file);
  if (!found.ok) throw InputError.ofOption(truck.file, "--field", options.field, found.issues[0]!.mend);
  const field = found.value;
  const asked = askedRange(truck, field, options);
  const budget = askedBudget(truck.file, options, terminal);
  const subject = { document: shown, setup, file: truck.file, isAligned: options.aligned === true };
  const window = windowOfField(subject, field, { ...asked, budget });
  const speech = { model, format: formatOf(setup), document: shown };
  const ticks = variantTicks(document, setup, field.key, truck.file);
  terminal.writeOut(
    options.json ? documentText(windowJson(window, setup.units), truck) : windowTable(window, speech, ticks),
  );
  return isInside(window, window.now) ? ExitCode.Fine : ExitCode.Rubs;
}

function askedRange(truck: Truck, field: WindowField, options: AskedWindow): WindowOptions {
  const { file } = truck;
  const read = (option: string, value: string | undefined): number | undefined =>
    value === undefined ? undefined : readValue(field, value, truck, { file, option, value });
  const [from, to] = [read("--from", options.from), read("--to", options.to)];
  const tolerance = read("--tolerance", options.tolerance);
  const refuse = (option: string, value: string, mend: string) => {
    throw InputError.ofOption(file, option, value, mend);
  };
  if (from !== undefined && to !== undefined && !(from < to))
    refuse("--from", options.from!, "must be less than --to; give the lesser value first");
  if (from !== undefined && (from <= field.least || from >= field.most))
    refuse("--from", options.from!, "is more or less than the file may hold there");
  if (to !== undefined && (to >= field.most || to <= field.least))
    refuse("--to", options.to!, "is more or less than the file may hold there");
  if (tolerance !== undefined && !(tolerance >= LEAST_TOLERANCE[field.kind]))
    refuse("--tolerance", options.tolerance!, "must be at least 0.001 mm, or 0.001 degrees");
  return {
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    ...(tolerance === undefined ? {} : { tolerance }),
  };
}

/** A value of the field as typed, mm or radians. @throws InputError */
function readValue({ kind }: WindowField, text: string, { model }: Truck, place: OptionPlace): number {
  if (kind === "length") return readLength(text, model.setup.units, place);
  const angle = parseAngle(text);
  if (!angle.ok) throw InputError.ofOption(place.file, place.option, text, angle.mend);
  return angle.rad;
}
