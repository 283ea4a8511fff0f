import { bareTyped, withSameWithin } from "../../../setup/reading/typedPair.ts";
import { solvePose } from "../../../suspension/solvePose.ts";
import { type FileUnits, MM_PER_INCH } from "../../../units/lengthUnits.ts";
import { parseLength } from "../../../units/parseLength.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";
import type { LengthStep } from "../../../units/stepLength.ts";
import type { Truck } from "../../state/truck.ts";

/** A point of the side view, mm: x forward, z up. */
export interface SidePoint {
  readonly x: number;
  readonly z: number;
}

/** A rectangle of the side view in picture axes, mm: u = −x to the right, so that the truck faces left; v = −z down. */
export interface ArchFrame {
  readonly u: number;
  readonly v: number;
  readonly width: number;
  readonly height: number;
}

/** mm around everything, for handles to be taken by. */
const MARGIN = 90;

/** The picture that holds these points and circles. */
export function archFrame(
  points: readonly SidePoint[],
  circles: readonly { readonly x: number; readonly z: number; readonly radius: number }[],
): ArchFrame {
  const us = [
    ...points.map(({ x }) => -x),
    ...circles.flatMap(({ x, radius }) => [-x - radius, -x + radius]),
  ];
  const vs = [
    ...points.map(({ z }) => -z),
    ...circles.flatMap(({ z, radius }) => [-z - radius, -z + radius]),
  ];
  const [u, v] = [Math.min(...us) - MARGIN, Math.min(...vs) - MARGIN];
  return { u, v, width: Math.max(...us) + MARGIN - u, height: Math.max(...vs) + MARGIN - v };
}

/** The point of the side view at a place of the picture. */
export function sidePoint(u: number, v: number): SidePoint {
  return { x: 0 - u, z: 0 - v };
}

/** Which point is nearest to a place, if one is within `reach` mm; null = none is. */
export function nearestPoint(points: readonly SidePoint[], at: SidePoint, reach: number): number | null {
  let nearest: number | null = null;
  let least = reach;
  points.forEach((point, i) => {
    const distance = Math.hypot(point.x - at.x, point.z - at.z);
    if (distance > least) return;
    least = distance;
    nearest = i;
  });
  return nearest;
}

/** A place on a line through points: on the piece that starts at point `after`, at `share` of its length. */
export interface PlaceOnLine {
  readonly after: number;
  readonly share: number;
}

/** The place on the line through the points that is nearest to another, if within `reach` mm; null = none is. */
export function nearestOnLine(
  points: readonly SidePoint[],
  at: SidePoint,
  reach: number,
): PlaceOnLine | null {
  let nearest: PlaceOnLine | null = null;
  let least = reach;
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i]!, points[i + 1]!];
    const [dx, dz] = [b.x - a.x, b.z - a.z];
    const lengthSq = dx * dx + dz * dz;
    const along = lengthSq > 0 ? ((at.x - a.x) * dx + (at.z - a.z) * dz) / lengthSq : 0;
    const share = Math.min(1, Math.max(0, along));
    const distance = Math.hypot(at.x - a.x - share * dx, at.z - a.z - share * dz);
    if (distance > least) continue;
    least = distance;
    nearest = { after: i, share };
  }
  return nearest;
}

/** The left tire seen from the side: its center in vehicle axes and its radius without load, mm. */
export interface TireCircle {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly radius: number;
}

/** The left tire at a height, steered straight ahead; where the linkage cannot go there, as the truck was measured. */
export function tireCircle(truck: Truck, travel = 0): TireCircle {
  const radius = truck.model.tire.freeRadius;
  const pose = solvePose(truck.model.frontEnd, travel, 0);
  if (!pose.ok)
    return travel === 0 ? { x: 0, y: 0, z: truck.model.tire.loadedRadius, radius } : tireCircle(truck);
  const [x, y, z] = pose.left.wheelCenter;
  return { x, y, z, radius };
}

/** A point as the file holds it, in mm; null where a coordinate is none. */
export function pointInMm(typed: unknown, units: FileUnits): readonly [number, number, number] | null {
  if (!Array.isArray(typed)) return null;
  const [x, y, z] = typed.map((coordinate: unknown) => {
    const value = bareTyped(coordinate);
    const length = typeof value === "number" || typeof value === "string" ? parseLength(value, units) : null;
    return length?.ok ? length.mm : null;
  });
  return x == null || y == null || z == null ? null : [x, y, z];
}

/** A point as the file holds it, put elsewhere in the side view: to whole steps, its y as typed. */
export function movedPoint(
  typed: unknown,
  to: SidePoint,
  step: LengthStep,
  units: FileUnits,
): readonly unknown[] {
  const [x, y, z]: readonly unknown[] = Array.isArray(typed) ? typed : [0, 0, 0];
  return [
    withSameWithin(x, steppedText(to.x, step, units), units),
    y,
    withSameWithin(z, steppedText(to.z, step, units), units),
  ];
}

/** A length to the nearest whole step, as the file may hold it. */
export function steppedText(mm: number, step: LengthStep, units: FileUnits): string {
  const size = step.units === "in" ? step.size * MM_PER_INCH : step.size;
  return plainLengthText(Math.round(mm / size) * size, units, step.units);
}
