import type { Command } from "commander";
import { checkJson } from "../../studies/documents/checkJson.ts";
import { documentText } from "../../studies/documents/documentText.ts";
import { rollCoverage } from "../../studies/floor/rollCoverage.ts";
import { type CheckReport, checkClearance, DEFAULT_TOLERANCE } from "../../studies/reports/check.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget, readLength } from "../asked/readNumbers.ts";
import { readTruck, type Truck } from "../asked/readTruck.ts";
import { type AlignedOptions, withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { checkTable } from "../output/checkTable.ts";

interface CheckOptions extends AlignedOptions {
  readonly tolerance?: string;
}

/** mm. Finer than this the search ends in rounding, not in an answer. */
const LEAST_TOLERANCE = 0.001;

const EXAMPLES = `
Examples:
  wellsweep check truck.json                               rubs, close or clear, and where
  wellsweep check truck.json --variant "narrow hub face"   the same with one of the file's variants
  wellsweep check truck.json --aligned                     as aligned to the setup's targets
  wellsweep check truck.json --json --tolerance "0.05 mm"  for a program, proven finer

Exit codes: 0 clear or close, 1 something rubs or a limit is passed, 2 ${NO_ANSWER}.`;

/** `check`: the worst of every part over all travel and both locks. */
export function addCheck(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withAligned(program.command("check"))
    .description("What touches what over all travel and both locks: the worst gap of every part, proven.")
    .option("--tolerance <LEN>", "how far the proven bound may stay below the gap; default 0.1 mm")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: CheckOptions) => end(runCheck(file, options, terminal)));
}

function runCheck(file: string, options: CheckOptions, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { model } = truck;
  const tolerance = askedTolerance(truck, options);
  const budget = askedBudget(truck.file, options, terminal);
  const report = checkClearance(model, { tolerance, budget });
  const roll = rollCoverage(model);
  terminal.writeOut(
    options.json
      ? documentText(checkJson(report, model.setup.units, roll), truck)
      : checkTable(report, model, roll, truck.unusual),
  );
  return exitCodeOf(report);
}

function exitCodeOf(report: CheckReport): ExitCode {
  return report.verdict === "rubs" || report.limits.length > 0 || (report.limitsPassed ?? []).length > 0
    ? ExitCode.Rubs
    : ExitCode.Fine;
}

function askedTolerance({ file, model }: Truck, { tolerance }: CheckOptions): number {
  if (tolerance === undefined) return DEFAULT_TOLERANCE;
  const place = { file, option: "--tolerance", value: tolerance };
  const mm = readLength(tolerance, model.setup.units, place);
  if (mm >= LEAST_TOLERANCE) return mm;
  throw InputError.ofOption(file, "--tolerance", tolerance, `must be at least ${LEAST_TOLERANCE} mm`);
}
