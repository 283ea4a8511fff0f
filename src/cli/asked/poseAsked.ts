import type { LengthUnit } from "../../setup/types/types.ts";
import type { Model } from "../../studies/model/model.ts";
import { jointOf } from "../../suspension/poseStatus.ts";
import { type OutOfReach, type SolvedPose, solvePose } from "../../suspension/solvePose.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { InputError } from "./inputError.ts";
import { type OptionPlace, readLength, readSteer } from "./readNumbers.ts";
import type { Truck } from "./readTruck.ts";

/** The pose of `--travel` and `--steer`, each 0 where it was not typed. @throws InputError */
export function askedPose(
  { file, model }: Truck,
  { travel = "0", steer = "0" }: { readonly travel?: string; readonly steer?: string },
): SolvedPose {
  const travelPlace = { file, option: "--travel", value: travel };
  const steerPlace = { file, option: "--steer", value: steer };
  const mm = readLength(travel, model.setup.units, travelPlace);
  return poseAt(model, mm, readSteer(steer, steerPlace), { travel: travelPlace, steer: steerPlace });
}

/** A pose solved. @throws InputError at the option that is to blame where it is out of reach */
export function poseAt(
  model: Model,
  travel: number,
  steer: number,
  places: { readonly travel: OptionPlace; readonly steer: OptionPlace },
): SolvedPose {
  const pose = solvePose(model.frontEnd, travel, steer);
  if (pose.ok) return pose;
  const { file, option, value } = places[pose.along];
  throw InputError.ofOption(file, option, value, reachMend(pose, model.setup.units));
}

/** What is out of reach, and the last value that is not, rounded so that typing it works. */
export function reachMend(pose: OutOfReach, units: LengthUnit): string {
  const joint = `the ${pose.side} ${jointOf(pose.status)}`;
  const decimals = units === "in" ? 1e4 : 1e3;
  const inward = (value: number, scale: number) => Math.trunc(value * scale) / scale + 0;
  return pose.along === "travel"
    ? `${joint} cannot follow past travel ${inward(unitsFromMm(pose.startsAt, units), decimals)} ${units}; give less travel`
    : `${joint} cannot follow past steer ${inward(pose.startsAt, 1e4)} at this height; give less steer`;
}
