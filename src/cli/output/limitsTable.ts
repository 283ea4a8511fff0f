import { KEPT } from "../../studies/limits/frontEndLimit.ts";
import type { LimitBorder } from "../../studies/limits/limitBorders.ts";
import type { LimitPose, LimitStance, LimitsReport, ReachableRegion } from "../../studies/limits/limitsOf.ts";
import { isPassed, type LimitOverRange } from "../../studies/limits/limitsPassed.ts";
import type { Model } from "../../studies/model/model.ts";
import { LIMIT_CAUTIONS } from "../../studies/wording/cautions.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { limitsState } from "../../studies/wording/limitRows.ts";
import { limitsPassedSentences, marginWords } from "../../studies/wording/limitSentences.ts";
import { limitsStateSentence } from "../../studies/wording/limitTexts.ts";
import { borderAt, borderCell } from "../../studies/wording/stopTexts.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { cutShortLine, heading, lengthCell, steerCell, textTable } from "./textTable.ts";

/** Limits listed at each stance and steer: the rest have more in hand. */
const MOST_RANKED = 4;

/** The limits as a person reads them: what is passed first, then each limit, each stance, and the region. */
export function limitsTable(report: LimitsReport, model: Model): string {
  const format = formatOf(model.setup);
  if (report.overall.length === 0) {
    return `${heading(model.setup)}\nThe setup gives no limits: add a limits or airSpring block.\n\n${LIMIT_CAUTIONS}`;
  }
  return [
    `${heading(model.setup)}\n${headline(report, model, format)}${cutShortLine("limits", report)}`,
    overallTable(report.overall, model, format),
    provenLine(report),
    ...report.stances.map((stance) => stanceBlock(stance, model, format)),
    regionBlock(report.region, model, format),
    report.notChecked.length > 0 ? `Not checked: ${report.notChecked.join(", ")}.\n` : "",
    LIMIT_CAUTIONS,
  ]
    .filter((block) => block !== "")
    .join("\n");
}

function headline(report: LimitsReport, model: Model, format: LengthFormat): string {
  const sentence = limitsStateSentence(limitsState(report));
  if (sentence !== "") return `${sentence}\n`;
  return limitsPassedSentences(report.overall.filter(isPassed), model, format)
    .map((line) => `${line}\n`)
    .join("");
}

/** How far each margin is proven. */
function provenLine({ overall }: LimitsReport): string {
  const whole = `What is in hand is the least over all travel and both locks, proven to 0.01° or 0.05 mm${provenExcept(overall)}`;
  const open = [...new Set(overall.filter(({ cutShort }) => cutShort).map(({ name }) => name))];
  if (open.length === 0) return `${whole}.\n`;
  return `${whole}; but of ${open.join(", ")} it is the least found in the time allowed, and some pose may have less.\n`;
}

function provenExcept(overall: readonly LimitOverRange[]): string {
  return overall.some(({ atBorder }) => atBorder)
    ? ", except within a thousandth of the range of where the linkage itself runs out of reach"
    : "";
}

function overallTable(overall: readonly LimitOverRange[], model: Model, format: LengthFormat): string {
  const { units } = model.setup;
  const columns = [
    { header: "Limit", align: "left" },
    { header: "Side", align: "left" },
    { header: "Least in hand", align: "right" },
    { header: "Of its range", align: "right" },
    { header: `Travel (${units})`, align: "right" },
    { header: "Steer (lock)", align: "right" },
  ] as const;
  const rows = [...overall]
    .sort((a, b) => a.margin / a.range - b.margin / b.range)
    .map(({ name, side, margin, measure, range, travel, steer }) => [
      name,
      side,
      marginCell(margin, measure, format),
      shareCell(margin / range),
      lengthCell(travel, format),
      steerCell(steer),
    ]);
  return textTable(columns, rows);
}

function stanceBlock(
  { name, travel, poses, first }: LimitStance,
  model: Model,
  format: LengthFormat,
): string {
  const { units } = model.setup;
  const title = `At the “${name}” stance, travel ${lengthCell(travel, format)} ${units}; least in hand first:`;
  const lines = poses.map((pose) => `  ${STEERS[String(pose.steer)]}: ${rankedWords(pose, format)}`);
  const met =
    first === null
      ? ""
      : `  met first: lower, ${borderWords(first.bump, "travel", travel, format)}; higher, ${borderWords(first.droop, "travel", travel, format)}; steering left, ${borderWords(first.left, "steer", 0, format)}; right, ${borderWords(first.right, "steer", 0, format)}\n`;
  return `${title}\n${lines.join("\n")}\n${met}`;
}

/** Percent: what is kept to the last bit but rounding must not read -1%. */
const ROUNDING = 1e-4;

const STEERS: Readonly<Record<string, string>> = {
  "0": "straight ahead",
  "1": "full left lock",
  "-1": "full right lock",
};

function rankedWords(pose: LimitPose, format: LengthFormat): string {
  if (!pose.ok) return `out of reach of the ${pose.side} ${pose.joint}`;
  return pose.margins
    .slice(0, MOST_RANKED)
    .map(
      ({ side, name, margin, measure, share }) =>
        `${side} ${name} ${marginCell(margin, measure, format)} (${shareCell(share)})`,
    )
    .join("; ");
}

function regionBlock({ atHeights, atSteers }: ReachableRegion, model: Model, format: LengthFormat): string {
  const { units } = model.setup;
  const heights = textTable(
    [
      { header: `Travel (${units})`, align: "right" },
      { header: "Steers right to", align: "left" },
      { header: "Steers left to", align: "left" },
    ],
    atHeights.map(({ travel, blocked, left, right }) => [
      lengthCell(travel, format),
      blocked ? `not here: ${blocked.side} ${blocked.name}` : borderWords(right, "steer", 0, format),
      blocked ? "" : borderWords(left, "steer", 0, format),
    ]),
  );
  const steers = textTable(
    [
      { header: "Steer (lock)", align: "right" },
      { header: `Goes down to (${units} of travel)`, align: "left" },
      { header: `Goes up to (${units} of travel)`, align: "left" },
    ],
    atSteers.map(({ steer, blocked, bump, droop }) => [
      steerCell(steer),
      blocked
        ? `not here: ${blocked.side} ${blocked.name}`
        : bump
          ? borderWords(bump, "travel", 0, format)
          : "out of reach",
      droop ? borderWords(droop, "travel", 0, format) : "",
    ]),
  );
  return `What can be reached, and what sets each end (proven along each row; between rows nothing is claimed):\n${heights}\n${steers}`;
}

/** @param from where the way starts, mm or steer */
function borderWords(
  border: LimitBorder,
  along: "travel" | "steer",
  from: number,
  format: LengthFormat,
): string {
  const told = borderAt(border, along, from, format);
  return along === "travel"
    ? borderCell(border, lengthCell(told, format), "end of travel")
    : borderCell(border, steerCell(told), "full lock");
}

function marginCell(margin: number, measure: "length" | "angle", format: LengthFormat): string {
  if (Math.abs(margin) <= KEPT) return "0";
  return `${margin < 0 ? "-" : ""}${marginWords(margin, measure, format)}`;
}

function shareCell(share: number): string {
  return `${Math.floor(100 * share + ROUNDING) + 0}%`;
}
