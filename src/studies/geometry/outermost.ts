import type { Vec3 } from "../../geometry/vec.ts";
import type { BodyPart } from "../../setup/types/truckTypes.ts";
import type { SidePose } from "../../suspension/solvePose.ts";

/** Heights of the ground's axes looked at, mm; both ends included. */
export interface HeightBand {
  readonly low: number;
  readonly high: number;
}

/** Angles about the wheel axis: between them the outline is off by less than R (1 − cos 0.125°), 0.001 mm on any tire. */
const AROUND = 1440;

/**
 * The largest distance, level, from an upright line through (x, y) to the tire's outline within a band of heights.
 * 0 when no point of the outline lies in the band. Vehicle axes, mm.
 * @param profile rows [x, r] of the ring, x + outboard.
 */
export function tireDistance(
  { wheelCenter: c, wheelAxis: n }: SidePose,
  profile: Float64Array,
  [x, y]: readonly [number, number],
  band: HeightBand,
): number {
  const level = Math.sqrt(n[0] ** 2 + n[1] ** 2);
  // Across the axis: level, and the steepest way up.
  const across: Vec3 = [n[1] / level, -n[0] / level, 0];
  const up: Vec3 = [(-n[2] * n[0]) / level, (-n[2] * n[1]) / level, level];
  let mostSq = 0;
  for (let at = 0; at < profile.length; at += 2) {
    const [along, radius] = [profile[at]!, profile[at + 1]!];
    for (let step = 0; step < AROUND; step++) {
      const angle = (2 * Math.PI * step) / AROUND;
      const [a, b] = [radius * Math.cos(angle), radius * Math.sin(angle)];
      const z = c[2] + along * n[2] + b * up[2];
      if (!(z >= band.low && z <= band.high)) continue;
      const dx = c[0] + along * n[0] + a * across[0] + b * up[0] - x;
      const dy = c[1] + along * n[1] + a * across[1] + b * up[1] - y;
      mostSq = Math.max(mostSq, dx * dx + dy * dy);
    }
  }
  return Math.sqrt(mostSq);
}

/** The same to a body part as it stands on the truck, on every side it has; corners decide, for the distance is convex. */
export function bodyDistance(part: BodyPart, [x, y]: readonly [number, number]): number {
  const points = outlinePoints(part);
  const at = (sign: 1 | -1) => Math.max(...points.map(([px, py]) => Math.hypot(px - x, sign * py - y)));
  const typedRight = points.reduce((sum, [, py]) => sum + py, 0) < 0;
  const isLeft = part.side !== "right";
  const most = Math.max(
    isLeft ? at(1) : 0,
    part.side === "left" ? 0 : at(part.side === "right" && typedRight ? 1 : -1),
  );
  return most + (part.kind === "path" ? part.radius : 0);
}

function outlinePoints(part: BodyPart): (readonly [number, number])[] {
  switch (part.kind) {
    case "path":
      return part.points.map(([x, y]) => [x, y]);
    case "box":
      return [part.min, part.max].flatMap(([x]) => [part.min, part.max].map(([, y]) => [x, y] as const));
    case "mesh":
      return Array.from({ length: part.positions.length / 3 }, (_, i) => [
        part.positions[3 * i]!,
        part.positions[3 * i + 1]!,
      ]);
  }
}
