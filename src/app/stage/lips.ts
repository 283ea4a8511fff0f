import type { BodyPart, PathPart } from "../../setup/types/truckTypes.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { memoLast } from "../state/memoLast.ts";
import type { Truck } from "../state/truck.ts";

/** What a path is held against to tell whether it is the lip of a wheel opening: mm, as the truck was measured. */
export interface WheelPlace {
  /** Of the wheel's center, from the centerline; positive. */
  readonly y: number;
  readonly z: number;
  readonly freeRadius: number;
}

/**
 * Whether a part is drawn with the side of a fender over it: a path that runs past the wheel fore and aft, no nearer to the
 * truck's middle than the wheel's middle is, and has no part lower than the wheel's lower quarter. Only the drawing depends
 * on it.
 */
export function isLip(part: BodyPart, wheel: WheelPlace): part is PathPart {
  if (part.kind !== "path" || part.points.length < 2) return false;
  const xs = part.points.map(([x]) => x);
  const highest = Math.max(...part.points.map(([, , z]) => z));
  return (
    Math.max(...xs) - Math.min(...xs) > 1.1 * wheel.freeRadius &&
    part.points.every(([, y]) => Math.abs(y) > wheel.y) &&
    highest > wheel.z
  );
}

/** The truck's wheel, for `isLip`; null where the truck cannot stand as it was measured. */
export const measuredWheel = memoLast((truck: Truck): WheelPlace | null => {
  const pose = solvePose(truck.model.frontEnd, 0, 0);
  if (!pose.ok) return null;
  const [, y, z] = pose.left.wheelCenter;
  return { y: Math.abs(y), z, freeRadius: truck.model.tire.freeRadius };
});
