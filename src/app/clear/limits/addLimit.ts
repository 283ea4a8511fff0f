import type { KeyPath } from "../../../setup/types/keyPath.ts";
import type { Setup } from "../../../setup/types/types.ts";
import { degFromRad } from "../../../units/angle.ts";
import { unitsFromMm } from "../../../units/lengthUnits.ts";

/** A field that has a limit checked, and a number to begin with, in the file's own units. */
export interface LimitToAdd {
  readonly path: KeyPath;
  readonly value: number;
}

/** Degrees. Numbers to begin with until the maker's own are typed (common practice, no source). */
const BALL_JOINT_CONE = 22;
const ROD_END_SWING = 25;
const STEERING_STOP = 37;

/**
 * How a limit that is not checked is added; null where it takes more than a number, such as where a shock is mounted.
 * @param name as `notChecked` calls it
 */
export function limitToAdd(name: string, { truck, travel, units }: Setup): LimitToAdd | null {
  const length = (mm: number) => Number(unitsFromMm(mm, units).toFixed(4));
  const { steering } = truck;
  switch (name) {
    case "upper ball joint":
      return { path: ["limits", "upperBallJoint", "cone"], value: BALL_JOINT_CONE };
    case "lower ball joint":
      return { path: ["limits", "lowerBallJoint", "cone"], value: BALL_JOINT_CONE };
    case "outer tie rod end":
      return { path: ["limits", "outerTieRodEnd", "misalignment"], value: ROD_END_SWING };
    case "inner tie rod end":
      return { path: ["limits", "innerTieRodEnd", "misalignment"], value: ROD_END_SWING };
    case "bump stop":
      return { path: ["limits", "bumpStop", "travel"], value: length(travel.bump) };
    case "droop strap":
      return { path: ["limits", "droopStrap", "travel"], value: length(travel.droop) };
    case "steering stop":
      return { path: ["limits", "steeringStop", "angle"], value: STEERING_STOP };
    case "rack stroke":
      return steering.type === "rack"
        ? { path: ["limits", "rackStroke"], value: length(steering.stroke) }
        : null;
    case "pitman arm swing":
      return steering.type === "pitman"
        ? { path: ["limits", "pitmanSwing"], value: Number(degFromRad(steering.swing).toFixed(3)) }
        : null;
    default:
      return null;
  }
}
