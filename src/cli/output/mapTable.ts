import type { ClearanceMap } from "../../studies/map/clearanceMap.ts";
import type { MapReport } from "../../studies/map/mapReport.ts";
import type { NoLimits, TurnLimits } from "../../studies/map/steerLimits.ts";
import type { Model } from "../../studies/model/model.ts";
import { CAUTIONS } from "../../studies/wording/cautions.ts";
import { gapWord } from "../../studies/wording/gapTexts.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { limitSentence } from "../../studies/wording/limitSentences.ts";
import { mapSentence } from "../../studies/wording/mapSentence.ts";
import { lowStop, steerStop } from "../../studies/wording/stopFacts.ts";
import { stopCell } from "../../studies/wording/stopTexts.ts";
import { jointOf } from "../../suspension/poseStatus.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { TAPE_MARK } from "../../units/lengthUnits.ts";
import { type Column, cutShortLine, gapCell, heading, lengthCell, textTable } from "./textTable.ts";

/** A map as a person reads it: the sentence first, then the map of the worse wheel, then both curves. */
export function mapTable(report: MapReport, model: Model): string {
  const { setup } = model;
  const format = formatOf(setup);
  const blocks = [
    `${heading(setup)}\n${mapSentence(report, model)}\n${cutShortLine("map", report)}`,
    report.limits.map((limit) => `${limitSentence(limit, model, format)}\n`).join(""),
    alwaysLines(report, format),
    model.pairs.length === 0 ? "Nothing is measured: the setup has no parts.\n" : textMap(report, model),
    `How far it steers at each height, either wheel\n${steerTable(report, model)}`,
    `How low it goes at each steering input, either wheel, from travel 0 (from full droop where 0 is too near)\n${lowestTable(report, model)}`,
    "Cells are single poses. The two tables skip no pose along their rows; check looks at every pose.\n",
    CAUTIONS,
  ];
  return blocks.filter((block) => block !== "").join("\n");
}

function alwaysLines({ always }: MapReport, format: LengthFormat): string {
  return always
    .map(
      ({ part, side, gap }) =>
        `At every pose: ${part} on the ${side}, gap ${gapCell(gap, format)} ${format.units}.\n`,
    )
    .join("");
}

/** Marks stand beside the number, so that none is told by color. */
const MARKS = {
  rubs: "x",
  close: "~",
  clear: " ",
  pastLimit: "!",
  outOfReach: "--",
  notLookedAt: "?",
} as const;

/** Bump on top as on the truck, right lock on the left as the numbers run. */
function textMap({ map }: MapReport, model: Model): string {
  const { units, allowance } = model.setup;
  const format = formatOf(model.setup);
  const step = TAPE_MARK[units];
  const cols = map.steers.length;
  const columns: Column[] = [
    { header: `Travel (${units})`, align: "right" },
    ...[...map.steers].map((steer) => ({ header: `${percent(steer)} `, align: "right" }) as const),
  ];
  const rows = [...map.travels].map((travel, row) => [
    lengthCell(travel, format),
    ...[...map.steers].map((_, col) => {
      const cell = row * cols + col;
      const gap = Math.min(map.left.gap[cell]!, map.right.gap[cell]!);
      if (Number.isNaN(gap)) return `${map.reach.status[cell] === 0 ? MARKS.notLookedAt : MARKS.outOfReach} `;
      const mark = MARKS[gapWord(gap, allowance)];
      const past = (map.pastLimit?.passed[cell] ?? -1) < 0 ? "" : MARKS.pastLimit;
      return Number.isFinite(gap) ? `${past}${Math.round(gap / step) + 0}${mark}` : `${past} `;
    }),
  ]);
  const unit = units === "in" ? "sixteenths of an inch" : "millimeters";
  const asked = formatLength(allowance, format);
  return [
    `Worst gap in ${unit}, the worse of both wheels, by travel and steering input in % of lock (+ = left turn)`,
    `${MARKS.rubs} rubs, ${MARKS.close} nearer than ${asked}, ${MARKS.outOfReach} out of reach${pastWords(map)}`,
    textTable(columns, rows.reverse()).replace(/ +$/gm, ""),
  ].join("\n");
}

/** Names what the marked cells pass, each once. */
function pastWords({ pastLimit }: ClearanceMap): string {
  if (pastLimit === null || pastLimit.limits.length === 0) return "";
  const names = [...new Set(pastLimit.limits.map(({ name }) => name))];
  return `, ${MARKS.pastLimit} past a limit (${names.join("; ")})`;
}

function steerTable({ steerAtHeight }: MapReport, model: Model): string {
  const { units } = model.setup;
  const format = formatOf(model.setup);
  const keeps = `Keeps ${formatLength(model.setup.allowance, format)} to`;
  const columns: Column[] = [
    { header: `Travel (${units})`, align: "right" },
    { header: "Left turn touches at", align: "left" },
    { header: keeps, align: "left" },
    { header: "Right turn touches at", align: "left" },
    { header: keeps, align: "left" },
  ];
  const turn = ({ touch, allowance }: TurnLimits, travel: number) =>
    [touch, allowance].map(({ either }) => {
      const stop = steerStop(either, travel, model);
      return stopCell(stop, `${stop.percent}%`, "lock");
    });
  const rows = steerAtHeight.map((row) => [
    lengthCell(row.travel, format),
    ...(row.ok
      ? [...turn(row.leftTurn, row.travel), ...turn(row.rightTurn, row.travel)]
      : [unreachedCell(row)]),
  ]);
  return textTable(columns, rows.reverse());
}

function lowestTable({ lowestAtSteer }: MapReport, model: Model): string {
  const { units, allowance } = model.setup;
  const format = formatOf(model.setup);
  const columns: Column[] = [
    { header: "Steer (lock)", align: "right" },
    { header: `Touches at travel (${units})`, align: "left" },
    { header: `Keeps ${formatLength(allowance, format)} to`, align: "left" },
  ];
  const rows = lowestAtSteer.map((row) => [
    `${percent(row.steer)}%`,
    ...(row.ok
      ? [row.touch, row.allowance].map((way) => {
          const stop = lowStop(way, row.steer, model, format);
          return stopCell(stop, lengthCell(stop.travel, format), "full bump");
        })
      : [unreachedCell(row)]),
  ]);
  return textTable(columns, rows);
}

/** Whole percent of lock, the same to either side. */
function percent(steer: number): string {
  return String(Math.sign(steer) * Math.round(100 * Math.abs(steer)) + 0);
}

function unreachedCell({ side, status }: NoLimits): string {
  return `out of reach: ${side} ${jointOf(status)}`;
}
