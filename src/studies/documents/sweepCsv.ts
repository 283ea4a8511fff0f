import type { LengthUnit } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { csvGap, csvNumber, STEER_COLUMN } from "../../units/csvRows.ts";
import { mmFromUnits, unitsFromMm } from "../../units/lengthUnits.ts";
import { bareUnit } from "../../units/quantity.ts";
import type { SuspensionRow, SuspensionSide } from "../curves/suspensionRow.ts";
import type { WholeSweep } from "../curves/wholeSweep.ts";
import type { Model } from "../model/model.ts";
import type { ReachedRow, SweepRow, SweepSide } from "../reports/sweep.ts";
import { withStandingColumn } from "./documentText.ts";
import { rateInUnits } from "./sweepJson.ts";

const SIDES = ["left", "right"] as const;

/** mm, radians, N/mm, or a number of its own; null leaves the cell empty. */
type Measure = "length" | "angle" | "anglePerLength" | "rate" | "ratio";

interface Column<From> {
  readonly name: string;
  readonly measure: Measure;
  readonly read: (from: From) => number | null | undefined;
}

const POSE: readonly Column<SweepSide>[] = [
  { name: "camber", measure: "angle", read: (side) => side.camber },
  { name: "steer angle", measure: "angle", read: (side) => side.steerAngle },
  { name: "toe", measure: "angle", read: (side) => side.toe },
  { name: "caster", measure: "angle", read: (side) => side.caster },
  { name: "kingpin inclination", measure: "angle", read: (side) => side.kingpinInclination },
  { name: "scrub radius", measure: "length", read: (side) => side.scrubRadius },
  { name: "mechanical trail", measure: "length", read: (side) => side.mechanicalTrail },
  { name: "half track", measure: "length", read: (side) => side.halfTrack },
  { name: "wheel center X", measure: "length", read: (side) => side.wheelCenter[0] },
  { name: "wheel center Y", measure: "length", read: (side) => side.wheelCenter[1] },
  { name: "wheel center Z", measure: "length", read: (side) => side.wheelCenter[2] },
];

const MOTION: readonly Column<SuspensionSide>[] = [
  { name: "camber gain", measure: "anglePerLength", read: (side) => side.camberGain },
  { name: "bump steer", measure: "anglePerLength", read: (side) => side.toeGain },
  { name: "instant center Y", measure: "length", read: (side) => side.instantCenter?.y },
  { name: "instant center Z", measure: "length", read: (side) => side.instantCenter?.z },
];

const SPRING: readonly Column<SuspensionSide>[] = [
  { name: "air spring height", measure: "length", read: ({ spring }) => spring?.height },
  { name: "air spring motion ratio", measure: "ratio", read: ({ spring }) => spring?.motionRatio },
  { name: "wheel rate", measure: "rate", read: ({ spring }) => spring?.wheelRate },
];

const SHOCK: readonly Column<SuspensionSide>[] = [
  { name: "shock length", measure: "length", read: ({ shock }) => shock?.length },
  { name: "shock travel from extended", measure: "length", read: ({ shock }) => shock?.travel },
  { name: "shock motion ratio", measure: "ratio", read: ({ shock }) => shock?.motionRatio },
];

const ROLL_CENTER: readonly Column<SuspensionRow["rollCenter"]>[] = [
  { name: "roll center height", measure: "length", read: (center) => center?.height },
  { name: "roll center to the left", measure: "length", read: (center) => center?.y },
];

/**
 * A sweep as one table in comma-separated values (RFC 4180, but lines end with a line feed alone): rows by travel, then by
 * steer, then by body roll at travel 0, where the wheels travel apart; then where each part comes nearest of all poses, as a check
 * finds it (`worst of left fender lip`). The header says every column in words with its unit.
 * `status` names the limits a row passes. An unreachable row has its joint there and no numbers but its own travel and steer;
 * what a row does not tell is left empty. An aligned truck says so in a last column.
 */
