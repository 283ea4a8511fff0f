import type { LengthUnit } from "../../setup/types/types.ts";
import { answerState, type Doubt, ofTheTruck } from "../../studies/doubts/doubt.ts";
import type { RollCoverage } from "../../studies/floor/rollCoverage.ts";
import type { Model } from "../../studies/model/model.ts";
import type { CheckReport } from "../../studies/reports/check.ts";
import { answerSentence } from "../../studies/wording/answerWords.ts";
import { CAUTIONS } from "../../studies/wording/cautions.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import {
  countedSentence,
  limitSentence,
  limitsPassedSentences,
} from "../../studies/wording/limitSentences.ts";
import { rollSentences } from "../../studies/wording/rollWords.ts";
import { verdictSentence } from "../../studies/wording/verdictSentence.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import {
  type Column,
  cutShortLine,
  gapCell,
  heading,
  lengthCell,
  pointCell,
  steerCell,
  textTable,
} from "./textTable.ts";

/** A check as a person reads it: the sentence first, under its conditions where inputs are in doubt, then every part. */
export function checkTable(
  report: CheckReport,
  model: Model,
  roll: RollCoverage | null = null,
  doubts: readonly Doubt[] = [],
): string {
  const { setup } = model;
  const format = formatOf(setup);
  const own = ofTheTruck(doubts);
  const blocks = [
    `${heading(setup)}\n${answerSentence(verdictSentence(report, model, format), answerState(report, own), own)}\n${cutShortLine("check", report)}`,
    report.limits.map((limit) => `${limitSentence(limit, model, format)}\n`).join(""),
    limitsPassedSentences(report.limitsPassed ?? [], model, format)
      .concat(countedSentence(report.limitsPassed, report.limitedBy))
      .map((line) => (line === "" ? "" : `${line}\n`))
      .join(""),
    partsTable(report, model),
    provenLine(report, setup.units),
    roll === null ? "" : `${rollSentences(roll, format).join("\n")}\n`,
    model.tire.cautions.map(({ key, mend }) => `Check ${key}: ${mend}.\n`).join(""),
    CAUTIONS,
  ];
  return blocks.filter((block) => block !== "").join("\n");
}

function partsTable(report: CheckReport, model: Model): string {
  if (report.parts.length === 0) return "";
  const { units } = model.setup;
  const format = formatOf(model.setup);
  const columns: Column[] = [
    { header: "Part", align: "left" },
    { header: "Side", align: "left" },
    { header: "Verdict", align: "left" },
    { header: `Gap (${units})`, align: "right" },
    { header: `Travel (${units})`, align: "right" },
    { header: "Steer (lock)", align: "right" },
    { header: `Point X, Y, Z (${units})`, align: "right" },
  ];
  const rows = report.parts.map((entry) => [
    entry.part,
    entry.side,
    entry.verdict,
    gapCell(entry.gap, format),
    // What rides together has its gap at every pose.
    entry.together ? "any" : lengthCell(entry.travel, format),
    entry.together ? "any" : steerCell(entry.steer),
    pointCell(entry.point, format),
  ]);
  return textTable(columns, rows);
}

/** How far a gap may be from the true worst one: as reached, not as asked for. */
function provenLine(report: CheckReport, units: LengthUnit): string {
  if (report.parts.length === 0) return "";
  const loosest = Math.max(...report.parts.map((entry) => entry.gap - entry.bound));
  const asked = Math.min(...report.parts.map((entry) => entry.tolerance));
  const words = (mm: number) => `${Number(unitsFromMm(mm, units).toPrecision(2))} ${units}`;
  const proven =
    loosest <= asked
      ? `no pose in range is worse by more than ${words(asked)}`
      : `a pose in range may be worse by up to ${words(loosest)}, more than the ${words(asked)} asked for`;
  const range = (report.limitedBy ?? []).length > 0 ? " within the limits" : "";
  return `Each gap is the worst over all travel and both locks${range}; ${proven}.\n`;
}
