import { cross, dot, length, scale, sub, type Vec3 } from "../../geometry/vec.ts";
import type { PinSetup } from "../../setup/types/buildTypes.ts";
import { pointOnPin } from "../../setup/types/jointPlaces.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";
import { type KnuckleLoads, pinDirection } from "./knuckleLoads.ts";
import {
  combinedStress,
  NO_RISE,
  roundSection,
  type SectionForces,
  type StressRise,
} from "./roundSection.ts";
import { shoulderRise } from "./stressRise.ts";
import { plus } from "./wrench.ts";

/** A place of the pin under load. */
export interface PinPlace {
  /** Along the pin from the steering axis, mm. */
  readonly at: number;
  readonly place: "root" | "step" | "inner bearing" | "outer bearing" | "inside the knuckle";
  readonly diameter: number;
  readonly forces: SectionForces;
  /** Combined stress of the plain section, MPa. */
  readonly nominal: number;
  /** The same raised by the shoulder there, MPa. */
  readonly vonMises: number;
  readonly rise: StressRise;
}

/** A body that the pin's first step grows out of is taken as this many times as thick: the rise hardly grows beyond. */
const BODY = 2;

/** mm. Forces this near a cut are on its outboard side. */
const ON_CUT = 1e-6;

/**
 * The pin as a cantilever out of where the knuckle holds it, cut at every place where its stress can be largest: there, at the
 * inner end of each step, and at the bearings, where bending turns. What is outboard of a cut loads it, whatever gives inboard.
 * @param heldTo along the pin, mm: farther in, what holds it shares its load
 */
export function pinStresses(
  pin: PinSetup,
  knuckle: KnuckleSetup,
  loads: KnuckleLoads,
  heldTo: number,
): readonly PinPlace[] {
  const { bearings, steps } = pin;
  if (bearings === null) return [];
  const places: Pick<PinPlace, "at" | "place">[] = [
    { at: heldTo, place: "root" },
    ...steps.flatMap(({ from }) => (from > heldTo + ON_CUT ? [{ at: from, place: "step" } as const] : [])),
    { at: bearings.inner, place: "inner bearing" },
    { at: bearings.outer, place: "outer bearing" },
  ];
  const pushes = [
    { at: bearings.inner, force: loads.innerBearing },
    { at: bearings.outer, force: loads.outerBearing },
  ];
  return places
    .sort((a, b) => a.at - b.at)
    .map(({ at, place }) => {
      const i = stepAt(pin, at);
      const step = steps[i]!;
      const section = roundSection(step.diameter, null);
      const forces = cutForces(knuckle, at, pushes);
      // Where the knuckle holds it along a step, no shoulder raises the stress; where a step starts there, its fillet does.
      const starts = Math.abs(step.from - at) < ON_CUT;
      const isShoulder =
        starts && (place === "step" || (place === "root" && (i > 0 || step.fillet !== null)));
      const larger = i === 0 ? BODY * step.diameter : steps[i - 1]!.diameter;
      const rise = isShoulder ? shoulderRise(larger, step.diameter, step.fillet) : NO_RISE;
      return {
        at,
        place,
        diameter: step.diameter,
        forces,
        rise,
        nominal: combinedStress(section, forces),
        vonMises: combinedStress(section, forces, rise),
      };
    });
}

/** The thinner step where two meet: a bearing there stands on it. */
function stepAt({ steps }: PinSetup, at: number): number {
  const last = steps.findLastIndex(({ from }) => from <= at + ON_CUT);
  return Math.max(0, last);
}

function cutForces(
  knuckle: KnuckleSetup,
  at: number,
  pushes: readonly { readonly at: number; readonly force: Vec3 }[],
): SectionForces {
  const axis = pinDirection(knuckle);
  const here = pointOnPin(knuckle, at);
  let force: Vec3 = [0, 0, 0];
  let moment: Vec3 = [0, 0, 0];
  for (const push of pushes) {
    if (push.at < at - ON_CUT) continue;
    force = plus(force, push.force);
    moment = plus(moment, cross(sub(pointOnPin(knuckle, push.at), here), push.force));
  }
  const pull = dot(axis, force);
  const torque = dot(axis, moment);
  return {
    pull,
    shear: length(sub(force, scale(axis, pull))),
    bending: length(sub(moment, scale(axis, torque))),
    torque,
  };
}
