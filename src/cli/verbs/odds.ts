import type { Command } from "commander";
import { effectiveDocument, withoutVariants } from "../../setup/editing/effectiveDocument.ts";
import { documentText } from "../../studies/documents/documentText.ts";
import { oddsJson } from "../../studies/documents/oddsJson.ts";
import {
  DEFAULT_DRAWS,
  DEFAULT_SEED,
  MOST_DRAWS,
  type OddsOptions,
  type OddsReport,
  oddsOf,
  oddsTogether,
} from "../../studies/odds/oddsOf.ts";
import type { TruckToVary } from "../../studies/window/truckOverField.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { parseNumber } from "../../units/parseNumber.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget, askedSeconds, readWhole } from "../asked/readNumbers.ts";
import { readTruck } from "../asked/readTruck.ts";
import { type AlignedOptions, withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { oddsTable } from "../output/oddsTable.ts";

interface AskedOdds extends AlignedOptions {
  readonly draws: string;
  readonly seed: string;
  readonly within?: string;
  readonly allowance?: boolean;
  readonly atLeast?: string;
}

const EXAMPLES = `
A number says how well it is known after ±, what it is off by less than two times in three: "5 5/8 ± 1/16". The odds
block of the setup says it for tires, for the knuckle as built and for all points at once.

Examples:
  wellsweep odds truck.json                      how likely it clears, and what to measure again
  wellsweep odds truck.json --allowance          how likely it keeps the allowance everywhere
  wellsweep odds truck.json --within 0.02        stops once the share is known to 2 of 100 either way
  wellsweep odds truck.json --at-least 0.9       exit 1 unless it is sure to clear nine times in ten

Exit codes: 0 fine, 1 less sure than --at-least asks, 2 ${NO_ANSWER}.`;

/** `odds`: how likely the truck clears, by how well its numbers are known. */
export function addOdds(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withAligned(program.command("odds"))
    .description(
      "How likely everything clears over all travel and both locks, by how well each number is known; what matters most, and what to measure again.",
    )
    .option("--draws <N>", "trucks to draw", String(DEFAULT_DRAWS))
    .option(
      "--seed <S>",
      "whole number; the same one gives the same figure on any machine",
      String(DEFAULT_SEED),
    )
    .option("--within <SHARE>", "stop once the share is known this well either way, such as 0.02")
    .option("--allowance", "what clears keeps the allowance; default: nothing touches")
    .option("--at-least <SHARE>", "exit 1 where the share may be less than this, such as 0.9")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: AskedOdds) => end(runOdds(file, options, terminal)));
}

function runOdds(file: string, options: AskedOdds, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { model, document } = truck;
  const { setup } = model;
  const place = (option: string, value: string) => ({ file: truck.file, option, value });
  const share = (option: string, value: string): number => {
    const read = parseNumber(value);
    if (read.ok && read.value > 0 && read.value < 1) return read.value;
    throw InputError.ofOption(truck.file, option, value, "must be a share between 0 and 1, such as 0.9");
  };
  const atLeast = options.atLeast === undefined ? null : share("--at-least", options.atLeast);
  const variant = options.variant ?? null;
  const shown = variant === null ? withoutVariants(document) : effectiveDocument(document, variant);
  const asked: OddsOptions = {
    draws: readWhole(options.draws, 1, MOST_DRAWS, place("--draws", options.draws)),
    seed: readWhole(options.seed, 0, 2 ** 31 - 1, place("--seed", options.seed)),
    gap: options.allowance === true ? setup.allowance : 0,
    ...(options.within === undefined ? {} : { within: share("--within", options.within) }),
  };
  const subject = { document: shown, setup, file: truck.file, isAligned: options.aligned === true };
  const report = drawn(subject, asked, options, terminal);
  const speech = { format: formatOf(setup), document: shown, setup };
  terminal.writeOut(
    options.json ? documentText(oddsJson(report, setup.units), truck) : oddsTable(report, setup, speech),
  );
  return atLeast !== null && report.low < atLeast ? ExitCode.Rubs : ExitCode.Fine;
}

/** Draws below which starting threads takes longer than they save. */
const FEW_DRAWS = 400;

/** By several threads where there are some; which draws are precise enough only the run of all in their order tells. */
function drawn(subject: TruckToVary, asked: OddsOptions, options: AskedOdds, terminal: Terminal): OddsReport {
  const { shareOut, showProgress } = terminal;
  const onProgress = (share: number) => showProgress?.(`${Math.floor(100 * share)}% of the draws`);
  const { draws = DEFAULT_DRAWS, within } = asked;
  const isShared = shareOut !== undefined && within === undefined && draws >= FEW_DRAWS;
  const report = isShared
    ? oddsTogether(
        subject,
        shareOut("odds", { subject, options: asked }, askedSeconds(subject.file, options), onProgress),
        asked,
      )
    : oddsOf(subject, { ...asked, budget: askedBudget(subject.file, options, terminal), onProgress });
  showProgress?.("");
  return report;
}
