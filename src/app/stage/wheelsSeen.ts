import { convexHull, type Polygon } from "../../gaps/ring/convexPieces.ts";
import { addScaled, cross, normalize, type Vec3 } from "../../geometry/vec.ts";
import { type SidePose, solvePose } from "../../suspension/solvePose.ts";
import { memoLast } from "../state/memoLast.ts";
import type { Truck } from "../state/truck.ts";
import type { ScreenPoint } from "./overlay/gapMark.ts";
import { HALF } from "./overlay/placeLabels.ts";

/** Points around each of a tire's two rims: an outline of so many corners looks round enough to stay off. */
const AROUND = 12;

/** Shares of a label's width and height at which it is asked what is under it. */
const ACROSS = [-1, -0.5, 0, 0.5, 1];
const DOWN = [-1, 0, 1];

/** Both tires, a list a pose: straight ahead and at either lock, as measured, at full bump and at full droop. */
const tiresOf = memoLast((truck: Truck): readonly (readonly (readonly Vec3[])[])[] => {
  const { droop, bump } = truck.setup.travel;
  return [0, bump, droop].flatMap((travel) =>
    [0, -1, 1].flatMap((steer) => {
      const pose = solvePose(truck.model.frontEnd, travel, steer);
      return pose.ok ? [[pose.left, pose.right].map((side) => rimsOf(truck, side))] : [];
    }),
  );
});

function rimsOf(truck: Truck, { wheelCenter, wheelAxis }: SidePose): Vec3[] {
  const { freeRadius, profile } = truck.model.tire;
  const up = normalize(addScaled([0, 0, 1], wheelAxis, -wheelAxis[2]));
  const ahead = cross(wheelAxis, up);
  return [profile[0]!, profile[profile.length - 2]!].flatMap((x) =>
    Array.from({ length: AROUND }, (_, i) => {
      const turn = (2 * Math.PI * i) / AROUND;
      const rim = addScaled(addScaled(wheelCenter, wheelAxis, x), up, freeRadius * Math.cos(turn));
      return addScaled(rim, ahead, freeRadius * Math.sin(turn));
    }),
  );
}

/**
 * How much of a label, by its middle and half its width in pixels, lies on tires: 0 … 1, over all the poses the truck goes
 * through. The pose shown has no say in it, so that what keeps off the tires need not move while they are moved.
 */
export function wheelsSeen(
  truck: Truck,
  toScreen: (point: Vec3) => ScreenPoint,
): (at: ScreenPoint, half: number) => number {
  let outlines: readonly (readonly Polygon[])[] | null = null;
  return (at, half) => {
    outlines ??= tiresOf(truck).map((pair) => pair.map((rims) => outlineOf(rims.map(toScreen))));
    let under = 0;
    for (const pair of outlines)
      for (const right of ACROSS)
        for (const down of DOWN)
          if (pair.some((tire) => isInside(tire, at.x + right * half, at.y + down * HALF))) under++;
    return under / Math.max(1, outlines.length * ACROSS.length * DOWN.length);
  };
}

function outlineOf(points: readonly ScreenPoint[]): Polygon {
  return convexHull(points.map(({ x, y }) => [x, y]));
}

function isInside(outline: Polygon, x: number, y: number): boolean {
  return outline.every(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length]!;
    return (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= 0;
  });
}
