import type { KeyPath } from "../../setup/types/keyPath.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { RIM_FLANGE_WIDTH } from "../../units/wheelOffset.ts";
import type { Model } from "../model/model.ts";
import { gapsAt } from "../reports/gapsAt.ts";
import type { Misfit } from "./misfit.ts";

const CALIPER: KeyPath = ["order", "brake", "caliper"];

/** What of the brake does not go into the wheel, of a truck put together as ordered. Gaps by the same kernels as the check. */
export function wheelMisfits(model: Model): readonly Misfit[] {
  const { hardware, wheel } = model.setup;
  const found: Misfit[] = [];
  if (hardware?.caliper) {
    const { min, max } = hardware.caliper;
    const reach = Math.hypot(
      Math.max(Math.abs(min[0]), Math.abs(max[0])),
      Math.max(Math.abs(min[2]), Math.abs(max[2])),
    );
    for (const what of ["barrel", "wheel center"] as const) {
      const gap = caliperGap(model, what);
      if (gap === null || gap >= 0) continue;
      const { barrelDiameter } = wheel;
      found.push({ at: CALIPER, kind: "caliper in the wheel", what, depth: -gap, reach, barrelDiameter });
    }
  }
  const { rotor } = hardware ?? { rotor: null };
  // From the hub face: the rim's inboard edge, and how far the rotor reaches outboard.
  const edge = -wheel.offset - wheel.rimWidth / 2 - RIM_FLANGE_WIDTH;
  if (rotor && -rotor.inboard > edge && rotor.diameter >= wheel.barrelDiameter)
    found.push({
      at: ["order", "brake", "rotorDiameter"],
      kind: "rotor in the barrel",
      diameter: rotor.diameter,
      barrelDiameter: wheel.barrelDiameter,
    });
  return found;
}

/** The same at every pose, since both ride on the knuckle; null = the truck does not stand. */
function caliperGap(model: Model, what: "barrel" | "wheel center"): number | null {
  const pose = solvePose(model.frontEnd, 0, 0);
  if (!pose.ok) return null;
  const pairs = model.pairs.filter(({ name, side }) => name === `caliper to ${what}` && side === "left");
  return gapsAt({ ...model, pairs }, pose)[0]?.gap ?? null;
}
