import { addScaled, scale, type Vec3 } from "../../../geometry/vec.ts";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import type { KnuckleSetup } from "../../../setup/types/types.ts";
import { angleText, lengthText } from "../../../studies/wording/lengths.ts";
import type { Side } from "../../../suspension/frontEnd.ts";
import type { SolvedPose } from "../../../suspension/solvePose.ts";
import { radFromDeg } from "../../../units/angle.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import type { ScreenPoint } from "../overlay/gapMark.ts";
import { knuckleAxes } from "../overlay/knuckleAxes.ts";
import type { Picture } from "./picturePlane.ts";

/** A field that a mark moves, and which way the mark goes for one unit more of it: a mm, or a degree. Vehicle axes, mm. */
export interface DimensionWay {
  readonly path: KeyPath;
  readonly unit: "mm" | "degree";
  readonly way: Vec3;
}

/** A dimension of the knuckle that can be dragged where it ends. */
export interface DimensionHandle {
  readonly key: string;
  readonly name: string;
  /** What it is now, with its unit. */
  readonly value: string;
  /** Where it ends, vehicle axes, mm. */
  readonly seen: Vec3;
  readonly ways: readonly DimensionWay[];
}

/** mm past the hub face at which the pin's angle is taken hold of: far enough to turn it finely. */
const PAST_FACE = 70;

/** The knuckle's dimensions at a pose, each at its end: hub face, pin angle, pin height, span and the outer tie rod end. */
export function dimensionHandles(
  { span, pinHeight, pinLead, hubFace, pinAngle, steeringArm }: KnuckleSetup,
  pose: SolvedPose,
  side: Side,
  format: LengthFormat,
): readonly DimensionHandle[] {
  const { x, y, z, at } = knuckleAxes(pose, side);
  const [cos, sin] = [Math.cos(pinAngle), Math.sin(pinAngle)];
  const out = addScaled(scale(y, cos), z, -sin);
  const onPin = (far: number) => at(pinLead, far * cos, pinHeight - far * sin);
  const grip = hubFace + PAST_FACE;
  const lower = addScaled(scale(y, -sin), z, -cos);
  const lone = (key: string, name: string, mm: number, seen: Vec3, way: Vec3): DimensionHandle => ({
    key,
    name,
    seen,
    value: lengthText(mm, format),
    ways: [{ path: ["knuckle", key], unit: "mm", way }],
  });
  return [
    lone("hubFace", "hub face", hubFace, onPin(hubFace), out),
    {
      key: "pinAngle",
      name: "pin angle",
      seen: onPin(grip),
      value: angleText(pinAngle),
      ways: [{ path: ["knuckle", "pinAngle"], unit: "degree", way: scale(lower, grip * radFromDeg(1)) }],
    },
    lone("pinHeight", "pin height", pinHeight, onPin(0), z),
    lone("span", "span", span, at(0, 0, span), z),
    {
      key: "steeringArm",
      name: "steering arm",
      seen: at(...steeringArm),
      value: steeringArm.map((mm, i) => `${"xyz"[i]} ${lengthText(mm, format)}`).join(", "),
      ways: [x, y, z].map((way, i) => ({ path: ["knuckle", "steeringArm", i], unit: "mm", way })),
    },
  ];
}

/** A field seen less than this share of its length moves too much for a hand. */
const LEAST_SEEN = 0.25;

/** Pixels on the picture of one unit more of each way. */
function seenWays({ ways }: DimensionHandle, { axes }: Picture): ScreenPoint[] {
  return ways.map(({ way }) => ({
    x: axes[0].x * way[0] + axes[1].x * way[1] + axes[2].x * way[2],
    y: axes[0].y * way[0] + axes[1].y * way[1] + axes[2].y * way[2],
  }));
}

/** Pixels of a mm that lies in the picture. */
function zoomOf({ axes }: Picture): number {
  return Math.sqrt(axes.reduce((sum, { x, y }) => sum + x * x + y * y, 0) / 2);
}

/**
 * By how much each field of a dimension changes when its mark is carried over the picture, units of each way: of several the two
 * that are seen best. null = it is seen from its end, and no carrying tells how far.
 */
export function carriedBy(
  handle: DimensionHandle,
  picture: Picture,
  right: number,
  down: number,
): readonly number[] | null {
  const ways = seenWays(handle, picture);
  const zoom = zoomOf(picture);
  const real = handle.ways.map(({ way }) => zoom * Math.hypot(...way));
  let best: { readonly i: number; readonly j: number; readonly area: number } | null = null;
  for (const [i, a] of ways.entries())
    for (const [j, b] of ways.entries()) {
      const area = (a.x * b.y - a.y * b.x) / (real[i]! * real[j]!);
      if (j > i && Math.abs(area) > Math.max(LEAST_SEEN, Math.abs(best?.area ?? 0))) best = { i, j, area };
    }
  if (best) {
    const [a, b] = [ways[best.i]!, ways[best.j]!];
    const whole = a.x * b.y - a.y * b.x;
    const along = [(right * b.y - down * b.x) / whole, (a.x * down - a.y * right) / whole];
    return ways.map((_, k) => (k === best.i ? along[0]! : k === best.j ? along[1]! : 0));
  }
  const most = ways.reduce((at, { x, y }, i) => (Math.hypot(x, y) / real[i]! > LEAST_SEEN ? i : at), -1);
  if (most < 0) return null;
  const { x, y } = ways[most]!;
  return ways.map((_, k) => (k === most ? (right * x + down * y) / (x * x + y * y) : 0));
}

/** A way nearer than this to square to an arrow key does not follow it. */
const ALONG = 0.3;

/**
 * The field that an arrow key moves and which way, by the picture: the one that goes most nearly as the key points.
 * null = none does.
 */
export function nudgedBy(
  handle: DimensionHandle,
  picture: Picture,
  right: number,
  up: number,
): { readonly at: number; readonly steps: 1 | -1 } | null {
  let best: { readonly at: number; readonly steps: 1 | -1; readonly share: number } | null = null;
  for (const [at, { x, y }] of seenWays(handle, picture).entries()) {
    const share = (right * x - up * y) / (zoomOf(picture) * Math.hypot(...handle.ways[at]!.way));
    if (Math.abs(share) > Math.max(ALONG, best?.share ?? 0))
      best = { at, steps: share > 0 ? 1 : -1, share: Math.abs(share) };
  }
  return best;
}
