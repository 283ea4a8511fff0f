import type { LengthUnit, Setup } from "../../setup/types/types.ts";
import type { OddsInput } from "../../studies/odds/oddsInputs.ts";
import type { OddsReport } from "../../studies/odds/oddsOf.ts";
import { CAUTIONS } from "../../studies/wording/cautions.ts";
import {
  againSentence,
  matterRows,
  type OddsSpeech,
  oddsNotes,
  oddsSentence,
} from "../../studies/wording/oddsWords.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { cutShortLine } from "./cutShortLine.ts";
import { type Column, heading, textTable } from "./textTable.ts";

/**
 * Odds as `odds --json` prints them: lengths in the file's units, angles in degrees; shares 0 … 1. `open` draws are counted as
 * touching in `clears` and `low`, as clear in `high`; `apart` ones as touching.
 */
export function oddsJson(report: OddsReport, units: LengthUnit) {
  const { clears, low, high, confidence, draws, seed, gap, open, apart, matters, inputs, leftOut } = report;
  return {
    units,
    clears,
    low,
    high,
    confidence,
    draws,
    seed,
    ...(report.cutShort ? { cutShort: true } : {}),
    gap: unitsFromMm(gap, units),
    open,
    apart,
    matters,
    inputs: inputs.map((input) => ({ field: input.key, within: withinOf(input, units), from: input.source })),
    leftOut,
  };
}

function withinOf({ kind, within }: OddsInput, units: LengthUnit): number {
  return kind === "angle" ? degFromRad(within) : unitsFromMm(within, units);
}

const COLUMNS: readonly Column[] = [
  { header: "What matters", align: "left" },
  { header: "Known to", align: "left" },
  { header: "By", align: "left" },
  { header: "Share", align: "right" },
  { header: "Twice as well, clears", align: "right" },
];

/** Odds as a person reads them: the sentence, what to measure again, what matters. */
export function oddsTable(report: OddsReport, setup: Setup, speech: OddsSpeech): string {
  const again = againSentence(report, speech);
  const said = [oddsSentence(report), ...(again === null ? [] : [again])];
  const rows = matterRows(report, speech).map(({ name, within, source, shareText, again: then }) => [
    name,
    within,
    source,
    shareText,
    then,
  ]);
  return [
    `${heading(setup)}\n${said.join("\n")}\n${cutShortLine("odds", report)}`,
    ...(rows.length > 0 ? [textTable(COLUMNS, rows)] : []),
    `${oddsNotes(report, speech).join("\n")}\n`,
    CAUTIONS,
  ].join("\n");
}
