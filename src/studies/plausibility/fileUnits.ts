import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { Point } from "../../setup/types/truckTypes.ts";
import type { Setup } from "../../setup/types/types.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import { isUsual, type Unusual, type UsualRange } from "./unusual.ts";

/** Center plane to lower ball joint, mm: 15 to 40 in. Common practice, no source. */
const HALF_WIDTH: UsualRange = { least: 15 * MM_PER_INCH, most: 40 * MM_PER_INCH };

/** Ball joint to ball joint of the arms in height, mm: 5 to 22 in. Common practice, no source. */
const APART: UsualRange = { least: 5 * MM_PER_INCH, most: 22 * MM_PER_INCH };

/** Inches in a file that says mm, or the other way: the whole front end is 25 times too small or too large. */
export function mixedFileUnits(setup: Setup): readonly Unusual[] {
  const { upperArm, lowerArm } = setup.truck;
  const halfWidth = Math.abs(lowerArm.ballJoint[1]);
  const apart = Math.abs(upperArm.ballJoint[2] - lowerArm.ballJoint[2]);
  const factor = setup.units === "mm" ? MM_PER_INCH : 1 / MM_PER_INCH;
  const isOff = !isUsual(halfWidth, HALF_WIDTH) && !isUsual(apart, APART);
  if (!isOff || !isUsual(halfWidth * factor, HALF_WIDTH) || !isUsual(apart * factor, APART)) return [];
  return [
    {
      check: "fileUnits",
      kind: "length",
      value: halfWidth,
      ...HALF_WIDTH,
      beside: null,
      paths: [["units"], ["truck", "lowerArm", "ballJoint", 1]],
      meant: [{ slip: "unit", value: halfWidth * factor }],
    },
  ];
}

/** A point somebody measured. */
export interface MeasuredPoint {
  readonly path: KeyPath;
  readonly at: Point;
  /** `front`: arms and steering; `body`: parts of the body and points over the floor. */
  readonly of: "front" | "body";
  /** +1: given for the left side; −1: for the right; 0: for neither, or for both. */
  readonly side: 1 | -1 | 0;
}

/** Every measured point of a setup but those of meshes, which are not typed. */
export function measuredPoints({ truck, floor }: Setup): readonly MeasuredPoint[] {
  const { steering } = truck;
  const front = (path: KeyPath, at: Point, side: 1 | -1 | 0): MeasuredPoint => ({
    path: ["truck", ...path],
    at,
    side,
    of: "front",
  });
  const arms = (["upperArm", "lowerArm"] as const).flatMap((arm) =>
    (["frontPivot", "rearPivot", "ballJoint"] as const).map((key) => front([arm, key], truck[arm][key], 1)),
  );
  const link =
    steering.type === "rack"
      ? [front(["steering", "innerEnd"], steering.innerEnd, 1)]
      : [
          front(["steering", "innerEnd"], steering.innerEnd, 1),
          front(["steering", "innerEndRight"], steering.innerEndRight, -1),
          ...(["pitman", "idler"] as const).flatMap((arm) =>
            (["pivot", "end"] as const).map((key) => front(["steering", arm, key], steering[arm][key], 0)),
          ),
        ];
  const body = truck.body.flatMap((part, i): readonly MeasuredPoint[] => {
    const ofPart = (key: KeyPath, at: Point): MeasuredPoint => ({
      path: ["truck", "body", i, ...key],
      at,
      side: 0,
      of: "body",
    });
    if (part.kind === "path") return part.points.map((at, n) => ofPart(["points", n], at));
    return part.kind === "box" ? [ofPart(["min"], part.min), ofPart(["max"], part.max)] : [];
  });
  const overFloor = (["lip", "frame"] as const).flatMap((key): readonly MeasuredPoint[] => {
    const at = floor?.[key];
    return at ? [{ path: ["floor", key], at, of: "body", side: 1 }] : [];
  });
  return [...arms, ...link, ...body, ...overFloor];
}
