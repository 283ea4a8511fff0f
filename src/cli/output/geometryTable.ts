import type { Setup } from "../../setup/types/types.ts";
import type { GeometryReport, SteerRow, TravelRow } from "../../studies/geometry/geometryReport.ts";
import type { Model } from "../../studies/model/model.ts";
import { CAUTIONS } from "../../studies/wording/cautions.ts";
import { geometrySentences } from "../../studies/wording/geometrySentences.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { degFromRad } from "../../units/angle.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import { degreesCell, heading, lengthCell, steerCell, textTable } from "./textTable.ts";

/** The geometry as a person reads it: sentences first, then by travel and by steer. */
export function geometryTable(report: GeometryReport, model: Model): string {
  const { setup } = model;
  const tables = [
    ...bothSides("By travel, steering straight ahead", (side) => travelTable(report.byTravel, side, setup)),
    `By steering at travel 0, + = left turn\n${steerTable(report.bySteer, model)}`,
  ];
  return [`${heading(setup)}\n${geometrySentences(report, model)}\n`, ...tables, CAUTIONS].join("\n");
}

/** A table a side, or one for both where they read the same. */
function bothSides(title: string, tableOf: (side: Side) => string): string[] {
  const [left, right] = [tableOf("left"), tableOf("right")];
  if (left === right) return [`${title}, either side\n${left}`];
  return [`${title}, left side\n${left}`, `${title}, right side\n${right}`];
}

function travelTable(rows: readonly TravelRow[], name: Side, setup: Setup): string {
  const { units } = setup;
  const format = formatOf(setup);
  const per = units === "in" ? { mm: MM_PER_INCH, text: "deg/in" } : { mm: 10, text: "deg/10 mm" };
  const headers = [
    `Travel (${units})`,
    "Camber (deg)",
    `Camber gain (${per.text})`,
    "Toe (deg)",
    `Bump steer (${per.text})`,
    `Instant center in (${units})`,
    `up (${units})`,
    `Roll center height (${units})`,
    `to the left (${units})`,
    `Scrub (${units})`,
    `Trail (${units})`,
  ];
  return textTable(
    rightAligned(headers),
    rows.map((row) => {
      const side = row[name];
      const place = side?.instantCenter ?? null;
      const fromSide = place && (name === "left" ? place.y : -place.y);
      return [
        lengthCell(row.travel, format),
        side ? degreesCell(side.camber) : "-",
        side ? gainCell(side.camberGain * per.mm) : "-",
        side ? degreesCell(side.toe) : "-",
        side ? gainCell(side.toeGain * per.mm) : "-",
        farCell(fromSide, format),
        farCell(place?.z, format),
        farCell(row.rollCenter?.height, format),
        farCell(row.rollCenter?.y, format),
        side ? lengthCell(side.scrubRadius, format) : "-",
        side ? lengthCell(side.mechanicalTrail, format) : "-",
      ];
    }),
  );
}

function steerTable(rows: readonly SteerRow[], { setup }: Model): string {
  const { units } = setup;
  const format = formatOf(setup);
  const isRack = setup.truck.steering.type === "rack";
  const per = !isRack ? 1 : units === "in" ? MM_PER_INCH : 10;
  const perText = !isRack ? "deg/deg pitman" : units === "in" ? "deg/in rack" : "deg/10 mm rack";
  const headers = [
    "Steer (lock)",
    "Left (deg)",
    "Right (deg)",
    "Ackermann (%)",
    "Outer off (deg)",
    `Ratio (${perText})`,
    `Body rise (${units})`,
    "Body roll (deg)",
    `Scrub left (${units})`,
    `right (${units})`,
    `Trail left (${units})`,
    `right (${units})`,
  ];
  return textTable(
    rightAligned(headers),
    rows.map(({ steer, left, right, ackermann, ratio, jacking }) => [
      steerCell(steer),
      left ? degreesCell(left.steerAngle) : "-",
      right ? degreesCell(right.steerAngle) : "-",
      ackermann ? String(Math.round(ackermann.percent)) : "-",
      ackermann ? degreesCell(ackermann.error) : "-",
      ratio ? ((isRack ? degFromRad(ratio.mean) : ratio.mean) * per).toFixed(2) : "-",
      jacking ? lengthCell(jacking.rise, format) : "-",
      jacking ? degreesCell(jacking.roll) : "-",
      ...[left, right].map((side) => (side ? lengthCell(side.scrubRadius, format) : "-")),
      ...[left, right].map((side) => (side ? lengthCell(side.mechanicalTrail, format) : "-")),
    ]),
  );
}

function rightAligned(headers: readonly string[]) {
  return headers.map((header) => ({ header, align: "right" }) as const);
}

/** mm. Farther off than this a tape has no use for it: `far`. */
const FAR = 100_000;

function farCell(mm: number | null | undefined, format: LengthFormat): string {
  if (mm === null || mm === undefined) return "-";
  return Math.abs(mm) > FAR ? "far" : lengthCell(mm, format);
}

/** Degrees per length to 3 decimals, without the sign of a zero. @param rad */
function gainCell(rad: number): string {
  const text = degFromRad(rad).toFixed(3);
  return Number(text) === 0 ? text.replace("-", "") : text;
}
