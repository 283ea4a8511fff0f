import { length, sub } from "../../src/geometry/vec.ts";
import type { Model } from "../../src/studies/model/model.ts";
import { type SolvedPose, solvePose } from "../../src/suspension/solvePose.ts";
import type { DrawnTruck } from "../reference/mujoco/drawnTruck.ts";
import { EngineMechanism } from "../reference/mujoco/engine.ts";
import { mechanismXml } from "../reference/mujoco/mechanismXml.ts";
import type { GridPose } from "./poseGrid.ts";

/** Time steps looked at when the steps a pose needs are counted; far beyond where the engine comes to rest. */
const LOOKED_AT = 300;
const MOST_CYCLES = 20;

/**
 * The physics engine (mujoco-js 0.0.7) pushed to each pose in turn, both wheels at once, starting where the
 * pose before left it. Like the pose kernel it is told the lower arm angles and the steering input.
 *
 * It takes as many time steps at each pose as it needs to bring both wheel centers within `accuracy` of the
 * closed form for good: counted beforehand, so that it is charged neither for steps it does not need nor for
 * looking whether it is there.
 */
export interface SettledPoses {
  /** Time steps a pose, on average. */
  readonly stepsPerPose: number;
  /** @returns the sum of the wheel centers' coordinates, left-hand frame of each side, mm. */
  readonly run: () => number;
  /** Runs once. @returns how far the worst wheel center was from the closed form's, mm. */
  readonly worstError: () => number;
  readonly free: () => void;
}

/**
 * Builds the mechanism of a truck with a rack and counts its steps. @param accuracy mm.
 * @throws Error when a pose is out of reach or the engine does not come that near.
 */
export async function settledPoses(
  model: Model,
  at: readonly GridPose[],
  accuracy: number,
): Promise<SettledPoses> {
  const poses = at.map(({ travel, steer }) => solved(model, travel, steer));
  const truck = drawnAtRest(model);
  const engine = await EngineMechanism.load(withoutIdleIterations(mechanismXml(truck)));
  const driveTo = (pose: SolvedPose): void => {
    engine.drive("drive.left.lowerArm", pose.left.armAngle);
    engine.drive("drive.right.lowerArm", pose.right.armAngle);
    engine.driveSteering(truck, pose.steer);
  };
  /** The engine at each pose after so many steps. */
  const cycle = (steps: readonly number[], atPose: (pose: SolvedPose, i: number) => void): void => {
    for (const [i, pose] of poses.entries()) {
      driveTo(pose);
      engine.step(steps[i]!);
      atPose(pose, i);
    }
  };

  // One cycle to be where a cycle begins, one to count.
  cycle(
    poses.map(() => LOOKED_AT),
    () => {},
  );
  const steps = poses.map((pose) => {
    driveTo(pose);
    let enough = 1;
    for (let step = 1; step <= LOOKED_AT; step++) {
      engine.step(1);
      if (!(errorAt(engine, pose) <= accuracy)) enough = step + 1;
    }
    return enough;
  });
  // What a pose cut short leaves moving can cost the next one a step more.
  for (let short = 1, cycles = 0; short > 0; cycles++) {
    if (cycles === MOST_CYCLES || Math.max(...steps) > LOOKED_AT) {
      throw new Error(`settledPoses: the engine does not come within ${accuracy} mm`);
    }
    short = 0;
    cycle(steps, (pose, i) => {
      if (errorAt(engine, pose) <= accuracy) return;
      steps[i]!++;
      short++;
    });
  }
  return {
    stepsPerPose: steps.reduce((sum, n) => sum + n, 0) / steps.length,
    run() {
      let sum = 0;
      cycle(steps, () => {
        const left = engine.site("left.wheelCenter");
        const right = engine.site("right.wheelCenter");
        sum += left[0] + left[1] + left[2] + right[0] - right[1] + right[2];
      });
      return sum;
    },
    worstError() {
      let worst = 0;
      cycle(steps, (pose) => {
        worst = Math.max(worst, errorAt(engine, pose));
      });
      return worst;
    },
    free: () => engine.free(),
  };
}

/**
 * The comparison of poses has the engine's solver run at every step until nothing changes, which takes three
 * times as long. The engine's own setting (1e-8) comes as near in as many steps, so that is what is timed.
 */
function withoutIdleIterations(xml: string): string {
  const found = 'tolerance="0"';
  if (!xml.includes(found)) throw new Error(`withoutIdleIterations: the model has no ${found}`);
  return xml.replace(found, 'tolerance="1e-8"');
}

/** How far the farther of the two wheel centers is from the closed form's, mm. */
function errorAt(engine: EngineMechanism, { left, right }: SolvedPose): number {
  return Math.max(
    length(sub(engine.site("left.wheelCenter"), left.wheelCenter)),
    length(sub(engine.site("right.wheelCenter"), right.wheelCenter)),
  );
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
