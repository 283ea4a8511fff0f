import { addScaled, dot, sub, type Vec3 } from "../../geometry/vec.ts";
import { MESH_UNITS, mmPerMeshUnit } from "../../setup/blocks/meshPlace.ts";
import type { MeshUnit } from "../../setup/types/truckTypes.ts";
import { degreesOf, turned } from "../measure/scanOnPoints.ts";
import type { Standing } from "./scanFit.ts";

/** A small step of a scan: along a vehicle axis (0 = x), mm, or about one, degrees by the right-hand rule. */
export type ScanStep =
  | { readonly along: 0 | 1 | 2; readonly mm: number }
  | { readonly about: 0 | 1 | 2; readonly degrees: number };

/** A step forward, out or up, mm. @param isOnRight it stands on the right as it was typed, so that out is toward −y */
export function stepAlong(axis: 0 | 1 | 2, mm: number, isOnRight: boolean): ScanStep {
  return { along: axis, mm: axis === 1 && isOnRight ? -mm : mm };
}

/** Where a scan stands after a step. @param middle of the scan as it stands, mm: it turns about it */
export function steppedScan(standing: Standing, step: ScanStep, middle: Vec3): Standing {
  const { turn, move } = standing;
  if ("along" in step) {
    const way: Vec3 = [0, 1, 2].map((axis) => (axis === step.along ? step.mm : 0)) as unknown as Vec3;
    return { ...standing, move: addScaled(move, way, 1) };
  }
  const rows = turnAbout(step.about, (step.degrees / 180) * Math.PI);
  const columns = [0, 1, 2].map((i): Vec3 => [turn[0][i]!, turn[1][i]!, turn[2][i]!]);
  const now = rows.map((row) => columns.map((column) => dot(row, column))) as unknown as Standing["turn"];
  return {
    turn: now,
    turnDegrees: degreesOf(now),
    move: addScaled(turned(rows, sub(move, middle)), middle, 1),
  };
}

function turnAbout(axis: 0 | 1 | 2, rad: number): Standing["turn"] {
  const [cos, sin] = [Math.cos(rad), Math.sin(rad)];
  const [u, v] = [(axis + 1) % 3, (axis + 2) % 3];
  const cell = (row: number, column: number) => {
    if (row === axis || column === axis) return row === column ? 1 : 0;
    if (row === column) return cos;
    return row === u && column === v ? -sin : sin;
  };
  return [0, 1, 2].map((row) => [0, 1, 2].map((column) => cell(row, column))) as unknown as Standing["turn"];
}

/** Lengths between which the longest side of a scanned fender or front clip lies, mm: 16 to 130 in. Common practice, no source. */
const FENDER = { least: 406, most: 3302 };

/** Where several units would do, the one whose size is nearest this, mm: a fender of 60 in. Common practice, no source. */
const USUAL = 1524;

/** Where the middle of a part of the body near a front wheel lies, mm from the origin: ahead, out, up. Common practice, no source. */
const NEAR_WHEEL = [
  { least: -1500, most: 1500 },
  { least: 400, most: 1200 },
  { least: 0, most: 1500 },
] as const;

/** The longest side of the least part that is scanned by itself, mm: 2 in. Common practice, no source. */
const LEAST_PART = 51;

/** What a mesh would be in one of the units. */
export interface UnitGuess {
  readonly unit: MeshUnit;
  /** Longest, middle and shortest side of the box about it, mm. */
  readonly sides: Vec3;
  /** It would be as large as a fender or a front clip. */
  readonly isFender: boolean;
  /** It would be that large, or lie beside a front wheel. */
  readonly isLikely: boolean;
}

/**
 * How large a mesh would be in each unit a file may be in, the likeliest first: the one in which it lies where a fender does,
 * since it has the truck's axes then; else told by the longest side of the box about it.
 * @param positions as the file has them
 */
export function unitGuesses(positions: ArrayLike<number>): readonly UnitGuess[] {
  const [min, max] = boxOf(positions);
  return MESH_UNITS.map((unit) => {
    const factor = mmPerMeshUnit(unit);
    const sides = sub(max, min)
      .map((side) => side * factor)
      .toSorted((a, b) => b - a) as unknown as Vec3;
    const middle = min.map((low, axis) => 0.5 * factor * (low + max[axis]!));
    const isThere =
      sides[0] >= LEAST_PART &&
      sides[0] <= FENDER.most &&
      NEAR_WHEEL.every((range, axis) => isIn(axis === 1 ? Math.abs(middle[1]!) : middle[axis]!, range));
    const isFender = isIn(sides[0], FENDER);
    const isLikely = isThere || isFender;
    const fromUsual = sides[0] > 0 ? Math.abs(Math.log(sides[0] / USUAL)) : Number.POSITIVE_INFINITY;
    return { unit, sides, isFender, isLikely, rank: isThere ? 0 : isLikely ? 1 : 2, fromUsual };
  }).sort((a, b) => a.rank - b.rank || a.fromUsual - b.fromUsual);
}

function isIn(value: number, { least, most }: { readonly least: number; readonly most: number }): boolean {
  return value >= least && value <= most;
}

/** The box about points, each three numbers; empty of none. */
export function boxOf(positions: ArrayLike<number>): readonly [min: Vec3, max: Vec3] {
  const min = [0, 1, 2].map(() => Number.POSITIVE_INFINITY) as [number, number, number];
  const max = [0, 1, 2].map(() => Number.NEGATIVE_INFINITY) as [number, number, number];
  for (let i = 0; i < positions.length; i++) {
    const axis = i % 3;
    min[axis] = Math.min(min[axis]!, positions[i]!);
    max[axis] = Math.max(max[axis]!, positions[i]!);
  }
  return [min, max];
}
