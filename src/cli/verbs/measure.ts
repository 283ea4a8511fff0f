import type { Command } from "commander";
import { documentText as setupFileText } from "../../setup/documentText.ts";
import { editShown } from "../../setup/editing/editShown.ts";
import { effectiveDocument } from "../../setup/editing/effectiveDocument.ts";
import { readDocument } from "../../setup/readSetup.ts";
import { valueAt } from "../../setup/types/keyPath.ts";
import type { LengthUnit } from "../../setup/types/types.ts";
import { jsonText } from "../../studies/documents/documentText.ts";
import { measureJson } from "../../studies/documents/measureJson.ts";
import { measureAskOf } from "../../studies/measure/measureAskOf.ts";
import type { Measured } from "../../studies/measure/measured.ts";
import { measureTruck } from "../../studies/measure/measureTruck.ts";
import { applyReadings } from "../../studies/worksheet/applyReadings.ts";
import { WORKSHEET_CANDIDATES } from "../../studies/worksheet/candidates.ts";
import { accepted, ExitCode, InputError, inputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget } from "../asked/readNumbers.ts";
import { setupText } from "../asked/setupText.ts";
import { type SharedOptions, withShared } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { InputFiles } from "../disk/readBytes.ts";
import { checkOutFiles, writeFiles } from "../disk/writeFiles.ts";
import { measureTable } from "../output/measureTable.ts";

interface MeasureOptions extends SharedOptions {
  readonly apply?: string;
  readonly force?: true;
}

const EXAMPLES = `
Examples:
  wellsweep measure truck.json                        points, how well each is known, and the reading to doubt
  wellsweep measure truck.json --apply measured.json  a copy whose truck stands as measured
  wellsweep measure truck.json --json                 for a program

The setup's readings block holds what was read; nothing else of the setup has to be there yet.

Exit codes: 0 the readings go together, 1 one is most likely wrong or cannot be and is left out, 2 ${NO_ANSWER}.`;

/** `measure`: from readings of tape, plumb bob and angle finder to the points of the truck. */
export function addMeasure(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withShared(program.command("measure"))
    .description(
      "From tape to truck: the points of the front end by least squares over all readings, what they leave open, which one is most likely wrong, and which one more would help most.",
    )
    .option("--apply <OUT>", "setup file to write, its truck as measured")
    .option("--force", "replace a file of that name")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: MeasureOptions) => end(runMeasure(file, options, terminal)));
}

function runMeasure(file: string, options: MeasureOptions, terminal: Terminal): ExitCode {
  const inputs = new InputFiles();
  const { name, text } = setupText(file, inputs, terminal);
  const document = accepted(readDocument(text, name));
  const budget = askedBudget(name, options, terminal);
  const variant = options.variant ?? null;
  const { ask, units, issues, leftOut } = measureAskOf(document, name, variant, WORKSHEET_CANDIDATES);
  if (issues.length > 0 || ask === null || units === null) throw inputError(issues);
  if (ask.readings.length === 0) {
    if (leftOut.length > 0) throw inputError(leftOut);
    const mend = 'required: what was read, such as [{ "height": "lowerArm.ballJoint", "is": "8 1/2" }]';
    throw new InputError([{ file: name, key: "readings", value: "", mend }]);
  }
  const measured = measureTruck(ask, budget);
  const { apply = null } = options;
  const plain = measureJson(measured, leftOut, units);
  const told = options.json
    ? jsonText(apply === null ? plain : { ...plain, written: apply })
    : measureTable({ measured, leftOut, units, title: titleOf(document, variant), written: apply });
  if (apply !== null) writeApplied({ document, measured, units, name, inputs }, apply, options);
  terminal.writeOut(told);
  return measured.suspect === null && leftOut.length === 0 ? ExitCode.Fine : ExitCode.Rubs;
}

function titleOf(document: unknown, variant: string | null): string {
  const name = valueAt(effectiveDocument(document, variant), ["name"]);
  const title = typeof name === "string" && name.trim() !== "" ? name : "Truck without a name";
  return variant === null ? title : `${title}, variant “${variant}”`;
}

interface Applied {
  readonly document: unknown;
  readonly measured: Measured;
  readonly units: LengthUnit;
  readonly name: string;
  readonly inputs: InputFiles;
}

function writeApplied(
  { document, measured, units, name, inputs }: Applied,
  out: string,
  { variant, force }: MeasureOptions,
): void {
  const written = editShown(document, variant ?? null, (shown) => applyReadings(shown, measured, units));
  const rules = { inputs, force: force === true };
  const refuse = (_: string, mend: string) => InputError.ofOption(name, "--apply", out, mend);
  checkOutFiles([out], rules, refuse);
  writeFiles([{ file: out, bytes: new TextEncoder().encode(setupFileText(written)) }], rules, refuse);
}
