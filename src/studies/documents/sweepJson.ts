import type { LengthUnit } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { mmFromUnits, unitsFromMm } from "../../units/lengthUnits.ts";
import { quantityInUnits } from "../../units/quantity.ts";
import type { RollRow } from "../curves/rollCurve.ts";
import type { SuspensionRow, SuspensionSide } from "../curves/suspensionRow.ts";
import type { WholeSweep } from "../curves/wholeSweep.ts";
import type { SweepRow, SweepSide } from "../reports/sweep.ts";
import { pointFromMm } from "./documentText.ts";
import { limitMarginJson } from "./limitsJson.ts";
import { wheelJson } from "./poseJson.ts";

/**
 * A sweep as `sweep --json` prints it: lengths in the file's units, angles in degrees, gains in degrees per length unit of
 * travel, rates in load units per length unit.
 */
export function sweepJson(sweep: WholeSweep, units: LengthUnit) {
  return {
    units,
    ...(sweep.cutShort ? { cutShort: true } : {}),
    byTravel: sweep.byTravel.map((row, i) =>
      withSuspension(rowJson(row, units), sweep.suspension[i]!, units),
    ),
    bySteer: sweep.bySteer.map((row) => rowJson(row, units)),
    byRoll: sweep.byRoll.map((row) => rollJson(row, units)),
    worst: sweep.worst.map(({ part, side, row }) => ({ of: { part, side }, ...rowJson(row, units) })),
  };
}

/** `status` is "ok", `past` then the limits it passes, if any; or "out of reach" with the joint and the last travel or steer that closes. */
function rowJson(row: SweepRow, units: LengthUnit) {
  const place = { travel: unitsFromMm(row.travel, units), steer: row.steer };
  if (!row.ok) {
    const { side, joint, along } = row;
    const startsAt = along === "travel" ? unitsFromMm(row.startsAt, units) : row.startsAt;
    return { ...place, status: "out of reach" as const, side, joint, along, startsAt };
  }
  return {
    ...place,
    status: "ok" as const,
    left: sideJson(row.left, units),
    right: sideJson(row.right, units),
    gaps: row.gaps.map(({ part, side, gap }) => ({ part, side, gap: unitsFromMm(gap, units) })),
    ...(row.past.length > 0 ? { past: row.past.map((one) => limitMarginJson(one, units)) } : {}),
  };
}

function sideJson(side: SweepSide, units: LengthUnit) {
  return {
    ...wheelJson(side, units),
    halfTrack: unitsFromMm(side.halfTrack, units),
    wheelCenter: pointFromMm(side.wheelCenter, units),
  };
}

/** A row by travel with `rollCenter`, and on each side what the linkage, spring and shock do there; null = no such point. */
function withSuspension(row: ReturnType<typeof rowJson>, at: SuspensionRow, units: LengthUnit) {
  if (row.status !== "ok") return row;
  return {
    ...row,
    rollCenter: centerJson(at.rollCenter, units),
    left: { ...row.left, ...suspensionJson(at.left, units) },
    right: { ...row.right, ...suspensionJson(at.right, units) },
  };
}

function suspensionJson(side: SuspensionSide | null, units: LengthUnit) {
  if (side === null) return {};
  const length = (mm: number) => unitsFromMm(mm, units);
  const perLength = (rate: number) => degFromRad(rate) * mmFromUnits(1, units);
  const { instantCenter, swingArm, spring, shock } = side;
  return {
    camberGain: perLength(side.camberGain),
    toeGain: perLength(side.toeGain),
    instantCenter: instantCenter && { y: length(instantCenter.y), z: length(instantCenter.z) },
    swingArm: swingArm === null ? null : length(swingArm),
    ...(spring && {
      airSpring: {
        height: length(spring.height),
        motionRatio: spring.motionRatio,
        wheelRate: spring.wheelRate && rateInUnits(spring.wheelRate, units),
      },
    }),
    ...(shock && {
      shock: { length: length(shock.length), travel: length(shock.travel), motionRatio: shock.motionRatio },
    }),
  };
}

function rollJson({ roll, travels, rollCenter }: RollRow, units: LengthUnit) {
  const { left, right } = travels;
  return {
    roll: degFromRad(roll),
    travel: { left: unitsFromMm(left, units), right: unitsFromMm(right, units) },
    rollCenter: centerJson(rollCenter, units),
  };
}

function centerJson(center: SuspensionRow["rollCenter"], units: LengthUnit) {
  if (center === null) return null;
  const { y, z, height } = center;
  return { y: unitsFromMm(y, units), z: unitsFromMm(z, units), height: unitsFromMm(height, units) };
}

/** Load units per length unit. @param rate N/mm */
export function rateInUnits(rate: number, units: LengthUnit): number {
  return quantityInUnits(rate, "load", units) / unitsFromMm(1, units);
}
