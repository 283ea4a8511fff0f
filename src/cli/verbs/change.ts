import type { Command } from "commander";
import { effectiveDocument, withoutVariants } from "../../setup/editing/effectiveDocument.ts";
import { changeField, EFFORT, TRIM } from "../../studies/change/changeField.ts";
import { changeOf } from "../../studies/change/changeOf.ts";
import { changeJson } from "../../studies/documents/changeJson.ts";
import { documentText } from "../../studies/documents/documentText.ts";
import { writtenJson } from "../../studies/documents/sheetJson.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { assumedTrimSentence } from "../../studies/wording/standingDoubts.ts";
import { nearestWord } from "../../units/words.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget } from "../asked/readNumbers.ts";
import { readTruck } from "../asked/readTruck.ts";
import { type AlignedOptions, withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { writeSheets } from "../asked/writeSheets.ts";
import { changeTable } from "../output/changeTable.ts";
import { requireTrimmable, type TrimAsk, trimTemplates } from "../output/trimTemplates.ts";

interface AskedChange extends AlignedOptions, TrimAsk {
  readonly fields?: string;
}

const EXAMPLES = `
Examples:
  wellsweep change truck.json --budget 60                           the smallest change of each field that makes it clear
  wellsweep change truck.json --fields wheel.backspacing,trim       only these, in this order of effort
  wellsweep change truck.json --fields knuckle.hubFace --json       for a program
  wellsweep change truck.json --fields trim --trim templates        what a panel loses, as templates 1:1 in a folder

--trim writes what tire and rim, with the allowance about them, take of a body part at every pose that counts: a template a panel and
side as SVG and DXF, and all as PDF on paper with a bar to measure. A file that this program wrote is replaced, any other only with
--force, and none that the run reads.

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
      "lengths and angles that may change, spacer and trim, with commas between, least effort first",
    )
    .option("--trim <DIR>", "folder to write trim templates into; made if only it is missing")
    .option("--part <NAME>", "the body part to trim; default the one that is nearest")
    .option("--paper <NAME>", "letter, a4, tabloid or a3; default letter, a4 for a setup in mm")
    .option("--force", "replace files of those names that another program wrote")
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
  if (options.trim !== undefined && options.part !== undefined)
    requireTrimmable(truck, options, options.part);
  const report = changeOf(subject, model, { order, budget });
  const speech = {
    format: formatOf(setup),
    document: shown,
    allowance: setup.allowance,
    isAssumed: (part: string) => assumedTrimSentence(part, setup, shown),
  };
  const trimmed = options.trim === undefined ? null : trimTemplates(truck, report, options, budget);
  const told = options.json
    ? documentText(
        {
          ...changeJson(report, setup.units),
          ...(trimmed === null ? {} : { files: writtenJson(trimmed) }),
        },
        truck,
      )
    : changeTable(report, setup, speech, trimmed ?? []);
  if (trimmed !== null) writeSheets(truck, options.trim!, options, trimmed, "--trim");
  terminal.writeOut(told);
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
    const found = changeField(document, setup, key, file);
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
