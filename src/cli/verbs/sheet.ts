import { join } from "node:path";
import type { Command } from "commander";
import { drawnBytes } from "../../files/drawnBytes.ts";
import { documentText } from "../../studies/documents/documentText.ts";
import { sheetJson } from "../../studies/documents/sheetJson.ts";
import { shopDrawings } from "../../studies/drawings/shopDrawings.ts";
import { askedSheet, type SheetOptions } from "../asked/askedSheet.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget } from "../asked/readNumbers.ts";
import { readTruck, remarkUsualBuild } from "../asked/readTruck.ts";
import { withShared } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { writeSheets } from "../asked/writeSheets.ts";
import { sheetTable } from "../output/sheetTable.ts";

const EXAMPLES = `
Examples:
  wellsweep sheet truck.json --out drawings                      all of it, on letter paper (A4 for a setup in mm)
  wellsweep sheet truck.json --out drawings --paper tabloid --angle first
  wellsweep sheet truck.json --out drawings --kerf "0.06 in"     plates as a plasma cutter's middle goes

It writes the drawing sheet (PDF, SVG), the cut list (PDF, CSV), a notch template for each end that is notched (SVG 1:1, all as PDF on paper), plates
with their holes (DXF and SVG 1:1, all as PDF on paper) and the knuckle as a solid (STL and STEP in mm, GLB in meters). A file that
this program wrote is replaced, any other only with --force, and none that the run reads. All are written or none.

Exit codes: 0 written, 2 ${NO_ANSWER}.`;

/** `sheet`: what goes to the shop floor, as files in a folder. */
export function addSheet(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withShared(program.command("sheet"))
    .description("Writes drawings of the knuckle that the setup's build block describes, and lists them.")
    .option("--out <DIR>", "folder to write into; made if only it is missing")
    .option("--force", "replace files of those names that another program wrote")
    .option("--paper <NAME>", "letter, a4, tabloid or a3; default letter, a4 for a setup in mm")
    .option("--kerf <LEN>", "width of the cut: plates are drawn as the cutter's middle goes", "0")
    .option("--angle <WHICH>", "first or third: where the views of the drawing lie", "third")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: SheetOptions) => end(runSheet(file, options, terminal)));
}

function runSheet(file: string, options: SheetOptions, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  // Solves nothing that grows: the shortest budget does.
  askedBudget(truck.file, options, terminal);
  const ask = askedSheet(truck, options);
  const { setup } = truck.model;
  remarkUsualBuild(truck, terminal);
  const drawn = shopDrawings(setup, ask, truck.file);
  if (!drawn.ok) {
    const [first, ...rest] = drawn.issues;
    throw new InputError([first!, ...rest]);
  }
  const written = drawn.value.files.map((one) => ({
    ...one,
    file: join(ask.out, one.file),
    bytes: drawnBytes(one.contents),
  }));
  const told = options.json
    ? documentText(sheetJson(drawn.value, written, ask, setup.units), truck)
    : sheetTable(drawn.value, written, setup);
  writeSheets(truck, ask.out, options, written, "--out");
  terminal.writeOut(told);
  return ExitCode.Fine;
}
