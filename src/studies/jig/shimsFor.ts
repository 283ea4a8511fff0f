import type { Side } from "../../suspension/frontEnd.ts";
import { type AdjusterSetting, setSide } from "../alignment/setSide.ts";
import { straightAhead } from "../alignment/straightAhead.ts";
import type { Model } from "../model/model.ts";

/** What the truck's adjusters make of one wheel on its knuckle as built. mm and radians. */
export type ShimAnswer =
  /** Camber and caster are as ordered to what a gauge reads: nothing to set. */
  | { readonly kind: "none" }
  /** They are as ordered as far as the readings can tell: what is off may be the readings alone. */
  | { readonly kind: "withinReadings" }
  /** The setup has no adjusters. */
  | { readonly kind: "noAdjusters" }
  /** `reached` false: the nearest there is within their range. What they leave over: as set less as ordered. */
  | {
      readonly kind: "set";
      readonly reached: boolean;
      readonly settings: readonly AdjusterSetting[];
      readonly leftOver: { readonly camber: number; readonly caster: number };
    }
  /** The wheel cannot be set so at all. */
  | { readonly kind: "outOfReach" };

/** rad. Hundredth of a degree: finer than an alignment rack reads. */
const READ = 1.75e-4;

/**
 * The settings that give a wheel the camber and caster of the knuckle as ordered again, at travel 0, toe as the setup says.
 * @param built the truck on the knuckle as built, as bolted on
 */
export function shimsFor(
  built: Model,
  side: Side,
  wanted: { readonly camber: number; readonly caster: number },
): Exclude<ShimAnswer, { kind: "withinReadings" }> {
  const { setup, frontEnd } = built;
  const now = straightAhead(frontEnd[side], side, 0);
  if (now !== null && isNear(now.camber - wanted.camber) && isNear(now.caster - wanted.caster))
    return { kind: "none" };
  if (setup.adjusters === null) return { kind: "noAdjusters" };
  const { camber, caster } = wanted;
  const set = setSide({
    frontEnd,
    adjusters: setup.adjusters,
    side,
    travel: 0,
    targets: { camber, caster, toe: setup.alignment.toe },
    per: 1,
  });
  const after = set && straightAhead(set.frontEnd[side], side, 0);
  if (!set || !after) return { kind: "outOfReach" };
  return {
    kind: "set",
    reached: set.reached,
    settings: set.settings,
    leftOver: { camber: after.camber - camber, caster: after.caster - caster },
  };
}

function isNear(rad: number): boolean {
  return Math.abs(rad) < READ;
}
