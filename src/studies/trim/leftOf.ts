import { mirrorY, type Vec3 } from "../../geometry/vec.ts";
import type { BodyPart, PathPart } from "../../setup/types/truckTypes.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { CutArc } from "./cutArcs.ts";
import { type FlatSheet, pieceDistance } from "./flatSheet.ts";

type Place = readonly [u: number, v: number];

/** mm. Points of a cut are left out where the straight way passes no farther from them. */
const STRAIGHT = 0.15;

/**
 * A path with its cuts: along each instead of where it was, so that it tells the edge that is left. Null of a box, and where
 * nothing is cut.
 * @param arcs of the sheet through it, in their order along it
 */
export function leftOf(
  part: BodyPart,
  side: Side,
  sheet: FlatSheet,
  arcs: readonly CutArc[],
): PathPart | null {
  if (part.kind !== "path" || arcs.length === 0) return null;
  const { corners } = sheet;
  const points: Vec3[] = [];
  // Of the border, the first point is none of the path.
  const isBetween = (i: number, from: number, to: number) => i + 1 > from && i + 1 < to;
  let from = Number.NEGATIVE_INFINITY;
  for (const arc of arcs) {
    points.push(...corners.filter((_, i) => isBetween(i, from, arc.from)));
    points.push(...straightened(arc.points).map((place) => placeOf(sheet, place)));
    from = arc.to;
  }
  points.push(...corners.filter((_, i) => isBetween(i, from, Number.POSITIVE_INFINITY)));
  const typed = sheet.isReversed ? points.reverse() : points;
  // The path is typed as it stands on its side, or on the left of both.
  const isMirrored =
    side === "right" && part.side === "right" && part.points.reduce((sum, p) => sum + p[1], 0) < 0;
  return { ...part, points: isMirrored ? typed.map(mirrorY) : typed };
}

function placeOf(sheet: FlatSheet, [u, v]: Place): Vec3 {
  const out = new Float64Array(3);
  sheet.placeTo(out, u, v);
  return [out[0]!, out[1]!, out[2]!];
}

/** As few of the points as stay within a hair of all (Ramer, Douglas and Peucker). */
function straightened(points: readonly Place[]): readonly Place[] {
  const [first, last] = [points[0]!, points.at(-1)!];
  let most = STRAIGHT;
  let at = 0;
  for (let i = 1; i < points.length - 1; i++) {
    const { distance } = pieceDistance(...points[i]!, ...first, ...last);
    if (distance > most) [most, at] = [distance, i];
  }
  if (at === 0) return [first, last];
  return [...straightened(points.slice(0, at + 1)).slice(0, -1), ...straightened(points.slice(at))];
}
