import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { Model } from "../model/model.ts";
import type { Sweep, SweepRow } from "../reports/sweep.ts";
import { withStandingColumn } from "./documentText.ts";

const ANGLES = ["camber", "steerAngle", "toe", "caster", "kingpinInclination"] as const;
const LENGTHS = ["scrubRadius", "mechanicalTrail", "halfTrack"] as const;
const SIDES = ["left", "right"] as const;

/**
 * A sweep as one table in comma-separated values (RFC 4180, but lines end with a line feed alone): rows by
 * travel, then by steer. The header names every unit. `status` names the limits a row passes. An unreachable row has its joint there and no
 * numbers but its own travel and steer. An aligned truck says so in a last column.
 */
export function sweepCsv(sweep: Sweep, model: Model): string {
  const lines = [
    header(model),
    ...sweep.byTravel.map((row) => csvRow("travel", row, model)),
    ...sweep.bySteer.map((row) => csvRow("steer", row, model)),
  ];
  return `${withStandingColumn(lines, model.setup)
    .map((cells) => cells.map(quoted).join(","))
    .join("\n")}\n`;
}

function header(model: Model): string[] {
  const { units } = model.setup;
  const sides = SIDES.flatMap((side) => [
    ...ANGLES.map((key) => `${side} ${key} (deg)`),
    ...LENGTHS.map((key) => `${side} ${key} (${units})`),
    ...["X", "Y", "Z"].map((axis) => `${side} wheelCenter ${axis} (${units})`),
  ]);
  const gaps = model.pairs.map(({ side, name }) => `${side} gap to ${name} (${units})`);
  return ["along", `travel (${units})`, "steer (share of lock)", "status", ...sides, ...gaps];
}

function csvRow(along: "travel" | "steer", row: SweepRow, model: Model): string[] {
  const { units } = model.setup;
  const length = (mm: number) => String(unitsFromMm(mm, units) + 0); // + 0 turns −0 into 0
  const degrees = (rad: number) => String(degFromRad(rad) + 0);
  const place = [along, length(row.travel), String(row.steer)];
  if (!row.ok) {
    const empty = header(model)
      .slice(place.length + 1)
      .map(() => "");
    return [...place, `${row.side} ${row.joint} out of reach`, ...empty];
  }
  const sides = SIDES.flatMap((side) => [
    ...ANGLES.map((key) => degrees(row[side][key])),
    ...LENGTHS.map((key) => length(row[side][key])),
    ...row[side].wheelCenter.map(length),
  ]);
  const past = row.past.map(({ side, name }) => `${side} ${name}`);
  const status = past.length === 0 ? "ok" : `past ${past.join("; ")}`;
  return [...place, status, ...sides, ...row.gaps.map((entry) => length(entry.gap))];
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
