import { bodyPointName } from "../../setup/blocks/readings/readingPoint.ts";
import { isWithin, type KeyPath } from "../../setup/types/keyPath.ts";
import type { PointName, Reading } from "../../setup/types/readingTypes.ts";
import type { Setup } from "../../setup/types/types.ts";
import { ASSUMED_LAYOUT } from "../../setup/worksheet/assumedLayout.ts";
import { baseOf, pointsOf } from "../measure/equations.ts";

const JOINTS = ["lowerArm.ballJoint", "upperArm.ballJoint"] as const;

/** What the knuckle's numbers are worked out of where nobody typed them (`withReadings`). */
const KNUCKLE: Readonly<Record<string, readonly PointName[]>> = {
  span: JOINTS,
  pinAngle: JOINTS,
  pinHeight: [...JOINTS, "wheelCenter"],
  hubFace: [...JOINTS, "wheelCenter"],
  steeringArm: [...JOINTS, "tieRodOuter"],
};

/**
 * The readings that values of a setup are worked out of, in their order; none where somebody typed one of them, or the truck
 * is no worksheet.
 * @param paths of numbers or points
 */
export function readingsBehind(setup: Setup, paths: readonly KeyPath[]): readonly Reading[] {
  const { fromExample, readings } = setup;
  if (fromExample?.of !== ASSUMED_LAYOUT) return [];
  if (paths.some((path) => fromExample.mine.some((mine) => isWithin(path, mine)))) return [];
  const points = new Set(paths.flatMap((path) => pointsBehind(setup, path)));
  return readings.filter((reading) => pointsOf(reading).some((point) => points.has(baseOf(point))));
}

function pointsBehind({ truck }: Setup, [block, ...inside]: KeyPath): readonly PointName[] {
  const [part, at, list, point] = inside;
  if (block === "knuckle") return KNUCKLE[String(part)] ?? [];
  if (block === "tire") return part === "loadedRadius" ? ["wheelCenter"] : [];
  if (block !== "truck") return [];
  if (part !== "body") return [`${part}.${at}`];
  const name = typeof at === "number" ? truck.body[at]?.name : undefined;
  return name !== undefined && list === "points" && typeof point === "number"
    ? [bodyPointName(name, point)]
    : [];
}
