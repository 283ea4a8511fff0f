import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { cross, dot, length, scale, sub, type Vec3 } from "../../../src/geometry/vec.ts";
import { equilibriumOf } from "../../../src/studies/loads/equilibrium.ts";
import { linkageAt } from "../../../src/studies/loads/linkageAt.ts";
import { type ForceAt, plus, wrenchAbout } from "../../../src/studies/strength/wrench.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { EngineMechanism } from "../../reference/mujoco/engine.ts";
import { mechanismXml } from "../../reference/mujoco/mechanismXml.ts";
import { drawnTrucks, inputOf } from "../../suspension/drawnTrucks.ts";
import { assembled } from "../../suspension/trucks.ts";

/**
 * The forces in the joints against a general-purpose rigid-body engine (mujoco-js 0.0.7): a load is held on the left knuckle
 * until nothing moves, and the engine's own constraint forces are read. Its lower ball joint is a joint of its tree, not a
 * constraint: the force there is what the knuckle's balance leaves over. The lower arm's drive stands for the spring: its
 * torque about the pivot line is the push by its lever.
 */

/** N: light, since the engine's constraints give a little under load. Forces grow with the load in proportion. */
const LOADS: readonly (readonly [name: string, force: Vec3])[] = [
  ["up", [0, 0, 1]],
  ["braking in a turn", [-0.7, -0.6, 1.2]],
  ["curb", [-1.5, 0.3, 0.4]],
];
const POSES = [
  { travel: 0, steer: 0 },
  { travel: 55, steer: 0.8 },
  { travel: -60, steer: -0.6 },
];
/** Share of the load. The engine solves to about 1e-8 of its own scale. */
const TOLERANCE = 1e-6;

describe.each(drawnTrucks.slice(0, 4).map((truck) => [truck.name, truck] as const))("%s", (_, truck) => {
  const frontEnd = assembled(inputOf(truck));
  let engine: EngineMechanism;
  beforeAll(async () => {
    engine = await EngineMechanism.load(mechanismXml(truck));
  });
  afterAll(() => engine.free());

  it.each(POSES)("carries as the engine does at travel $travel mm, steer $steer", ({ travel, steer }) => {
    const pose = solvePose(frontEnd, travel, steer);
    const linkage = linkageAt(frontEnd, "left", travel, steer);
    if (!pose.ok || linkage === null) throw new Error("out of reach");
    engine.drive("drive.left.lowerArm", pose.left.armAngle);
    engine.drive("drive.right.lowerArm", pose.right.armAngle);
    engine.driveSteering(truck, steer);
    for (const [name, force] of LOADS) {
      const load: ForceAt = { at: linkage.contactPatch, force };
      const { moment } = wrenchAbout(linkage.lowerBallJoint, [load]);
      engine.push("left.knuckle", force, moment);
      for (let chunk = 0; chunk < 40; chunk++) {
        engine.step(100);
        if (engine.speed < 1e-11) break;
      }
      // Any line will do in place of the spring, as long as it has a lever.
      const { foot, axis } = linkage.pivots.lowerArm;
      const at = linkage.lowerBallJoint;
      const along: Vec3 = [0, 0, -1];
      const found = equilibriumOf(linkage, [load], { on: "lowerArm", at, along });
      if (found === null) throw new Error("no equilibrium");
      const size = length(force);
      const expectForce = (mine: Vec3, theirs: readonly number[], what: string) =>
        expect(length(sub(mine, theirs as unknown as Vec3)) / size, `${name}, ${what}`).toBeLessThan(
          TOLERANCE,
        );

      const upper = engine.forcesOf("left.upperBallJoint") as unknown as Vec3;
      const rod = scale(engine.forcesOf("left.tieRod") as unknown as Vec3, -1);
      expectForce(found.upperBallJoint, upper, "upper ball joint");
      expectForce(found.tieRod, rod, "tie rod");
      expectForce(found.lowerBallJoint, scale(plus(plus(upper, rod), force), -1), "lower ball joint");
      // The engine's hinge turns the arm up with +; the push works against it, down the same line.
      const torque = Math.abs(dot(axis, cross(sub(at, foot), scale(along, found.push))));
      const drive = Math.abs(engine.forcesOf("drive.left.lowerArm")[0]! * 1000);
      expect(Math.abs(torque - drive) / (size * length(sub(at, foot))), `${name}, spring`).toBeLessThan(
        TOLERANCE,
      );
      expect(length(found.lowerBallJoint)).toBeGreaterThan(0.3);
    }
  });
});
