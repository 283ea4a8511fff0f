import { dot, sub, type Vec3 } from "../../geometry/vec.ts";
import { type Cover, freeArcs } from "./freeArcs.ts";
import { joinPieces, type Piece } from "./joinPieces.ts";
import { type Outline, type SectionPlane, sheetAxes } from "./outline.ts";
import { ballCircle, legDistance, sideCurves, type TubeLeg, tubeLegs } from "./tubeLegs.ts";

/** Cuts a box aligned with the axes: a rectangle, or nothing. Its lower face belongs to it, its upper face not. */
export function sliceBox(min: Vec3, max: Vec3, plane: SectionPlane): Outline[] {
  const { normal, right, up } = sheetAxes(plane);
  if (!(plane.at >= min[normal] && plane.at < max[normal])) return [];
  const [left, low, far, high] = [min[right], min[up], max[right], max[up]];
  return [{ points: Float64Array.of(left, low, far, low, far, high, left, high), closed: true }];
}

/** mm. Ends of arcs nearer than this on the sheet are one corner. */
const SAME_PLACE = 1e-4;
/** mm. A surface nearer than this to another is the same surface: it is drawn once, for the leg that comes first. */
const SAME_SURFACE = 1e-11;

/**
 * Cuts a tube, all points within `radius` of a polyline, by a plane. Its surface is the round sides of the legs
 * and balls about the points; the plane cuts them in arcs of ellipses and circles (`tubeLegs.ts`), of which what
 * other legs cover is left out (`freeArcs.ts`). The points of an outline lie on the surface but for rounding; the straight pieces
 * between them stand off by at most `SAGITTA`. Outlines run either way.
 */
export function sliceTube(points: readonly Vec3[], radius: number, plane: SectionPlane): Outline[] {
  const sheet = sheetAxes(plane);
  const normal: Vec3 = [0, 1, 2].map((axis) => (axis === sheet.normal ? 1 : 0)) as unknown as Vec3;
  const near = tubeLegs(points).filter((leg) => comesNear(leg, radius, sheet.normal, plane.at));
  const arcs: Vec3[][] = [];
  near.forEach((leg, i) => {
    for (const curve of sideCurves(leg, radius, normal, plane.at)) {
      const others = near.flatMap((other, k) => {
        const within = radius + (k < i ? SAME_SURFACE : -SAME_SURFACE);
        return k === i ? [] : [coverOf(other, within)];
      });
      arcs.push(...freeArcs(curve, others));
    }
  });
  points.forEach((center, i) => {
    if (points.findIndex((point) => isSame(point, center)) < i) return;
    const curve = ballCircle(center, radius, normal, plane.at);
    if (curve !== null)
      arcs.push(
        ...freeArcs(
          curve,
          near.map((leg) => ballCover(leg, center, radius)),
        ),
      );
  });
  return joined(arcs.map((arc) => arc.map((point) => [point[sheet.right], point[sheet.up]] as const)));
}

function comesNear({ start, end }: TubeLeg, radius: number, axis: 0 | 1 | 2, at: number): boolean {
  return Math.min(start[axis], end[axis]) - radius <= at && Math.max(start[axis], end[axis]) + radius >= at;
}

function coverOf(leg: TubeLeg, within: number): Cover {
  return (point) => legDistance(leg, point) - within;
}

/** A point of the ball about a leg's own end is in the leg where it lies ahead of that end, a sharper test than distance. */
function ballCover(leg: TubeLeg, center: Vec3, radius: number): Cover {
  if (isSame(center, leg.start)) return (point) => -dot(sub(point, center), leg.way);
  if (isSame(center, leg.end)) return (point) => dot(sub(point, center), leg.way);
  return coverOf(leg, radius + SAME_SURFACE);
}

function isSame(a: Vec3, b: Vec3): boolean {
  return a[0] === b[0] && a[1] === b[1] && a[2] === b[2];
}

type SheetPoint = readonly [u: number, v: number];

/** Arcs joined at their ends. */
function joined(arcs: readonly (readonly SheetPoint[])[]): Outline[] {
  const nodes: number[] = [];
  const pieces: Piece[] = [];
  const ends: number[] = [];
  const nodeOf = ([u, v]: SheetPoint, isEnd: boolean): number => {
    const near = isEnd && ends.find((n) => Math.hypot(nodes[2 * n]! - u, nodes[2 * n + 1]! - v) < SAME_PLACE);
    if (typeof near === "number") return near;
    const number = nodes.length / 2;
    nodes.push(u, v);
    if (isEnd) ends.push(number);
    return number;
  };
  for (const arc of arcs) {
    const numbers = arc.map((point, i) => nodeOf(point, i === 0 || i === arc.length - 1));
    for (let i = 1; i < numbers.length; i++) {
      if (numbers[i] !== numbers[i - 1]) pieces.push({ from: numbers[i - 1]!, to: numbers[i]! });
    }
  }
  return joinPieces(pieces, nodes);
}
