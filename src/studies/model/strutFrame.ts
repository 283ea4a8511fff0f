import { POSE } from "../../suspension/poseRow.ts";
import { SIDE } from "../../suspension/sideRow.ts";

/** Below this share of the wheel's lever the pin passes the lower ball joint and fixes no frame. */
const LEAST_SHARE = 1e-9;

/**
 * Fills, of a pose row at 0, the lower ball joint, the knuckle frame and the wheel from where joint and wheel stand: the
 * wheel's center and axis, known in the knuckle frame, fix how the knuckle is turned.
 * @param joint, wheel three and six numbers. @returns false where the wheel's axis passes the joint itself, so that it
 * fixes nothing.
 */
export function frameFromWheelTo(
  out: Float64Array,
  side: Float64Array,
  joint: Float64Array,
  jointAt: number,
  wheel: Float64Array,
  wheelAt: number,
): boolean {
  const toCenter = [0, 1, 2].map((i) => wheel[wheelAt + i]! - joint[jointAt + i]!);
  const axis = [0, 1, 2].map((i) => wheel[wheelAt + 3 + i]!);
  const localCenter = [0, 1, 2].map((i) => side[SIDE.wheelCenter + i]!);
  const localAxis = [0, side[SIDE.pinCos]!, -side[SIDE.pinSin]!];
  const now = triad(axis, toCenter);
  const local = triad(localAxis, localCenter);
  if (now === null || local === null) return false;
  for (let i = 0; i < 3; i++) {
    out[POSE.lowerBallJoint + i] = joint[jointAt + i]!;
    out[POSE.wheelCenter + i] = wheel[wheelAt + i]!;
    out[POSE.wheelAxis + i] = wheel[wheelAt + 3 + i]!;
    for (let k = 0; k < 3; k++) {
      let sum = 0;
      for (let e = 0; e < 3; e++) sum += local[e]![k]! * now[e]![i]!;
      out[POSE.knuckleX + 3 * k + i] = sum;
    }
  }
  return true;
}

/** Three unit vectors at right angles, the first along `u` (unit), the second in the plane of `u` and `v`. */
function triad(u: readonly number[], v: readonly number[]): number[][] | null {
  const along = dot(u, v);
  const across = v.map((x, i) => x - along * u[i]!);
  const size = Math.sqrt(dot(across, across));
  if (!(size > LEAST_SHARE * Math.sqrt(dot(v, v)))) return null;
  const second = across.map((x) => x / size);
  const third = [0, 1, 2].map((i) => {
    const j = (i + 1) % 3;
    const k = (i + 2) % 3;
    return u[j]! * second[k]! - u[k]! * second[j]!;
  });
  return [[...u], second, third];
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!;
}
