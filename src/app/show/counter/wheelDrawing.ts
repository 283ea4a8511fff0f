import { convexHull } from "../../../gaps/ring/convexPieces.ts";
import { addScaled, cross, dot, normalize, type Vec3 } from "../../../geometry/vec.ts";
import type { Model } from "../../../studies/model/model.ts";
import { sliceRing } from "../../../studies/section/sliceRing.ts";
import type { PictureMark } from "../../../studies/wording/pictureFacts.ts";
import type { Side } from "../../../suspension/frontEnd.ts";
import type { SolvedPose } from "../../../suspension/solvePose.ts";

/** From the front, or from above with the truck's front at the foot of the sheet, as it hangs over the front view. */
export type DrawingView = "front" | "above";

/** A point of the sheet, mm: u to the right, which is outboard; v down. */
export type SheetPoint = readonly [u: number, v: number];

/** One wheel with its knuckle at a pose, cut by the sheet's plane. */
export interface WheelDrawing {
  /** Edge of all that could be seen of tire and rim. Exact for a profile that bulges outward alone; else its hull. */
  readonly outline: readonly SheetPoint[];
  /** Tire and rim as they are cut; from the front below the axle by the axle's own plane, so that they stand on the floor. */
  readonly cut: readonly (readonly SheetPoint[])[];
  /** The wheel inside the barrel, from bead to bead. */
  readonly wheel: readonly SheetPoint[];
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

/** Where a view's plane lies: from the front across x, from above across z. */
const NORMAL: Readonly<Record<DrawingView, Vec3>> = { front: [1, 0, 0], above: [0, 0, 1] };

/**
 * Draws one side's wheel at a pose. Costs a hull of some thousand points.
 * @param plane where it is cut, mm: from the front at this x, from above at this height
 * @param mark the gap that is marked, of that side at that pose; null = none
 */
export function wheelDrawing(
  model: Model,
  pose: SolvedPose,
  side: Side,
  view: DrawingView,
  plane: number,
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
  const { outline, barrelRadius } = model.ring;
  const { profile } = model.tire;
  const beads = [profile[0]!, profile[profile.length - 2]!] as const;
  const sliceAt = (where: number) => sliceRing(model.ring, wheelCenter, wheelAxis, NORMAL[view], where);
  const loops =
    view === "front"
      ? [...upper(sliceAt(plane).halves, 1), ...upper(sliceAt(wheelCenter[0]).halves, -1)]
      : sliceAt(plane).loops;
  return {
    outline: convexHull(outline.flatMap(([x, r]) => circle(x, r))),
    cut: loops.map((loop) => loop.map(put)),
    wheel: [0, Math.PI].flatMap((turn) =>
      (turn === 0 ? beads : [...beads].reverse()).map((x) => at(x, barrelRadius, turn)),
    ),
    upperBallJoint: put(upperBallJoint),
    lowerBallJoint: put(lowerBallJoint),
    pinStart: put(addScaled(hubFace, wheelAxis, -model.setup.knuckle.hubFace)),
    hubFace: put(hubFace),
    hubFaceLine: [put(addScaled(hubFace, up, HUB_FACE_HALF)), put(addScaled(hubFace, up, -HUB_FACE_HALF))],
    contactPatch: put(contactPatch),
    gap: mark && { ...mark, onPart: put(mark.entry.point), onRing: put(mark.entry.onRing) },
  };
}

/** What moves the hub face square to the pin, so that it stands `at` down the sheet, mm; the pin's other end goes with it. */
export function dimensionShift({ pinStart, hubFace }: WheelDrawing, at: number): SheetPoint {
  const [du, dv] = [hubFace[0] - pinStart[0], hubFace[1] - pinStart[1]];
  const share = Math.abs(du) < 1e-6 ? 0 : (at - hubFace[1]) / du;
  return [-share * dv, share * du];
}

type Half = readonly (readonly Vec3[])[];

/** The upper of two halves, or with −1 the lower one. */
function upper([one, other]: readonly [Half, Half], way: 1 | -1): Half {
  const middle = (half: Half) => {
    const heights = half.flat().map(([, , z]) => z);
    return heights.reduce((sum, z) => sum + z, 0) / Math.max(1, heights.length);
  };
  return way * (middle(one) - middle(other)) >= 0 ? one : other;
}

/** The part of a direction square to a unit axis, of length 1. */
function square(way: Vec3, axis: Vec3): Vec3 {
  return normalize(addScaled(way, axis, -dot(way, axis)));
}
