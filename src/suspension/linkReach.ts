import { addScaled, cross, dot, length, scale, sub, type Vec3 } from "../geometry/vec.ts";
import { type Linkage, leastTurn } from "./centerLink.ts";
import { MOTION_SLACK, ROUNDING_SHARE } from "./tolerances.ts";

/** What `linkReachTo` says of a range of steer. */
export const LinkReach = { Unknown: 0, Empty: 1, Bounded: 2 } as const;
export type LinkReach = (typeof LinkReach)[keyof typeof LinkReach];

/** Where the center link can be over a range of steer. */
export interface LinkPlace {
  /** The pitman end in the middle of the range, mm. */
  end: Vec3;
  /** Takes a vector of the link at rest to where it points at a pose amid those of the range. */
  turned: (v: Vec3) => Vec3;
  /** How far the end of a vector of `reach` on the link can be from there, mm. */
  off: number;
}

/** The least turn is told only where the link points less than this off its line at rest, rad. */
const MOST_TURN = 2.5;

/**
 * Bounds the center link over a range of steer where the idler has no speed to go by, at the end of its reach. The
 * idler runs on a circle, and D, the way from its middle to the pitman end, sets where: cos θ = (|D|² + radius² −
 * link²) / (2·radius·D in the circle's plane), θ the idler's turn off the direction of D. Both factors are bounded over
 * the range, hence θ between two arc cosines; `Empty` where no cosine can be one: the link then has no pose in it.
 * @param restLine unit, from pitman end to idler end at rest. @param reach mm, from the pitman end to what is asked for.
 */
export function linkReachTo(
  out: LinkPlace,
  { pitman, idler, swing, root, linkLength }: Linkage,
  steer: number,
  half: number,
  restLine: Vec3,
  reach: number,
): LinkReach {
  const beta = swing * steer;
  const turn = Math.abs(swing) * half;
  const cos = Math.cos(beta);
  const sin = Math.sin(beta);
  const end = addScaled(addScaled(pitman.foot, pitman.radial, cos), pitman.quarter, sin);
  const rate = addScaled(scale(pitman.radial, -sin), pitman.quarter, cos);
  const radius = length(idler.radial);
  const d = sub(end, idler.foot);
  const a = dot(idler.radial, d) / radius;
  const b = dot(idler.quarter, d) / radius;
  const across = Math.hypot(a, b);
  const way = length(pitman.radial) * turn * MOTION_SLACK;
  // The arc leaves its tangent by half its curvature.
  const bend = 0.5 * way * turn;
  const acrossOff =
    (Math.abs(a * dot(idler.radial, rate) + b * dot(idler.quarter, rate)) / (radius * across)) *
      turn *
      MOTION_SLACK +
    bend +
    (way * way) / (2 * across);
  const distanceSq = dot(d, d);
  const c = 0.5 * (distanceSq + radius * radius - linkLength * linkLength);
  const rounding = ROUNDING_SHARE * (distanceSq + radius * radius + linkLength * linkLength);
  const cOff =
    Math.abs(dot(d, rate)) * turn * MOTION_SLACK + Math.sqrt(distanceSq) * bend + 0.5 * way * way + rounding;
  if (!(acrossOff < 0.5 * across) || !(way < 0.5 * across)) return LinkReach.Unknown;
  const narrow = radius * (across - acrossOff);
  const wide = radius * (across + acrossOff);
  const most = c + cOff >= 0 ? (c + cOff) / narrow : (c + cOff) / wide;
  const least = c - cOff >= 0 ? (c - cOff) / wide : (c - cOff) / narrow;
  if (least > 1 || most < -1) return LinkReach.Empty;
  const low = Math.acos(Math.min(1, most));
  const high = Math.acos(Math.max(-1, least));
  const theta = 0.5 * (low + high);
  // Angles from their sines, all below a right angle.
  const idlerOff = radius * (0.5 * (high - low) + 0.5 * Math.PI * (way / across)) * MOTION_SLACK;
  const turned = root * Math.sin(theta);
  const cosIdler = (a * Math.cos(theta) - b * turned) / across;
  const sinIdler = (b * Math.cos(theta) + a * turned) / across;
  const idlerEnd = addScaled(addScaled(idler.foot, idler.radial, cosIdler), idler.quarter, sinIdler);
  const link = sub(idlerEnd, end);
  const stretch = length(link);
  const line = scale(link, 1 / stretch);
  // The middle's own triangle may not close.
  const chord = ((idlerOff + way + Math.abs(stretch - linkLength)) / linkLength) * MOTION_SLACK;
  if (!(chord < 1)) return LinkReach.Unknown;
  const lineOff = 2 * Math.asin(0.5 * chord);
  const farthest = Math.atan2(length(cross(restLine, line)), dot(restLine, line)) + lineOff;
  const least0 = leastTurn(restLine, line, [0, 0, 0]);
  if (least0 === null || !(farthest < MOST_TURN)) return LinkReach.Unknown;
  out.end = end;
  out.turned = (v) => least0(v).at;
  // The least turn to a line is quicker than the line itself, by no more than 1/cos of half the angle between them.
  out.off = (way + reach * (lineOff / Math.cos(0.5 * farthest))) * MOTION_SLACK;
  return LinkReach.Bounded;
}
