import { dot, length, type Vec3 } from "../geometry/vec.ts";
import { type Linkage, linkAt } from "./centerLink.ts";
import type { InnerEndSpread } from "./motionBound.ts";
import { MOTION_SLACK } from "./tolerances.ts";

/**
 * Bounds the inner tie rod ends' motion over a range of steer for pitman-arm steering, by ball arithmetic
 * as in `motionBoundTo`: the idler end's ball is guessed and verified, the rest follows.
 * @param reach farthest inner end from the pitman end, mm. @returns false when nothing is proven.
 */
export function linkSpreadTo(
  out: InnerEndSpread,
  linkage: Linkage,
  steer: number,
  half: number,
  restLine: Vec3,
  reach: number,
): boolean {
  const link = linkAt(linkage, steer);
  if (link === null) return false;
  const { swing, linkLength } = linkage;
  const pitmanRadius = length(linkage.pitman.radial);
  const idlerRadius = length(linkage.idler.radial);
  const endSpeed = pitmanRadius * Math.abs(swing);
  const endOff = endSpeed * half;
  const endRateOff = endSpeed * Math.abs(swing) * half;
  const grip = dot(link.line, link.tangent);
  let idlerOff = 1.25 * idlerRadius * Math.abs(link.idlerTurn) * half;
  let lineOff = 0;
  let turnOff = 0;
  let proven = false;
  for (let i = 0; i < 8 && !proven; i++) {
    lineOff = (idlerOff + endOff) / linkLength;
    const gripLeast = Math.abs(grip) - idlerOff - lineOff * idlerRadius;
    if (!(gripLeast > 0)) return false;
    const pullOff = endRateOff + lineOff * endSpeed;
    turnOff = (pullOff + Math.abs(link.idlerTurn) * (idlerOff + lineOff * idlerRadius)) / gripLeast;
    const path = idlerRadius * (Math.abs(link.idlerTurn) + turnOff) * half;
    proven = path <= idlerOff;
    if (!proven) idlerOff = 1.25 * path;
  }
  if (!proven) return false;
  const idlerRateOff = Math.abs(link.idlerTurn) * idlerOff + idlerRadius * turnOff;
  const lineRateOff = (idlerRateOff + endRateOff) / linkLength;
  const lineSpeed = length(link.lineRate);
  const lineSpeedMost = lineSpeed + lineRateOff;
  // Turn of the link: rate(v) = c' v + w' × v + w' s + w s', s = w·v/(1 + c), every factor with its ball;
  // |w| ≤ 1, |w'|, |c'| ≤ line speed, |v| ≤ reach.
  const room = 1 + dot(restLine, link.line) - lineOff;
  if (!(room > 0)) return false;
  const shareMost = reach / room;
  const shareOff = (lineOff * reach + lineOff * shareMost) / room;
  const shareRateMost = (lineSpeedMost * (reach + shareMost)) / room;
  const shareRateOff =
    (lineRateOff * (reach + shareMost) + lineSpeedMost * shareOff + lineOff * shareRateMost) / room;
  const turnRateOff =
    2 * lineRateOff * reach +
    lineRateOff * shareMost +
    lineSpeedMost * shareOff +
    lineOff * shareRateMost +
    shareRateOff;
  const turnRateMost = 2 * lineSpeedMost * reach + lineSpeedMost * shareMost + shareRateMost;
  out.velocityOff = (endRateOff + turnRateOff) * MOTION_SLACK;
  out.speedMost = (endSpeed + turnRateMost) * MOTION_SLACK;
  return true;
}
