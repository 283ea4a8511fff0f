import type { Vec3 } from "../../geometry/vec.ts";
import type { Outline } from "../section/outline.ts";
import type { FlatSheet } from "./flatSheet.ts";

const AXES = [0, 1, 2] as const;

/** The six faces of a box, each as seen from outside it: up is up, of a level face forward. @param min, max left-hand frame */
export function boxFaces(min: Vec3, max: Vec3): readonly FlatSheet[] {
  return AXES.flatMap((axis) => ([-1, 1] as const).map((way) => faceOf(min, max, axis, way)));
}

function faceOf(min: Vec3, max: Vec3, axis: 0 | 1 | 2, way: 1 | -1): FlatSheet {
  const upAxis = axis === 2 ? 0 : 2;
  const acrossAxis = (3 - axis - upAxis) as 0 | 1 | 2;
  // Across is up × outward: whatever lies to the right of who looks at the face from outside.
  const isCyclic = (upAxis + 1) % 3 === axis;
  const sign = (isCyclic ? 1 : -1) * way;
  const ends = [sign * min[acrossAxis], sign * max[acrossAxis]].sort((a, b) => a - b) as [number, number];
  const [u0, u1, v0, v1] = [ends[0], ends[1], min[upAxis], max[upAxis]];
  const at = way < 0 ? min[axis] : max[axis];
  return {
    kind: "face",
    placeTo(out, u, v) {
      out[axis] = at;
      out[acrossAxis] = sign * u;
      out[upAxis] = v;
    },
    edgeDistance(u, v) {
      const [du, dv] = [Math.max(u0 - u, u - u1), Math.max(v0 - v, v - v1)];
      return du > 0 && dv > 0 ? Math.hypot(du, dv) : Math.max(du, dv);
    },
    edge: { points: Float64Array.from([u0, v0, u1, v0, u1, v1, u0, v1]), closed: true },
    low: [u0, v0],
    high: [u1, v1],
    radius: 0,
    off: 0,
    border: [],
    corners: [],
    isReversed: false,
  };
}

/** A closed line cut off at the edges of a rectangle (Sutherland and Hodgman); null where nothing of it lies inside. */
export function clippedToRect(
  { points }: Outline,
  low: readonly [number, number],
  high: readonly [number, number],
): Outline | null {
  let kept = [...points];
  for (const [axis, end, way] of [
    [0, low[0], 1],
    [0, high[0], -1],
    [1, low[1], 1],
    [1, high[1], -1],
  ] as const)
    kept = cutOff(kept, axis, end, way);
  return kept.length < 6 ? null : { points: Float64Array.from(kept), closed: true };
}

/** What lies on one side of a line across an axis. */
function cutOff(points: readonly number[], axis: 0 | 1, end: number, way: 1 | -1): number[] {
  const kept: number[] = [];
  for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
    const [a, b] = [way * (points[j + axis]! - end), way * (points[i + axis]! - end)];
    if (a < 0 !== b < 0) {
      const share = a / (a - b);
      const met = [0, 1].map((k) => points[j + k]! + share * (points[i + k]! - points[j + k]!));
      met[axis] = end;
      kept.push(...met);
    }
    if (b >= 0) kept.push(points[i]!, points[i + 1]!);
  }
  return kept;
}
