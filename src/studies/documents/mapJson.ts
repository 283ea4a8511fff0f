import type { LengthUnit } from "../../setup/types/types.ts";
import { jointOf, type PoseStatus } from "../../suspension/poseStatus.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { MapSide } from "../map/clearanceMap.ts";
import type { Contour } from "../map/contours.ts";
import type { LowestTravels, WayDown } from "../map/lowestTravels.ts";
import type { MapReport } from "../map/mapReport.ts";
import type { NoLimits, SteerLimits, TurnLimits } from "../map/steerLimits.ts";
import type { Stop, WheelStops } from "../map/stop.ts";
import type { Model } from "../model/model.ts";
import { pointFromMm } from "./documentText.ts";

/**
 * A map as `map --json` prints it, lengths in the file's units: rows by travel, columns by steer. A cell out of reach
 * is null in every grid but `reach`, which says why; `reach` is null in all others. With
 * `cutShort` (the budget ended it) a cell that is null in `reach` too was not looked at. `pastLimit` (which limit a cell
 * passes, of either wheel; null where all are kept) and `limitBorder` (lines) only when the setup gives limits.
 */
export function mapJson(report: MapReport, model: Model) {
  const { units, allowance } = model.setup;
  const { map, contours } = report;
  return {
    units,
    allowance: unitsFromMm(allowance, units),
    ...(report.cutShort ? { cutShort: true } : {}),
    rows: [...map.travels].map((mm) => unitsFromMm(mm, units)),
    cols: [...map.steers],
    left: sideJson(report, map.left, model),
    right: sideJson(report, map.right, model),
    reach: reachGrid(report, units),
    ...pastLimitJson(report, units),
    contours: {
      left: contoursJson(contours.left, units),
      right: contoursJson(contours.right, units),
    },
    steerAtHeight: report.steerAtHeight.map((row) => steerJson(row, units)),
    lowestAtSteer: report.lowestAtSteer.map((row) => lowestJson(row, units)),
    always: report.always.map(({ part, side, gap }) => ({ part, side, gap: unitsFromMm(gap, units) })),
    limits: report.limits.map(({ side, joint, along, startsAt, travel }) => ({
      side,
      joint,
      along,
      startsAt: along === "travel" ? unitsFromMm(startsAt, units) : startsAt,
      travel: unitsFromMm(travel, units),
    })),
  };
}

/** A grid of rows of cells. */
function gridOf<T>({ map }: MapReport, cell: (at: number) => T): T[][] {
  const cols = map.steers.length;
  return Array.from(map.travels, (_, row) => Array.from(map.steers, (_, col) => cell(row * cols + col)));
}

function sideJson(report: MapReport, { gap, pair, point }: MapSide, model: Model) {
  const { units } = model.setup;
  return {
    gap: gridOf(report, (at) => (pair[at]! < 0 ? null : unitsFromMm(gap[at]!, units))),
    part: gridOf(report, (at) => (pair[at]! < 0 ? null : model.pairs[pair[at]!]!.name)),
    point: gridOf(report, (at) =>
      pair[at]! < 0 ? null : pointFromMm([point[3 * at]!, point[3 * at + 1]!, point[3 * at + 2]!], units),
    ),
  };
}

function reachGrid(report: MapReport, units: LengthUnit) {
  const { status, side, along, startsAt } = report.map.reach;
  return gridOf(report, (at) =>
    status[at] === 0
      ? null
      : reasonJson(
          {
            status: status[at] as PoseStatus,
            side: side[at] === 0 ? "left" : "right",
            along: along[at] === 0 ? "travel" : "steer",
            startsAt: startsAt[at]!,
          },
          units,
        ),
  );
}

function reasonJson(
  { status, side, along, startsAt }: Pick<NoLimits, "status" | "side" | "along" | "startsAt">,
  units: LengthUnit,
) {
  return {
    side,
    joint: jointOf(status),
    along,
    startsAt: along === "travel" ? unitsFromMm(startsAt, units) : startsAt,
  };
}

/** Each line a list of [travel, steer]. */
function contoursJson(
  { touch, allowance }: { readonly touch: readonly Contour[]; readonly allowance: readonly Contour[] },
  units: LengthUnit,
) {
  const line = (contour: Contour) => lineJson(contour, units);
  return { touch: touch.map(line), allowance: allowance.map(line) };
}

function lineJson(contour: Contour, units: LengthUnit) {
  return Array.from({ length: contour.length / 2 }, (_, i) => [
    unitsFromMm(contour[2 * i]!, units),
    contour[2 * i + 1]!,
  ]);
}

function pastLimitJson(report: MapReport, units: LengthUnit) {
  const { pastLimit } = report.map;
  if (pastLimit === null) return {};
  const { limits, passed } = pastLimit;
  return {
    pastLimit: gridOf(report, (at) => (passed[at]! < 0 ? null : limits[passed[at]!]!)),
    limitBorder: report.limitBorder.map((line) => lineJson(line, units)),
  };
}

function steerJson(row: SteerLimits | NoLimits, units: LengthUnit) {
  const travel = unitsFromMm(row.travel, units);
  if (!row.ok) return { travel, reach: reasonJson(row, units) };
  const turn = ({ touch, allowance }: TurnLimits) => ({
    touch: wheelsJson(touch, "steer", units),
    allowance: wheelsJson(allowance, "steer", units),
  });
  return { travel, leftTurn: turn(row.leftTurn), rightTurn: turn(row.rightTurn) };
}

function lowestJson(row: LowestTravels | NoLimits, units: LengthUnit) {
  const { steer } = row;
  if (!row.ok) return { steer, reach: reasonJson(row, units) };
  const way = (down: WayDown) => ({
    from: unitsFromMm(down.from, units),
    ...wheelsJson(down, "travel", units),
  });
  return { steer, touch: way(row.touch), allowance: way(row.allowance) };
}

function wheelsJson({ either, left, right }: WheelStops, along: "travel" | "steer", units: LengthUnit) {
  const stop = (each: Stop) => stopJson(each, along, units);
  return { either: stop(either), left: stop(left), right: stop(right) };
}

/** `stop` says what ends it: a touch, a limit, the end of the range, a joint's reach, or that nothing more is proven. */
function stopJson(end: Stop, along: "travel" | "steer", units: LengthUnit) {
  const at = along === "travel" ? { travel: unitsFromMm(end.at, units) } : { steer: end.at };
  switch (end.stop) {
    case "end":
    case "unproven":
      return { ...at, stop: end.stop };
    case "reach":
      return { ...at, stop: end.stop, side: end.side, joint: end.joint };
    case "limit":
      return { ...at, stop: end.stop, side: end.side, name: end.name };
    case "touch": {
      const { stop, side, part, gap, point, together } = end;
      return {
        ...at,
        stop,
        side,
        part,
        gap: unitsFromMm(gap, units),
        point: pointFromMm(point, units),
        ...(together ? { ride: "together" } : {}),
      };
    }
  }
}
