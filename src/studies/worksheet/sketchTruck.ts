import type { Vec3 } from "../../geometry/vec.ts";

/**
 * The truck that the worksheet's sketches show: no truck's numbers, but spread so that each place can be told from the
 * next. Vehicle axes, mm, left side.
 */
const PLACES: Readonly<Record<string, Vec3>> = {
  "upperArm.frontPivot": [130, 415, 560],
  "upperArm.rearPivot": [-130, 415, 540],
  "upperArm.ballJoint": [-55, 640, 570],
  "lowerArm.frontPivot": [185, 270, 300],
  "lowerArm.rearPivot": [-185, 270, 310],
  "lowerArm.ballJoint": [50, 690, 270],
  "steering.innerEnd": [-165, 310, 370],
  "steering.pitman.pivot": [-60, 300, 430],
  "steering.pitman.end": [-170, 285, 375],
  "steering.idler.pivot": [-60, -300, 430],
  "steering.idler.end": [-170, -285, 375],
  tieRodOuter: [-155, 655, 345],
  wheelCenter: [0, 840, 400],
  contactPatch: [0, 840, 0],
  rimTop: [0, 940, 625],
  rimBottom: [0, 940, 175],
  rimFront: [225, 940, 400],
  rimRear: [-225, 940, 400],
};

/** The fender lip, front to rear: an arch over the tire, a little tucked in at its ends; the fourth point is over the axle. */
const LIP: readonly Vec3[] = Array.from({ length: 7 }, (_, i): Vec3 => {
  const turn = Math.PI * (0.08 + (0.84 * i) / 6);
  return [500 * Math.cos(turn), 955 - 30 * (1 - Math.sin(turn)), 400 + 470 * Math.sin(turn)];
});

/** mm. What is drawn round the places. */
export const SHAPE = {
  tireRadius: 400,
  tireInboard: 735,
  tireOutboard: 945,
  rimRadius: 225,
  railInboard: 262,
  railOutboard: 340,
  railBottom: 470,
  railTop: 640,
  lip: LIP,
} as const;

/** Where a place named in a reading is on the sketch truck; null = it shows no such place. @param name as in the setup file */
export function sketchPlace(name: string): Vec3 | null {
  const point = /^body\[.*lip.*\]\.points\[(\d+)\]$/.exec(name);
  if (point) return LIP[Number(point[1])] ?? null;
  if (/^body\[.*rail.*\]/.test(name)) return [0, SHAPE.railOutboard, SHAPE.railBottom];
  return PLACES[name] ?? null;
}
