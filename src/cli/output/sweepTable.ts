import type { RollRow } from "../../studies/curves/rollCurve.ts";
import type { SuspensionRow } from "../../studies/curves/suspensionRow.ts";
import type { WholeSweep, WorstRow } from "../../studies/curves/wholeSweep.ts";
import type { Model } from "../../studies/model/model.ts";
import type { ReachedRow, SweepRow } from "../../studies/reports/sweep.ts";
import { rateText } from "../../studies/wording/airWords.ts";
import { CAUTIONS } from "../../studies/wording/cautions.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { PAST_MARK, sweepSentence } from "../../studies/wording/sweepSentence.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { mmFromUnits } from "../../units/lengthUnits.ts";
import {
  cutShortLine,
  degreesCell,
  gapCell,
  heading,
  lengthCell,
  steerCell,
  textTable,
} from "./textTable.ts";

/** A sweep as a person reads it: by travel, what the suspension does there, and by steer, each for both sides; by body roll. */
export function sweepTable(sweep: WholeSweep, model: Model): string {
  const tables = [
    ...bothSides("By travel, steering straight ahead", (side) =>
      sideTable(sweep.byTravel, "travel", side, model),
    ),
    ...bothSides("Suspension by travel, steering straight ahead", (side) =>
      suspensionTable(sweep.suspension, side, model),
    ),
    ...bothSides("By steering at travel 0, + = left turn", (side) =>
      sideTable(sweep.bySteer, "steer", side, model),
    ),
    ...rollTable(sweep.byRoll, model),
    ...worstTable(sweep.worst, model),
  ];
  return [
    `${heading(model.setup)}\n${sweepSentence(sweep, model)}\n${cutShortLine("sweep", sweep)}`,
    ...tables,
    CAUTIONS,
  ].join("\n");
}

/** A table a side, or one for both where they read the same. */
function bothSides(title: string, table: (side: Side) => string): string[] {
  const [left, right] = [table("left"), table("right")];
  if (left === right) return [`${title}, either side\n${left}`];
  return [`${title}, left side\n${left}`, `${title}, right side\n${right}`];
}

/** What the linkage, air spring and shock do at each height. */
function suspensionTable(rows: readonly SuspensionRow[], side: Side, { setup }: Model): string {
  const { units, airSpring, limits } = setup;
  const format = formatOf(setup);
  const length = (mm: number | null | undefined) => (mm == null ? "-" : lengthCell(mm, format));
  const perUnit = (rate: number | undefined) =>
    rate === undefined ? "-" : degreesCell(rate * mmFromUnits(1, units));
  const ratio = (value: number | undefined) => value?.toFixed(3) ?? "-";
  const headers = [
    ...[`Travel (${units})`, `Camber (deg/${units})`, `Toe (deg/${units})`],
    ...[`Instant center Y (${units})`, `Z (${units})`, `Roll center height (${units})`],
    ...(airSpring === null ? [] : ["Spring ratio", "Wheel rate"]),
    ...(limits?.shock ? [`Shock (${units})`, `Shock travel (${units})`, "Shock ratio"] : []),
  ];
  const lines = rows.map(({ travel, rollCenter, [side]: at }) => [
    ...[lengthCell(travel, format), perUnit(at?.camberGain), perUnit(at?.toeGain)],
    ...[length(at?.instantCenter?.y), length(at?.instantCenter?.z), length(rollCenter?.height)],
    ...(airSpring === null
      ? []
      : [ratio(at?.spring?.motionRatio), rateText(at?.spring?.wheelRate ?? null, units)]),
    ...(limits?.shock
      ? [length(at?.shock?.length), length(at?.shock?.travel), ratio(at?.shock?.motionRatio)]
      : []),
  ]);
  return textTable(rightOf(headers), lines);
}

/** Where the roll center goes with the body; nothing where no row was come to. */
function rollTable(rows: readonly RollRow[], { setup }: Model): string[] {
  if (rows.length === 0) return [];
  const { units } = setup;
  const format = formatOf(setup);
  const headers = [
    ...["Roll (deg)", `Left travel (${units})`, `Right travel (${units})`],
    ...[`Roll center height (${units})`, `To the left (${units})`],
  ];
  const lines = rows.map(({ roll, travels, rollCenter }) => [
    ...[degreesCell(roll), lengthCell(travels.left, format), lengthCell(travels.right, format)],
    ...[
      rollCenter ? lengthCell(rollCenter.height, format) : "-",
      rollCenter ? lengthCell(rollCenter.y, format) : "-",
    ],
  ]);
  return [
    `By body roll at travel 0, + = left side up; the roll center off the truck's center plane\n${textTable(rightOf(headers), lines)}`,
  ];
}

/** Where each part comes nearest, travel and steering together; nothing where there is no part. */
function worstTable(rows: readonly WorstRow[], { setup }: Model): string[] {
  if (rows.length === 0) return [];
  const { units } = setup;
  const format = formatOf(setup);
  const lines = rows.map(({ part, side, row }) => {
    const gap = row.ok ? row.gaps.find((entry) => entry.part === part && entry.side === side) : undefined;
    return [
      ...[part, side, lengthCell(row.travel, format), steerCell(row.steer)],
      gap === undefined ? "-" : gapCell(gap.gap, format),
    ];
  });
  const columns = [
    { header: "Part", align: "left" },
    { header: "Side", align: "left" },
    ...rightOf([`Travel (${units})`, "Steer (lock)", `Gap (${units})`]),
  ] as const;
  const soFar = rows.some(({ isSoFar }) => isSoFar) ? ", so far as it was searched" : "";
  return [`Where each part comes nearest of all poses${soFar}\n${textTable(columns, lines)}`];
}

function rightOf(headers: readonly string[]) {
  return headers.map((header) => ({ header, align: "right" }) as const);
}

function sideTable(rows: readonly SweepRow[], along: "travel" | "steer", side: Side, model: Model): string {
  const { units } = model.setup;
  const format = formatOf(model.setup);
  const parts = model.pairs.filter((pair) => pair.side === side).map((pair) => pair.name);
  const headers = [
    along === "travel" ? `Travel (${units})` : "Steer (lock)",
    "Camber (deg)",
    along === "travel" ? "Toe (deg)" : "Steered (deg)",
    "Caster (deg)",
    "Kingpin (deg)",
    `Scrub (${units})`,
    `Trail (${units})`,
    `Half track (${units})`,
    `Center Z (${units})`,
    ...parts.map((part) => `${part} (${units})`),
  ];
  const cells = (row: ReachedRow) => {
    const wheel = row[side];
    return [
      degreesCell(wheel.camber),
      degreesCell(along === "travel" ? wheel.toe : wheel.steerAngle),
      degreesCell(wheel.caster),
      degreesCell(wheel.kingpinInclination),
      lengthCell(wheel.scrubRadius, format),
      lengthCell(wheel.mechanicalTrail, format),
      lengthCell(wheel.halfTrack, format),
      lengthCell(wheel.wheelCenter[2], format),
      ...row.gaps.filter((entry) => entry.side === side).map((entry) => gapCell(entry.gap, format)),
    ];
  };
  const lines = rows.map((row) => [
    `${row.ok && row.past.length > 0 ? PAST_MARK : ""}${along === "travel" ? lengthCell(row.travel, format) : steerCell(row.steer)}`,
    ...(row.ok ? cells(row) : headers.slice(1).map(() => "-")),
  ]);
  return textTable(rightOf(headers), lines);
}
