import type { LengthUnit } from "../../setup/types/types.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { RollCoverage } from "../floor/rollCoverage.ts";
import type { CheckEntry, CheckReport } from "../reports/check.ts";
import type { ReachLimit } from "../reports/reachLimits.ts";
import { pointFromMm } from "./documentText.ts";
import { rollJson } from "./floorJson.ts";
import { limitOverRangeJson } from "./limitsJson.ts";

/**
 * A check as `check --json` prints it, lengths in the file's units; `limits` only when one is passed; `cutShort` only when
 * the budget ended it: `tolerance` of each part then says what was reached;
 * `limitsPassed` and `limitedBy` (limits past which no pose is counted) only when the setup gives limits; `roll` only when the setup asks for it.
 */
export function checkJson(report: CheckReport, units: LengthUnit, roll: RollCoverage | null = null) {
  const limits = report.limits.map((limit) => limitJson(limit, units));
  return {
    units,
    verdict: report.verdict,
    ...(report.cutShort ? { cutShort: true } : {}),
    worst: report.worst === null ? null : entryJson(report.worst, units),
    parts: report.parts.map((entry) => entryJson(entry, units)),
    ...(limits.length > 0 ? { limits } : {}),
    ...(report.limitsPassed === undefined
      ? {}
      : { limitsPassed: report.limitsPassed.map((limit) => limitOverRangeJson(limit, units)) }),
    ...(report.limitedBy === undefined ? {} : { limitedBy: report.limitedBy }),
    ...(roll === null ? {} : { roll: rollJson(roll, units) }),
  };
}

/** One entry of a check. */
export function entryJson(entry: CheckEntry, units: LengthUnit) {
  return {
    part: entry.part,
    side: entry.side,
    verdict: entry.verdict,
    gap: unitsFromMm(entry.gap, units),
    bound: unitsFromMm(entry.bound, units),
    tolerance: unitsFromMm(entry.tolerance, units),
    travel: unitsFromMm(entry.travel, units),
    steer: entry.steer,
    point: pointFromMm(entry.point, units),
    ...(entry.together ? { ride: "together" } : {}),
  };
}

/** `startsAt` is the last value that closes: a length along travel, a share of full lock along steer. */
export function limitJson({ side, joint, along, startsAt, travel }: ReachLimit, units: LengthUnit) {
  return {
    side,
    joint,
    along,
    startsAt: along === "travel" ? unitsFromMm(startsAt, units) : startsAt,
    travel: unitsFromMm(travel, units),
  };
}
