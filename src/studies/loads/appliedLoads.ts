import { cross, dot, normalize, scale, sub, type Vec3 } from "../../geometry/vec.ts";
import type { MassesSetup } from "../../setup/types/airTypes.ts";
import type { LoadCase, PusherSetup } from "../../setup/types/loadsTypes.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { GRAVITY } from "../../units/quantity.ts";
import type { ForceAt } from "../strength/wrench.ts";
import type { PushLine } from "./equilibrium.ts";
import type { LinkageAt } from "./linkageAt.ts";

/** What a case puts on one knuckle with its wheel. Left-hand frame. */
export interface AppliedLoads {
  /** On the wheel, by the ground or what it strikes. With the moment that the wheel's own free turn takes up, if it rolls. */
  readonly wheel: ForceAt;
  /** Weight of what does not ride on the spring, with the case's multiple up; null = none is taken off. */
  readonly unsprung: ForceAt | null;
}

/**
 * The forces of a case at a pose. Multiples are of the corner's weight; the unsprung weight, times the same multiple up, is
 * taken off at the wheel center: what does not ride on the spring does not load the arms either. A rolling wheel passes no
 * torque about its own axis to the knuckle: that spins it up. A braked one passes all of it, through the caliper.
 * @returns null where a case in multiples has no weights to multiply
 */
export function appliedLoads(
  one: LoadCase,
  side: Side,
  linkage: LinkageAt,
  masses: MassesSetup | null,
): AppliedLoads | null {
  if (one.kind === "multiples" && masses === null) return null;
  const unit = one.kind === "force" ? 1 : GRAVITY * (side === "left" ? masses!.corner : masses!.cornerRight);
  const force: Vec3 = [one.forward * unit, one.outboard * unit, one.up * unit];
  const at = one.at === "contactPatch" ? linkage.contactPatch : linkage.wheelCenter;
  const spin = dot(linkage.wheelAxis, cross(sub(at, linkage.wheelCenter), force));
  const wheel =
    one.wheel === "braked" ? { at, force } : { at, force, moment: scale(linkage.wheelAxis, -spin) };
  const down = one.kind === "multiples" ? -one.up * masses!.unsprung * GRAVITY : 0;
  return { wheel, unsprung: down === 0 ? null : { at: linkage.wheelCenter, force: [0, 0, down] } };
}

/** The line a spring or stop pushes along at a pose. */
export function pushLineOf({ on, bodyMount, armMount }: PusherSetup, linkage: LinkageAt): PushLine {
  const at = linkage.onArm(on, armMount);
  return { on, at, along: normalize(sub(at, bodyMount)) };
}
