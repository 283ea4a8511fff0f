import type { Command } from "commander";
import { alignedFrom } from "../../studies/alignment/modelAsked.ts";
import { asBuiltJson, jigJson } from "../../studies/documents/asBuiltJson.ts";
import { documentText } from "../../studies/documents/documentText.ts";
import { asBuiltReport, builtKnuckles, tellsNothing } from "../../studies/jig/asBuiltReport.ts";
import { type AsBuiltTruckResult, modelOnKnuckles } from "../../studies/jig/asBuiltTruck.ts";
import { jigSheetOf } from "../../studies/jig/jigSheet.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget } from "../asked/readNumbers.ts";
import { readTruck, requireTargets, type Truck } from "../asked/readTruck.ts";
import { type AlignedOptions, withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { asBuiltTable, jigTable } from "../output/asBuiltTable.ts";

interface AsBuiltOptions extends AlignedOptions {
  readonly jig?: true;
}

const EXAMPLES = `
Examples:
  wellsweep asbuilt truck.json --jig     the jig sheet: what tape and angle finder must read, to write into
  wellsweep asbuilt truck.json           what was built, by the readings in the setup's asBuilt block
  wellsweep asbuilt truck.json --aligned the truck aligned to its targets on either knuckle
  wellsweep asbuilt truck.json --json    for a program

The setup's jig block says how the jig is laid out and what is tolerated; its asBuilt block holds what was read.

Exit codes: 0 every reading passes (or the sheet is printed), 1 one fails, 2 ${NO_ANSWER}.`;

/** `asbuilt`: the jig sheet, and the knuckles that were really built with what they do on the truck. */
export function addAsBuilt(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withAligned(program.command("asbuilt"))
    .description(
      "As built: from what was read off the jig to the knuckle that was really built, pass or fail, and what its errors do on the truck before it ships.",
    )
    .option("--jig", "print the jig sheet instead: what must be read, with tolerances and room to write")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: AsBuiltOptions) => end(runAsBuilt(file, options, terminal)));
}

function runAsBuilt(file: string, options: AsBuiltOptions, terminal: Terminal): ExitCode {
  // Readings are of the knuckle, whatever it is bolted to; only the truck under it is aligned.
  const { aligned, ...bolted } = options;
  const truck = readTruck(file, bolted, terminal);
  const { model } = truck;
  const { setup } = model;
  const isAligned = aligned === true;
  if (isAligned) requireTargets(truck.file, model);
  const budget = askedBudget(truck.file, options, terminal);
  if (options.jig) {
    const sheet = jigSheetOf(setup);
    terminal.writeOut(
      options.json ? documentText(jigJson(sheet, setup.units), truck) : jigTable(sheet, model),
    );
    return ExitCode.Fine;
  }
  refuseTooLittle(truck);
  const report = asBuiltReport(model, truck.file, budget, isAligned);
  if (report === null) throw new TypeError("runAsBuilt: readings were looked for above");
  const { onTheTruck, sides } = report;
  const built = modelOnKnuckles(setup, builtKnuckles(setup, sides), truck.file, isAligned);
  const ordered = isAligned ? (alignedFrom(model, truck.file) ?? model) : model;
  if (!onTheTruck.ok || !built.ok) throw notOnTheTruck(truck, onTheTruck);
  terminal.writeOut(
    options.json
      ? documentText(asBuiltJson(report, setup), truck)
      : asBuiltTable(report, ordered, built.model, truck.unusual),
  );
  const passes = [sides.left, sides.right].every((side) => side === null || side.allPass);
  return passes ? ExitCode.Fine : ExitCode.Rubs;
}

/** @throws InputError where there are no readings, or a side has too few to tell anything. */
function refuseTooLittle({ file, model: { setup } }: Truck): void {
  const refuse = (key: string, mend: string) => new InputError([{ file, key, value: "", mend }]);
  if (setup.asBuilt === null)
    throw refuse(
      "asBuilt",
      'required: what was read off the jig, such as { "left": { "front": "6 1/8", "behind": "6 1/8", "faceAngle": 8.4 } }; asbuilt --jig prints the sheet to read by',
    );
  for (const side of ["left", "right"] as const) {
    const missing = tellsNothing(setup, side);
    if (missing !== null)
      throw refuse(
        `asBuilt.${side}`,
        `has too few readings to tell anything of the knuckle; read ${missing.join(", ")} too`,
      );
  }
}

function notOnTheTruck({ file }: Truck, result: AsBuiltTruckResult): InputError {
  if (result.ok) throw new TypeError("notOnTheTruck: it goes on");
  const [issue] = result.issues;
  const mend = `the knuckle read there does not go on this truck: ${issue?.key}: ${issue?.mend}`;
  return new InputError([{ file, key: `asBuilt.${result.side}`, value: "", mend }]);
}
