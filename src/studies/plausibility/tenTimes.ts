import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { Point } from "../../setup/types/truckTypes.ts";
import type { Setup } from "../../setup/types/types.ts";
import type { Meant, Unusual } from "./unusual.ts";

/** A number this many times its neighbors', or this share of them, has its decimal point one place off. */
const LEAST_TIMES = 7;
const MOST_TIMES = 14;

/** Neighbors agree when they differ by less than this share of their mean. */
const AGREE = 0.35;

/** mm. Numbers this small differ tenfold for good reasons. */
const SMALLEST = 60;

/** Coordinates that are ten times, or a tenth of, what their neighbors agree on: along a path, and of an arm's two pivots. */
export function tenTimesNeighbors(setup: Setup): readonly Unusual[] {
  const ofPaths = setup.truck.body.flatMap((part, i) =>
    part.kind === "path" ? alongPath(part.points, ["truck", "body", i, "points"]) : [],
  );
  const ofArms = (["upperArm", "lowerArm"] as const).flatMap((arm) => {
    const { frontPivot, rearPivot } = setup.truck[arm];
    return [1, 2].flatMap((axis): readonly Unusual[] => {
      const [a, b] = [frontPivot[axis]!, rearPivot[axis]!];
      // Of two, the one farther from what arms have (y, z of pivots: some 10 in) is the slip: the larger, if it is over 30 in.
      const isFront = Math.abs(a) > Math.abs(b) === Math.max(Math.abs(a), Math.abs(b)) > 762;
      const [value, other] = isFront ? [a, b] : [b, a];
      const key = isFront ? "frontPivot" : "rearPivot";
      return slipOf(value, [other, other], ["truck", arm, key, axis]);
    });
  });
  return [...ofPaths, ...ofArms];
}

function alongPath(points: readonly Point[], path: KeyPath): readonly Unusual[] {
  if (points.length < 3) return [];
  return points.flatMap((point, n) => {
    const [a, b] =
      n === 0
        ? [points[1]!, points[2]!]
        : n === points.length - 1
          ? [points[n - 2]!, points[n - 1]!]
          : [points[n - 1]!, points[n + 1]!];
    return point.flatMap((value, axis) => slipOf(value, [a[axis]!, b[axis]!], [...path, n, axis]));
  });
}

function slipOf(value: number, [a, b]: readonly [number, number], path: KeyPath): readonly Unusual[] {
  const mean = 0.5 * (a + b);
  if (!(Math.abs(a - b) <= AGREE * Math.abs(mean)) || Math.abs(value - mean) < SMALLEST) return [];
  const times = value / mean;
  const factor =
    times >= LEAST_TIMES && times <= MOST_TIMES
      ? 0.1
      : times >= 1 / MOST_TIMES && times <= 1 / LEAST_TIMES
        ? 10
        : null;
  if (factor === null) return [];
  const meant: readonly Meant[] = [{ slip: "place", value: value * factor }];
  return [
    {
      check: "tenTimes",
      paths: [path],
      kind: "length",
      value,
      least: null,
      most: null,
      meant,
      beside: mean,
    },
  ];
}
