import { mirrorY, sub } from "../../geometry/vec.ts";
import type { Setup } from "../../setup/types/types.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import type { Model } from "../model/model.ts";
import { springOrShockOnArm, springOrShockOnKnuckle } from "../model/springOrShock.ts";
import type { FrontEndLimit } from "./frontEndLimit.ts";
import { ballJointLimits } from "./jointLimits.ts";
import { lengthLimits } from "./lengthLimits.ts";
import { centerLinkEndLimit, outerTieRodEndLimit, rackEndLimit } from "./rodEndLimits.ts";
import { bumpStopLimit, droopStrapLimit, steeringStopLimit, strokeLimit } from "./stopLimits.ts";

/** Every limit the setup gives, for one side, in a fixed order that is the same on both. */
export function limitsOn(model: Model, side: Side): FrontEndLimit[] {
  const { setup, frontEnd } = model;
  const { row, innerAtRest } = frontEnd[side];
  const { limits, airSpring, travel } = setup;
  const rest = new Float64Array(POSE_ROW);
  const [x, y, z] = innerAtRest;
  if (poseRowTo(rest, 0, row, 1, 0, x, y, z) !== PoseStatus.Ok)
    throw new TypeError("limitsOn: an assembled side must stand at rest");
  const found: FrontEndLimit[] = [];
  if (limits !== null) {
    const { upperBallJoint, lowerBallJoint, outerTieRodEnd, innerTieRodEnd, shock } = limits;
    if (upperBallJoint) found.push(...ballJointLimits("upper ball joint", row, upperBallJoint, rest));
    if (lowerBallJoint) found.push(...ballJointLimits("lower ball joint", row, lowerBallJoint, rest));
    if (outerTieRodEnd) found.push(outerTieRodEndLimit(outerTieRodEnd));
    if (innerTieRodEnd) {
      const other = mirrorY(frontEnd[side === "left" ? "right" : "left"].innerAtRest);
      found.push(
        setup.truck.steering.type === "rack"
          ? rackEndLimit(innerTieRodEnd, rest)
          : centerLinkEndLimit(innerTieRodEnd, sub(other, innerAtRest)),
      );
    }
    if (limits.bumpStop !== null) found.push(bumpStopLimit(limits.bumpStop, travel.droop));
    if (limits.droopStrap !== null) found.push(droopStrapLimit(limits.droopStrap, travel.bump));
    if (shock) {
      const mounted =
        shock.on === "knuckle"
          ? springOrShockOnKnuckle(shock.bodyMount, shock.lowerMount)
          : springOrShockOnArm(row, shock.bodyMount, shock.lowerMount);
      const names = { least: "shock compression", most: "shock extension" };
      found.push(...lengthLimits(mounted, names, shock.compressed, shock.extended));
    }
    if (limits.steeringStop !== null) found.push(steeringStopLimit(limits.steeringStop));
    if (limits.steeringStroke !== null) {
      const { steering } = setup.truck;
      const full = steering.type === "rack" ? steering.stroke : steering.swing;
      found.push(strokeLimit(steering.type, limits.steeringStroke, full));
    }
  }
  if (airSpring !== null) {
    const names = { least: "air spring compression", most: "air spring extension" };
    const mounted = springOrShockOnArm(row, airSpring.bodyMount, airSpring.armMount);
    found.push(...lengthLimits(mounted, names, airSpring.leastHeight, airSpring.greatestHeight));
  }
  return found;
}

/** Names of what the setup could limit and does not. */
export function notChecked({ limits, airSpring, truck }: Setup): string[] {
  const missing = (name: string, given: unknown) => (given === null || given === undefined ? [name] : []);
  return [
    ...missing("upper ball joint", limits?.upperBallJoint),
    ...missing("lower ball joint", limits?.lowerBallJoint),
    ...missing("outer tie rod end", limits?.outerTieRodEnd),
    ...missing("inner tie rod end", limits?.innerTieRodEnd),
    ...missing("bump stop", limits?.bumpStop),
    ...missing("droop strap", limits?.droopStrap),
    ...missing("shock length", limits?.shock),
    ...missing("steering stop", limits?.steeringStop),
    ...missing(truck.steering.type === "rack" ? "rack stroke" : "pitman arm swing", limits?.steeringStroke),
    ...missing("air spring compression", airSpring?.leastHeight),
    ...missing("air spring extension", airSpring?.greatestHeight),
  ];
}
