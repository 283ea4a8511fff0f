import { dot, length, type Vec3 } from "../../geometry/vec.ts";
import type { RodEndSetup, StudSetup } from "../../setup/types/buildTypes.ts";
import { stressArea } from "../../units/threadCallout.ts";
import { combinedStress, roundSection } from "./roundSection.ts";

/**
 * Combined stress of a stud at its taper's large end, where it is held: bent by the force across it by its reach, pulled or
 * pushed by the rest. MPa. @param direction unit, along the stud; @param force on the knuckle there, N, in the same frame
 */
export function studStress({ diameter, reach }: StudSetup, direction: Vec3, force: Vec3): number {
  const pull = dot(force, direction);
  const across = Math.sqrt(Math.max(0, dot(force, force) - pull * pull));
  return combinedStress(roundSection(diameter, null), {
    pull,
    shear: across,
    bending: across * reach,
    torque: 0,
  });
}

/**
 * Combined stress of a rod end's shank where it is held, on the round section that has its thread's stress area (ASME B1.1,
 * ISO 898-1): pulled by the force along it, bent by what its lean sets across it, by its reach. MPa.
 */
export function rodEndStress({ thread, reach, lean }: RodEndSetup, force: Vec3): number {
  const size = length(force);
  const across = Math.abs(size * Math.sin(lean));
  const section = roundSection(Math.sqrt((4 * stressArea(thread)) / Math.PI), null);
  return combinedStress(section, {
    pull: size * Math.cos(lean),
    shear: across,
    bending: across * reach,
    torque: 0,
  });
}
