import type { Command } from "commander";
import { effectiveDocument, withoutVariants } from "../../setup/editing/effectiveDocument.ts";
import { changeOf } from "../../studies/change/changeOf.ts";
import { EFFORT, TRIM } from "../../studies/change/effort.ts";
import { changeJson } from "../../studies/documents/changeJson.ts";
import { documentText } from "../../studies/documents/documentText.ts";
import { windowField } from "../../studies/window/windowField.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { nearestWord } from "../../units/words.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget } from "../asked/readNumbers.ts";
import { readTruck } from "../asked/readTruck.ts";
import { type AlignedOptions, withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { changeTable } from "../output/changeTable.ts";

interface AskedChange extends AlignedOptions {
  readonly fields?: string;
}

const EXAMPLES = `
Examples:
  wellsweep change truck.json --budget 60                           the smallest change of each field that makes it clear
  wellsweep change truck.json --fields wheel.backspacing,trim       only these, in this order of effort
  wellsweep change truck.json --fields knuckle.hubFace --json       for a program

Without --fields these are tried, least effort first (common practice, no source):
${EFFORT.map((key) => `  ${key}`).join("\n")}

Exit codes: 0 it clears already, 1 it does not, 2 ${NO_ANSWER}.`;

/** `change`: what would make a truck clear. */
export function addChange(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withAligned(program.command("change"))
    .description(
      "The smallest change of each field that makes the truck clear, least effort first, and what else it moves.",
    )
    .option(
      "--fields <KEYS>",
      "lengths and angles that may change, and trim, with commas between, least effort first",
    )
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: AskedChange) => end(runChange(file, options, terminal)));
}

function runChange(file: string, options: AskedChange, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { document, model } = truck;
  const { setup } = model;
  const variant = options.variant ?? null;
  const shown = variant === null ? withoutVariants(document) : effectiveDocument(document, variant);
  const subject = {
    document: shown,
    setup,
    file: truck.file,
    isAligned: options.aligned === true,
  };
  const order = options.fields === undefined ? EFFORT : askedFields(options.fields, subject);
  const budget = askedBudget(truck.file, options, terminal);
  const report = changeOf(subject, model, { order, budget });
  const speech = {
    format: formatOf(setup),
    document: shown,
    allowance: setup.allowance,
  };
  terminal.writeOut(
    options.json ? documentText(changeJson(report, setup.units), truck) : changeTable(report, setup, speech),
  );
  return report.verdict === "clear" ? ExitCode.Fine : ExitCode.Rubs;
}

/** @throws InputError for the first that is no length, angle or `trim` */
function askedFields(
  text: string,
  { document, setup, file }: Parameters<typeof changeOf>[0],
): readonly string[] {
  const keys = text
    .split(",")
    .map((key) => key.trim())
    .filter((key) => key !== "");
  if (keys.length === 0)
    throw InputError.ofOption(file, "--fields", text, "names no field; name some, such as wheel.backspacing");
  for (const key of keys) {
    if (key === TRIM) continue;
    const found = windowField(document, setup, key, file);
    if (found.ok) continue;
    const near = nearestWord(key, [...EFFORT]);
    throw InputError.ofOption(
      file,
      "--fields",
      key,
      near === null ? found.issues[0]!.mend : `${found.issues[0]!.mend}; or ${near}`,
    );
  }
  return keys;
}
