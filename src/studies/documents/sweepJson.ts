import type { LengthUnit } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { Sweep, SweepRow, SweepSide } from "../reports/sweep.ts";
import { limitMarginJson } from "./limitsJson.ts";
import { pointFromMm } from "./pointFromMm.ts";

/** A sweep as `sweep --json` prints it: lengths in the file's units, angles in degrees. */
export function sweepJson(sweep: Sweep, units: LengthUnit) {
  return {
    units,
    ...(sweep.cutShort ? { cutShort: true } : {}),
    byTravel: sweep.byTravel.map((row) => rowJson(row, units)),
    bySteer: sweep.bySteer.map((row) => rowJson(row, units)),
  };
}

/** `status` is "ok", `past` then the limits it passes, if any; or "out of reach" with the joint and the last travel or steer that closes. */
function rowJson(row: SweepRow, units: LengthUnit) {
  const place = { travel: unitsFromMm(row.travel, units), steer: row.steer };
  if (!row.ok) {
    const { side, joint, along } = row;
    const startsAt = along === "travel" ? unitsFromMm(row.startsAt, units) : row.startsAt;
    return { ...place, status: "out of reach", side, joint, along, startsAt };
  }
  return {
    ...place,
    status: "ok",
    left: sideJson(row.left, units),
    right: sideJson(row.right, units),
    gaps: row.gaps.map(({ part, side, gap }) => ({ part, side, gap: unitsFromMm(gap, units) })),
    ...(row.past.length > 0 ? { past: row.past.map((one) => limitMarginJson(one, units)) } : {}),
  };
}

function sideJson(side: SweepSide, units: LengthUnit) {
  return {
    camber: degFromRad(side.camber),
    steerAngle: degFromRad(side.steerAngle),
    toe: degFromRad(side.toe),
    caster: degFromRad(side.caster),
    kingpinInclination: degFromRad(side.kingpinInclination),
    scrubRadius: unitsFromMm(side.scrubRadius, units),
    mechanicalTrail: unitsFromMm(side.mechanicalTrail, units),
    halfTrack: unitsFromMm(side.halfTrack, units),
    wheelCenter: pointFromMm(side.wheelCenter, units),
  };
}
