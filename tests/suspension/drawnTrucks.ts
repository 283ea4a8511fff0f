import { dot, normalize } from "../../src/geometry/vec.ts";
import type { FrontEndInput } from "../../src/suspension/inputs.ts";
import type { DrawnSteering, DrawnTruck } from "../reference/mujoco/drawnTruck.ts";
import { knuckleFromPoints } from "./trucks.ts";

const DEG = Math.PI / 180;

type Base = Omit<DrawnTruck, "name" | "steering">;

/** Steering arm behind the axle, long arms, pivots leaned for anti-dive, a little negative camber and toe-in. */
const rearSteer: Base = {
  lowerArm: { frontPivot: [182, 262, 251], rearPivot: [-196, 254, 232] },
  upperArm: { frontPivot: [121, 398, 452], rearPivot: [-164, 391, 434] },
  lowerBallJoint: [12, 681, 214],
  upperBallJoint: [-14, 632, 478],
  tieRodOuter: [-149, 642, 252],
  wheelCenter: [3, 801, 356],
  spinAxis: [0.004, 1, 0.013],
  armAhead: false,
};

/** Steering arm ahead of the axle, short arms far off level, much caster, wheel toed out. */
const frontSteer: Base = {
  lowerArm: { frontPivot: [141, 371, 263], rearPivot: [-173, 332, 287] },
  upperArm: { frontPivot: [72, 452, 496], rearPivot: [-119, 441, 463] },
  lowerBallJoint: [21, 652, 205],
  upperBallJoint: [-27, 629, 531],
  tieRodOuter: [158, 667, 239],
  wheelCenter: [11, 768, 331],
  spinAxis: [-0.006, 1, -0.009],
  armAhead: true,
};

/** Tall knuckle, upper arm much shorter than the lower one, both pivot lines splayed in plan and in side view. */
const tallKnuckle: Base = {
  lowerArm: { frontPivot: [231, 301, 205], rearPivot: [-152, 241, 236] },
  upperArm: { frontPivot: [91, 511, 631], rearPivot: [-143, 472, 652] },
  lowerBallJoint: [-6, 706, 221],
  upperBallJoint: [-31, 664, 649],
  tieRodOuter: [-171, 689, 301],
  wheelCenter: [-2, 815, 371],
  spinAxis: [0, 1, 0.02],
  armAhead: false,
};

const rack = (innerEnd: readonly [number, number, number], stroke: number): DrawnSteering => ({
  type: "rack",
  innerEnd,
  stroke,
});

/** Invented trucks: no real vehicle. mm, vehicle axes, left side. */
export const drawnTrucks: readonly DrawnTruck[] = [
  { name: "rear steer, rack", ...rearSteer, steering: rack([-157, 298, 268], 68) },
  { name: "front steer, rack", ...frontSteer, steering: rack([163, 352, 281], 61) },
  { name: "tall knuckle, rack", ...tallKnuckle, steering: rack([-168, 281, 309], 72) },
  {
    name: "rear steer, pitman on upright axes, unlike inner ends",
    ...rearSteer,
    steering: {
      type: "pitman",
      innerEnd: [-171, 233, 266],
      innerEndRight: [-169, -241, 264],
      swing: 33 * DEG,
      pitman: { pivot: [-22, 318, 291], axis: [0, 0, 1], end: [-163, 322, 272] },
      idler: { pivot: [-26, -316, 289], axis: [0, 0, 1], end: [-161, -309, 272] },
    },
  },
  {
    name: "front steer, pitman on leaned axes",
    ...frontSteer,
    steering: {
      type: "pitman",
      innerEnd: [178, 246, 288],
      innerEndRight: [181, -239, 286],
      swing: 31 * DEG,
      pitman: { pivot: [24, 331, 317], axis: [0.17, -0.05, 1], end: [158, 338, 276] },
      idler: { pivot: [31, -327, 309], axis: [-0.09, 0.07, -1], end: [161, -331, 281] },
    },
  },
  {
    name: "tall knuckle, pitman and idler out of parallel, inner ends well off the link",
    ...tallKnuckle,
    steering: {
      type: "pitman",
      innerEnd: [-201, 219, 338],
      innerEndRight: [-196, -228, 296],
      swing: 29 * DEG,
      pitman: { pivot: [-31, 297, 341], axis: [-0.21, 0.11, 1], end: [-168, 309, 311] },
      idler: { pivot: [-19, -291, 352], axis: [0.13, 0.16, 1], end: [-159, -301, 325] },
    },
  },
];

/** The same truck as the solver takes it: knuckle measured off the drawing, offset 0. */
export function inputOf(truck: DrawnTruck): FrontEndInput {
  const { steering } = truck;
  const spin = normalize(truck.spinAxis);
  const unit = (arm: Extract<DrawnSteering, { type: "pitman" }>["pitman"]) => ({
    ...arm,
    axis: normalize(arm.axis),
  });
  return {
    lowerArm: { ...truck.lowerArm, ballJoint: truck.lowerBallJoint },
    upperArm: { ...truck.upperArm, ballJoint: truck.upperBallJoint },
    steering:
      steering.type === "rack"
        ? steering
        : { ...steering, pitman: unit(steering.pitman), idler: unit(steering.idler) },
    knuckle: knuckleFromPoints(truck),
    wheelOffset: 0,
    loadedRadius: 350,
    // The drawn wheel heads atan2(−x, y) to the left; toe-in of a left wheel is the other way.
    toe: Math.atan2(dot(spin, [1, 0, 0]), dot(spin, [0, 1, 0])),
  };
}
