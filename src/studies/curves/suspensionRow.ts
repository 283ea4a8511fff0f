import type { Side } from "../../suspension/frontEnd.ts";
import { airStateAt } from "../air/airState.ts";
import { type TravelRow, type TravelSide, travelRow } from "../geometry/geometryReport.ts";
import type { Model } from "../model/model.ts";
import { type ShockAt, shockAt } from "./shockAt.ts";

/** One wheel at a height: how the linkage moves it, and how spring and shock move with it. Straight ahead; mm, radians. */
export interface SuspensionSide
  extends Pick<TravelSide, "camberGain" | "toeGain" | "instantCenter" | "swingArm"> {
  /** The air spring; null without one. */
  readonly spring: SpringAt | null;
  /** null without one. */
  readonly shock: ShockAt | null;
}

/** An air spring at a height. */
export interface SpringAt {
  /** Between its mounts, mm. */
  readonly height: number;
  /** How much it shortens per travel of the wheel center, + = bump shortens it. */
  readonly motionRatio: number;
  /** N/mm at the wheel center, the air closed in; null without weights or curve, or where the curve ends. */
  readonly wheelRate: number | null;
}

/** A height. null = out of reach, or no such point there. */
export interface SuspensionRow {
  readonly travel: number;
  readonly rollCenter: TravelRow["rollCenter"];
  readonly left: SuspensionSide | null;
  readonly right: SuspensionSide | null;
}

/** What the suspension does at a height (mm of travel), both wheels alike, beside the pose itself. */
export function suspensionRow(model: Model, travel: number): SuspensionRow {
  const { rollCenter, ...sides } = travelRow(model, travel);
  const side = (name: Side): SuspensionSide | null => {
    const at = sides[name];
    if (at === null) return null;
    const { camberGain, toeGain, instantCenter, swingArm } = at;
    const air = airStateAt(model, name, travel);
    const spring = air && { height: air.height, motionRatio: air.motionRatio, wheelRate: air.wheelRate };
    return { camberGain, toeGain, instantCenter, swingArm, spring, shock: shockAt(model, name, travel) };
  };
  return { travel, rollCenter, left: side("left"), right: side("right") };
}
