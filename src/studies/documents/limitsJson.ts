import type { LengthUnit } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { LimitBorder } from "../limits/limitBorders.ts";
import type { LimitMargin, LimitPose, LimitStance, LimitsReport } from "../limits/limitsOf.ts";
import type { LimitOverRange, SteerStart } from "../limits/limitsPassed.ts";

/** The limits as `limits --json` prints them: margins in the file's units or degrees, as `measure` says. */
export function limitsJson(report: LimitsReport, units: LengthUnit) {
  return {
    units,
    passed: report.passed,
    ...(report.cutShort ? { cutShort: true } : {}),
    limits: report.overall.map((limit) => limitOverRangeJson(limit, units)),
    stances: report.stances.map((stance) => stanceJson(stance, units)),
    region: {
      atHeights: report.region.atHeights.map(({ travel, blocked, left, right }) => ({
        travel: unitsFromMm(travel, units),
        ...(blocked === null ? {} : { blocked }),
        left: borderJson(left, "steer", units),
        right: borderJson(right, "steer", units),
      })),
      atSteers: report.region.atSteers.map(({ steer, blocked, bump, droop }) => ({
        steer,
        ...(blocked === null ? {} : { blocked }),
        bump: bump && borderJson(bump, "travel", units),
        droop: droop && borderJson(droop, "travel", units),
      })),
    },
    notChecked: report.notChecked,
  };
}

/** One limit over the whole range; `bound` is proven, `starts` only where it is passed. */
export function limitOverRangeJson(limit: LimitOverRange, units: LengthUnit) {
  const { name, side, measure, margin, bound, range, travel, steer, atBorder, starts, cutShort } = limit;
  const value = (amount: number) => (measure === "angle" ? degFromRad(amount) : unitsFromMm(amount, units));
  const length = (mm: number | null) => (mm === null ? null : unitsFromMm(mm, units));
  const start = (at: SteerStart | null) => at && { steer: at.steer, travel: unitsFromMm(at.travel, units) };
  return {
    name,
    side,
    measure,
    margin: value(margin),
    // Nothing is proven where a cell was given up before it could be looked at.
    bound: Number.isFinite(bound) ? value(bound) : null,
    range: value(range),
    travel: unitsFromMm(travel, units),
    steer,
    ...(atBorder ? { atBorder } : {}),
    ...(cutShort ? { cutShort } : {}),
    ...(starts === null
      ? {}
      : {
          starts: {
            bump: length(starts.bump),
            droop: length(starts.droop),
            left: start(starts.left),
            right: start(starts.right),
          },
        }),
  };
}

function stanceJson({ name, travel, poses, first }: LimitStance, units: LengthUnit) {
  return {
    name,
    travel: unitsFromMm(travel, units),
    poses: poses.map((pose) => poseJson(pose, units)),
    first: first && {
      bump: borderJson(first.bump, "travel", units),
      droop: borderJson(first.droop, "travel", units),
      left: borderJson(first.left, "steer", units),
      right: borderJson(first.right, "steer", units),
    },
  };
}

function poseJson(pose: LimitPose, units: LengthUnit) {
  if (!pose.ok) return { steer: pose.steer, outOfReach: { side: pose.side, joint: pose.joint } };
  return {
    steer: pose.steer,
    margins: pose.margins.map((margin) => limitMarginJson(margin, units)),
  };
}

/** One limit at one pose; `margin` below 0 where it is passed. */
export function limitMarginJson({ name, side, measure, margin, share }: LimitMargin, units: LengthUnit) {
  return {
    name,
    side,
    measure,
    margin: measure === "angle" ? degFromRad(margin) : unitsFromMm(margin, units),
    share,
  };
}

function borderJson(border: LimitBorder, along: "travel" | "steer", units: LengthUnit) {
  return { ...border, at: along === "travel" ? unitsFromMm(border.at, units) : border.at };
}
