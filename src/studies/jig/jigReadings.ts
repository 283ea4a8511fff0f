import type { Vec3 } from "../../geometry/vec.ts";
import type { JigReadings, JigSetup, ReadingKey } from "../../setup/types/asBuiltTypes.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";

/** A knuckle as a jig can read it: its own dimensions, and how far its pin is turned toward toe-in on the jig (rad). */
export interface BuiltKnuckle extends KnuckleSetup {
  readonly toe: number;
}

/** What every reading of a knuckle is. */
export type AllReadings = Readonly<Record<ReadingKey, number>>;

/**
 * What the jig reads of a knuckle, mm and radians, either hand: ahead, outboard and up.
 *
 * Jig frame: origin at the lower ball joint center, z up to the upper one, x forward along the straightedge on the ball
 * joint line, y outboard. The pin points along (sin t cos a, cos t cos a, −sin a), t toe built in, a pin angle: the
 * knuckle frame is the jig frame turned by t about z, so that the pin lies in its y–z plane.
 *
 * A tape from the mark (±L, 0, h) of that straightedge, square to the hub face, is the mark's distance to the face's
 * plane. The face's center is (lead, H cos a, p − H sin a) in the knuckle frame, so it reads
 * H − (p − h) sin a ∓ L sin t cos a: the hub face itself at pin height without toe.
 * @param clampedAt mm up from the lower ball joint center
 */
export function jigReadingsOf(built: BuiltKnuckle, jig: JigSetup, clampedAt: number): AllReadings {
  const { span, pinHeight, pinLead, pinAngle, hubFace, steeringArm, toe } = built;
  const [sin, cos] = [Math.sin(pinAngle), Math.cos(pinAngle)];
  const atMiddle = hubFace - (pinHeight - clampedAt) * sin;
  const toed = jig.halfLength * Math.sin(toe) * cos;
  const arm = turned(steeringArm, toe);
  const up = (z: number) => z + jig.jointHeight;
  return {
    front: atMiddle - toed,
    behind: atMiddle + toed,
    faceAngle: pinAngle,
    faceHeight: up(pinHeight - hubFace * sin),
    pinEndHeight: up(pinHeight - (hubFace + jig.pinEnd) * sin),
    lead: turned([pinLead, hubFace * cos, 0], toe)[0],
    span,
    armAhead: arm[0],
    armOut: arm[1],
    armUp: up(arm[2]),
    lowerToArm: Math.hypot(...steeringArm),
    upperToArm: Math.hypot(steeringArm[0], steeringArm[1], steeringArm[2] - span),
  };
}

/** A point of the knuckle frame in the jig frame. @param toe rad */
export function turned([x, y, z]: Vec3, toe: number): Vec3 {
  const [sin, cos] = [Math.sin(toe), Math.cos(toe)];
  return [x * cos + y * sin, y * cos - x * sin, z];
}

/** Where a straightedge stood, mm up from the lower ball joint center. @param clampedAt as read; null = at pin height */
export function clampHeight(clampedAt: number | null, knuckle: KnuckleSetup, jig: JigSetup): number {
  return clampedAt === null ? knuckle.pinHeight : clampedAt - jig.jointHeight;
}

/** The keys that were read, in their order in the file. */
export function readKeys(readings: JigReadings): readonly ReadingKey[] {
  return Object.keys(readings) as ReadingKey[];
}
