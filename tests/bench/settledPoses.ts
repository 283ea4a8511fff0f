import type { Model } from "../../src/studies/model.ts";
import { type SolvedPose, solvePose } from "../../src/suspension/solvePose.ts";
import type { DrawnTruck } from "../reference/mujoco/drawnTruck.ts";
import { EngineMechanism } from "../reference/mujoco/engine.ts";
import { mechanismXml } from "../reference/mujoco/mechanismXml.ts";
import type { gridOf } from "./poseGrid.ts";

/** Meters or radians: largest equality violation left, as in the comparison of poses with the engine. */
const SETTLED = 1e-12;
/** Steps between two looks at the violation: few, so that the engine is not charged for idle steps. */
const STEPS_AT_ONCE = 10;
const MOST_STEPS = 4000;

/**
 * The physics engine (mujoco-js 0.0.7) pushed to each pose in turn, both wheels at once. Like the pose
 * kernel it is told the lower arm angles and the steering input.
 */
export interface SettledPoses {
  /** @returns the sum of the wheel centers' coordinates, left-hand frame of each side, mm. */
  readonly run: () => number;
  /** Time steps of the last run, all poses together. */
  readonly steps: () => number;
  readonly free: () => void;
}

/** Builds the mechanism of a truck with a rack. @throws Error when a pose is out of reach or never settles. */
export async function settledPoses(model: Model, at: ReturnType<typeof gridOf>): Promise<SettledPoses> {
  const poses = at.map(({ travel, steer }) => solved(model, travel, steer));
  const truck = drawnAtRest(model);
  const engine = await EngineMechanism.load(mechanismXml(truck));
  let steps = 0;
  return {
    run() {
      let sum = 0;
      steps = 0;
      for (const pose of poses) {
        engine.drive("drive.left.lowerArm", pose.left.armAngle);
        engine.drive("drive.right.lowerArm", pose.right.armAngle);
        engine.driveSteering(truck, pose.steer);
        steps += settle(engine);
        const left = engine.site("left.wheelCenter");
        const right = engine.site("right.wheelCenter");
        sum += left[0] + left[1] + left[2] + right[0] - right[1] + right[2];
      }
      return sum;
    },
    steps: () => steps,
    free: () => engine.free(),
  };
}

function settle(engine: EngineMechanism): number {
  for (let steps = STEPS_AT_ONCE; steps <= MOST_STEPS; steps += STEPS_AT_ONCE) {
    engine.step(STEPS_AT_ONCE);
    if (engine.residual < SETTLED) return steps;
  }
  throw new Error(`settle: ${engine.residual} left after ${MOST_STEPS} steps`);
}

function solved(model: Model, travel: number, steer: number): SolvedPose {
  const pose = solvePose(model.frontEnd, travel, steer);
  if (!pose.ok) throw new Error(`settledPoses: ${pose.side} out of reach at ${pose.along} ${pose.startsAt}`);
  return pose;
}

/** The truck as points of a drawing: its pivots, and the knuckle where it stands at rest. */
function drawnAtRest(model: Model): DrawnTruck {
  const { upperArm, lowerArm, steering, knuckle } = model.frontEnd.input;
  if (steering.type !== "rack") throw new RangeError(`drawnAtRest: needs a rack, got ${steering.type}`);
  const { left } = solved(model, 0, 0);
  return {
    name: model.setup.name,
    upperArm,
    lowerArm,
    upperBallJoint: left.upperBallJoint,
    lowerBallJoint: left.lowerBallJoint,
    tieRodOuter: left.tieRodOuter,
    wheelCenter: left.wheelCenter,
    spinAxis: left.wheelAxis,
    armAhead: knuckle.steeringArm[0] > 0,
    steering,
  };
}
