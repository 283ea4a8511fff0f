import type { Vec3 } from "../../geometry/vec.ts";
import type { PhotoPlane, Pixel } from "./photoPlane.ts";

/** How far out the lip is at one place along the truck, mm; a photo from the side does not show it. */
export interface LipOffset {
  readonly ahead: number;
  readonly offset: number;
}

/** Points of the lip, vehicle axes of its own side, y outboard, mm; or what is wrong (one sentence without a full stop). */
export type TracedArch =
  | { readonly ok: true; readonly points: readonly Vec3[] }
  | { readonly ok: false; readonly mend: string };

/**
 * A fender arch traced in a side photo: ahead and up from the picture, outboard from places where it was read with a
 * tape, straight between them and level beyond. The lip is taken to lie in the plane of the known points: a lip that
 * lies behind it by a share of the camera's distance is traced nearer the picture's middle by about that share.
 * @param traced in order along the lip, px
 * @param offsets at one place at least, in any order
 */
export function archFromPhoto(
  plane: PhotoPlane,
  traced: readonly Pixel[],
  offsets: readonly LipOffset[],
): TracedArch {
  if (traced.length < 2) return { ok: false, mend: "trace at least two points of the lip" };
  if (offsets.length === 0)
    return { ok: false, mend: "read how far out the lip is, at one place at least, on the worksheet" };
  const known = [...offsets].sort((a, b) => a.ahead - b.ahead);
  const points: Vec3[] = [];
  for (const pixel of traced) {
    const at = plane.toTruck(pixel);
    if (at === null)
      return { ok: false, mend: "a traced point lies beyond the truck's side; trace the lip alone" };
    points.push([at[0], offsetAt(known, at[0]), at[1]]);
  }
  return { ok: true, points };
}

function offsetAt(known: readonly LipOffset[], ahead: number): number {
  const next = known.findIndex((one) => one.ahead >= ahead);
  if (next === 0) return known[0]!.offset;
  if (next < 0) return known.at(-1)!.offset;
  const [a, b] = [known[next - 1]!, known[next]!];
  return a.offset + ((ahead - a.ahead) / (b.ahead - a.ahead)) * (b.offset - a.offset);
}
