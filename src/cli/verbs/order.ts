import { dirname, resolve } from "node:path";
import type { Command } from "commander";
import { documentText as setupText } from "../../setup/documentText.ts";
import { editShown } from "../../setup/editing/editShown.ts";
import { documentText } from "../../studies/documents/documentText.ts";
import { orderJson } from "../../studies/documents/orderJson.ts";
import { type OrderSheet, orderSheet } from "../../studies/order/orderSheet.ts";
import { writeOrder } from "../../studies/order/writeOrder.ts";
import { meshesStayMend } from "../../studies/wording/fileMends.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { orderIssue } from "../../studies/wording/orderMends.ts";
import { askedCatalogs } from "../asked/askedCatalogs.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget } from "../asked/readNumbers.ts";
import { readTruck, type Truck } from "../asked/readTruck.ts";
import { type CatalogOptions, type SharedOptions, withCatalogs, withShared } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { checkOutFiles, writeFiles } from "../disk/writeFiles.ts";
import { orderTable } from "../output/orderTable.ts";

interface OrderOptions extends SharedOptions, CatalogOptions {
  readonly write?: string;
  readonly force?: true;
}

const EXAMPLES = `
Examples:
  wellsweep order truck.json                                 the order sheet
  wellsweep order truck.json --write made.json               a copy whose knuckle, wheel and hardware are as ordered
  wellsweep order truck.json --catalog our-brakes.json --json

Every other verb goes by the knuckle, wheel and hardware blocks; the order only writes them. The sheet says where they
disagree. An order whose parts do not go together gives no sheet.

Exit codes: 0 the sheet, 2 ${NO_ANSWER}, or parts that do not go together.`;

/** `order`: the order sheet of a drop knuckle, and the setup with its blocks as ordered. */
export function addOrder(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withCatalogs(withShared(program.command("order")), "ball joints, brakes or hub sets")
    .description("The order sheet of a drop knuckle: what is made, to what measures, and what it goes with.")
    .option("--write <OUT>", "setup file to write, its knuckle, wheel and hardware as ordered")
    .option("--force", "replace a file of that name")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: OrderOptions) => end(runOrder(file, options, terminal)));
}

function runOrder(file: string, options: OrderOptions, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { file: name, model } = truck;
  const { setup } = model;
  // Solves a few poses: the shortest budget does.
  askedBudget(name, options, terminal);
  const catalogs = askedCatalogs(["ballJoints", "brakes", "hubs"], options.catalog ?? [], truck.inputs);
  const sheet = orderSheet(setup, catalogs, name);
  if (sheet === null) throw InputError.ofFile(name, "has no order block; add one to ask for its sheet");
  const [first, ...rest] = sheet.misfits.map((misfit) => orderIssue(misfit, name, formatOf(setup)));
  if (first) throw new InputError([first, ...rest]);
  const { write = null } = options;
  const told = options.json
    ? documentText(write === null ? orderJson(sheet) : { ...orderJson(sheet), written: write }, truck)
    : orderTable(sheet, write);
  if (write !== null) {
    refuseElsewhere(truck, file, write);
    writeSetup(truck, sheet, write, options);
  }
  terminal.writeOut(told);
  return ExitCode.Fine;
}

/** Mesh files are named from the setup's folder: a copy elsewhere would not find them. @param typed the setup as typed */
function refuseElsewhere({ file, document }: Truck, typed: string, out: string): void {
  const named = (document.truck.body ?? []).flatMap((part) =>
    "file" in part && part.file ? [part.file] : [],
  );
  const folder = typed === "-" ? resolve(".") : dirname(resolve(typed));
  if (named.length === 0 || dirname(resolve(out)) === folder) return;
  throw InputError.ofOption(file, "--write", out, meshesStayMend(named));
}

function writeSetup(
  { file, document, inputs }: Truck,
  { fields, setup }: OrderSheet,
  out: string,
  { variant, force }: OrderOptions,
): void {
  const written = editShown(document, variant ?? null, (shown) => writeOrder(shown, fields, setup.units));
  const rules = { inputs, force: force === true };
  const refuse = (_: string, mend: string) => InputError.ofOption(file, "--write", out, mend);
  checkOutFiles([out], rules, refuse);
  writeFiles([{ file: out, bytes: new TextEncoder().encode(setupText(written)) }], rules, refuse);
}
