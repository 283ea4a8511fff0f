import { convexHull } from "../../../gaps/ring/convexPieces.ts";
import { addScaled, cross, dot, normalize, type Vec3 } from "../../../geometry/vec.ts";
import type { Model } from "../../../studies/model/model.ts";
import type { PictureMark } from "../../../studies/wording/pictureFacts.ts";
import type { Side } from "../../../suspension/frontEnd.ts";
import type { SolvedPose } from "../../../suspension/solvePose.ts";

/** From the front, or from above with the truck's front at the foot of the sheet, as it hangs over the front view. */
export type DrawingView = "front" | "above";

/** A point of the sheet, mm: u to the right, which is outboard; v down. */
export type SheetPoint = readonly [u: number, v: number];

/** One wheel with its knuckle at a pose, on a sheet. */
export interface WheelDrawing {
  /** Edge of what is seen of tire and rim. Exact for a profile that bulges outward alone; else its hull. */
  readonly outline: readonly SheetPoint[];
  /** Tire and rim cut through the axle, above and below; from the front only. */
  readonly sections: readonly (readonly SheetPoint[])[];
  /** Edge of the rim on the outside. */
  readonly rim: readonly SheetPoint[];
  readonly upperBallJoint: SheetPoint;
  readonly lowerBallJoint: SheetPoint;
  /** Where the pin leaves the steering axis. */
  readonly pinStart: SheetPoint;
  readonly hubFace: SheetPoint;
  /** Ends of the hub face's own line. */
  readonly hubFaceLine: readonly [SheetPoint, SheetPoint];
  readonly contactPatch: SheetPoint;
  /** The gap that is marked; null where there is none on that side. */
  readonly gap: DrawnGap | null;
}

/** A gap with its two ends on the sheet. */
export interface DrawnGap extends PictureMark {
  readonly onPart: SheetPoint;
  readonly onRing: SheetPoint;
}

/** Puts a point in vehicle axes on the sheet of one side's wheel; the right wheel is drawn as its mirror image. */
export function sheetOf(view: DrawingView, side: Side): (point: Vec3) => SheetPoint {
  const out = side === "left" ? 1 : -1;
  return view === "front" ? ([, y, z]) => [out * y, -z] : ([x, y]) => [out * y, x];
}

const SIDES_OF_CIRCLE = 96;
/** mm. Half the length drawn of the hub face: about a wheel stud circle. */
const HUB_FACE_HALF = 70;

/**
 * Draws one side's wheel at a pose. Costs a hull of some thousand points.
 * @param mark the gap that is marked, of that side at that pose; null = none
 */
export function wheelDrawing(
  model: Model,
  pose: SolvedPose,
  side: Side,
  view: DrawingView,
  mark: PictureMark | null = null,
): WheelDrawing {
  const { wheelCenter, wheelAxis, hubFace, upperBallJoint, lowerBallJoint, contactPatch } = pose[side];
  const put = sheetOf(view, side);
  // Up, or forward where one looks from above, square to the axle: e, and f square to both.
  const up = square(view === "front" ? [0, 0, 1] : [1, 0, 0], wheelAxis);
  const across = cross(wheelAxis, up);
  const at = (x: number, r: number, angle: number): SheetPoint => {
    const along = addScaled(wheelCenter, wheelAxis, x);
    return put(addScaled(addScaled(along, up, r * Math.cos(angle)), across, r * Math.sin(angle)));
  };
  const circle = (x: number, r: number) =>
    Array.from({ length: SIDES_OF_CIRCLE }, (_, k) => at(x, r, (2 * Math.PI * k) / SIDES_OF_CIRCLE));
  const { outline } = model.ring;
  const { profile } = model.tire;
  const end = profile.length;
  return {
    outline: convexHull(outline.flatMap(([x, r]) => circle(x, r))),
    sections: view === "front" ? [0, Math.PI].map((turn) => outline.map(([x, r]) => at(x, r, turn))) : [],
    rim: circle(profile[end - 2]!, profile[end - 1]!),
    upperBallJoint: put(upperBallJoint),
    lowerBallJoint: put(lowerBallJoint),
    pinStart: put(addScaled(hubFace, wheelAxis, -model.setup.knuckle.hubFace)),
    hubFace: put(hubFace),
    hubFaceLine: [put(addScaled(hubFace, up, HUB_FACE_HALF)), put(addScaled(hubFace, up, -HUB_FACE_HALF))],
    contactPatch: put(contactPatch),
    gap: mark && { ...mark, onPart: put(mark.entry.point), onRing: put(mark.entry.onRing) },
  };
}

/** The part of a direction square to a unit axis, of length 1. */
function square(way: Vec3, axis: Vec3): Vec3 {
  return normalize(addScaled(way, axis, -dot(way, axis)));
}
