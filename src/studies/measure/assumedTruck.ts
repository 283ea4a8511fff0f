import type { Vec3 } from "../../geometry/vec.ts";
import { bodyPointName } from "../../setup/blocks/readings/readingPoint.ts";
import type { PointName, ReadingSize } from "../../setup/types/readingTypes.ts";

/**
 * A front end that nobody has: a layout of our own invention, round numbers of the size that full-size pickups have. What no
 * reading tells of is taken from it, scaled by the readings there are, and always told as assumed. mm, vehicle axes,
 * left side.
 */
export const ASSUMED_POINTS: ReadonlyMap<PointName, Vec3> = new Map([
  ["upperArm.frontPivot", [120, 415, 450]],
  ["upperArm.rearPivot", [-160, 410, 440]],
  ["upperArm.ballJoint", [-10, 630, 475]],
  ["lowerArm.frontPivot", [190, 270, 240]],
  ["lowerArm.rearPivot", [-190, 265, 245]],
  ["lowerArm.ballJoint", [10, 670, 215]],
  ["steering.innerEnd", [-160, 300, 260]],
  ["steering.pitman.pivot", [-300, 380, 420]],
  ["steering.pitman.end", [-160, 380, 270]],
  ["steering.idler.pivot", [-300, -380, 420]],
  ["steering.idler.end", [-160, -380, 270]],
  ["wheelCenter", [0, 840, 337]],
  ["tieRodOuter", [-140, 640, 255]],
]);

/** Part that is assumed where a truck has none yet: the one most tires meet first. */
const ASSUMED_LIP = "fender lip";

/** A round arch over the wheel, its lip turned in toward both ends. */
const LIP: readonly Vec3[] = [
  [440, 890, 340],
  [390, 905, 550],
  [230, 912, 715],
  [0, 915, 775],
  [-230, 912, 715],
  [-390, 905, 550],
  [-440, 890, 340],
];

/** The lip's points by the names that readings use. */
export const ASSUMED_LIP_POINTS: ReadonlyMap<PointName, Vec3> = new Map(
  LIP.map((point, i) => [bodyPointName(ASSUMED_LIP, i), point]),
);

/** Sizes of the same truck. mm. */
export const ASSUMED_SIZES: Readonly<Record<ReadingSize, number>> = {
  wheelbase: 2950,
  track: 1680,
  frameWidth: 780,
  "tire.diameter": 710,
  "tire.sectionWidth": 240,
  "tire.treadWidth": 185,
  "tire.shoulderDrop": 10,
  "wheel.backspacing": 110,
  "wheel.lipToLip": 230,
};

/** mm, one standard deviation: how far a truck's points lie from those of the scaled layout; a guess. */
export const ASSUMED_WITHIN = 100;

/** Share of a size by which it may differ from the assumed one; a guess. */
export const ASSUMED_SIZE_WITHIN = 0.2;

/** mm: how far a number already in the setup may be from the truck, where it does not say itself: half an inch. */
export const GIVEN_WITHIN = 12.7;

/** mm: how far the right side may be from the left one's mirror image on a truck that was not bent: half an inch. */
export const SYMMETRY_WITHIN = 12.7;

/** mm: a mark may be anywhere about the truck. */
export const MARK_WITHIN = 2000;
