import type { Model } from "../../studies/model/model.ts";
import type { ReachedRow, Sweep, SweepRow } from "../../studies/reports/sweep.ts";
import { CAUTIONS } from "../../studies/wording/cautions.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { PAST_MARK, sweepSentence } from "../../studies/wording/sweepSentence.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { cutShortLine } from "./cutShortLine.ts";
import { degreesCell, gapCell, heading, lengthCell, steerCell, textTable } from "./textTable.ts";

/** A sweep as a person reads it: by travel and by steer, each for both sides. */
export function sweepTable(sweep: Sweep, model: Model): string {
  const tables = [
    ...bothSides("By travel, steering straight ahead", sweep.byTravel, "travel", model),
    ...bothSides("By steering at travel 0, + = left turn", sweep.bySteer, "steer", model),
  ];
  return [
    `${heading(model.setup)}\n${sweepSentence(sweep, model)}\n${cutShortLine("sweep", sweep)}`,
    ...tables,
    CAUTIONS,
  ].join("\n");
}

/** A table a side, or one for both where they read the same. */
function bothSides(
  title: string,
  rows: readonly SweepRow[],
  along: "travel" | "steer",
  model: Model,
): string[] {
  const left = sideTable(rows, along, "left", model);
  const right = sideTable(rows, along, "right", model);
  if (left === right) return [`${title}, either side\n${left}`];
  return [`${title}, left side\n${left}`, `${title}, right side\n${right}`];
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
  const columns = headers.map((header) => ({ header, align: "right" }) as const);
  const lines = rows.map((row) => [
    `${row.ok && row.past.length > 0 ? PAST_MARK : ""}${along === "travel" ? lengthCell(row.travel, format) : steerCell(row.steer)}`,
    ...(row.ok ? cells(row) : headers.slice(1).map(() => "-")),
  ]);
  return textTable(columns, lines);
}