export function sweepCsv(sweep: WholeSweep, model: Model): string {
  const { setup } = model;
  const motion = [
    ...MOTION,
    ...(setup.airSpring === null ? [] : SPRING),
    ...(setup.limits?.shock ? SHOCK : []),
  ];
  const { units } = setup;
  const told = cellsIn(units);
  const gapHeads = model.pairs.map(({ side, name }) => `${side} gap to ${name} (${units})`);
  const head = [
    ...["along", `travel (${units})`, STEER_COLUMN, "status", "body roll (deg)"],
    ...SIDES.flatMap((side) => [
      `${side} wheel's travel (${units})`,
      ...headsOf([...POSE, ...motion], units, `${side} `),
    ]),
    ...headsOf(ROLL_CENTER, units, ""),
    ...gapHeads,
  ];
  const poseRow = (along: string, row: SweepRow, at: SuspensionRow | null): string[] => {
    const travel = told(row.travel, "length");
    const place = [along, travel, csvNumber(row.steer)];
    if (!row.ok) return padded([...place, `${row.side} ${row.joint} out of reach`], head.length);
    return [
      ...place,
      statusOf(row),
      "0",
      ...SIDES.flatMap((side) => [
        travel,
        ...POSE.map(({ read, measure }) => told(read(row[side]), measure)),
        ...motion.map(({ read, measure }) => told(at?.[side] && read(at[side]), measure)),
      ]),
      ...ROLL_CENTER.map(({ read, measure }) => told(at && read(at.rollCenter), measure)),
      ...row.gaps.map(({ gap }) => csvGap(unitsFromMm(gap, units), units)),
    ];
  };
  const lines = [
    head,
    ...sweep.byTravel.map((row, i) => poseRow("travel", row, sweep.suspension[i] ?? null)),
    ...sweep.bySteer.map((row) => poseRow("steer", row, null)),
    ...sweep.byRoll.map(({ roll, travels, rollCenter }) => [
      ...["roll", "0", "0", "ok", told(roll, "angle")],
      ...SIDES.flatMap((side) => padded([told(travels[side], "length")], 1 + POSE.length + motion.length)),
      ...ROLL_CENTER.map(({ read, measure }) => told(read(rollCenter), measure)),
      ...gapHeads.map(() => ""),
    ]),
    ...sweep.worst.map(({ part, side, row, isSoFar }) =>
      poseRow(`worst ${isSoFar ? "so far " : ""}of ${side} ${part}`, row, null),
    ),
  ];
  return `${withStandingColumn(lines, setup)
    .map((cells) => cells.map(quoted).join(","))
    .join("\n")}\n`;
}

function statusOf({ past }: ReachedRow): string {
  return past.length === 0 ? "ok" : `past ${past.map(({ side, name }) => `${side} ${name}`).join("; ")}`;
}

function headsOf(
  columns: readonly Pick<Column<never>, "name" | "measure">[],
  units: LengthUnit,
  before: string,
): string[] {
  const names: Readonly<Record<Measure, string>> = {
    length: ` (${units})`,
    angle: " (deg)",
    anglePerLength: ` (deg per ${units} of travel)`,
    rate: ` (${bareUnit("load", units)} per ${units})`,
    ratio: " (spring per wheel travel)",
  };
  return columns.map(({ name, measure }) => `${before}${name}${names[measure]}`);
}

/** A number as a cell holds it; what is not there leaves it empty. */
function cellsIn(units: LengthUnit) {
  const inUnits: Readonly<Record<Measure, (value: number) => number>> = {
    length: (mm) => unitsFromMm(mm, units),
    angle: degFromRad,
    anglePerLength: (rate) => degFromRad(rate) * mmFromUnits(1, units),
    rate: (rate) => rateInUnits(rate, units),
    ratio: (ratio) => ratio,
  };
  return (value: number | null | undefined, measure: Measure) =>
    value === null || value === undefined
      ? ""
      : csvNumber(inUnits[measure](value), measure === "length" ? units : "in");
}

function padded(cells: readonly string[], to: number): string[] {
  return [...cells, ...new Array<string>(to - cells.length).fill("")];
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
