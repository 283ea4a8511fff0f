import type { Side } from "../../suspension/frontEnd.ts";
import { jointOf } from "../../suspension/poseStatus.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { KEPT } from "./frontEndLimit.ts";
import { limitBordersOf } from "./limitBorders.ts";
import { limitMargins } from "./limitsOf.ts";

/** What keeps a truck from standing at a height. */
export type HeightStop =
  /** A limit is met on the way there from travel 0, at `at`, mm; null where no way there is known. */
  | { readonly stop: "limit"; readonly side: Side; readonly name: string; readonly at: number | null }
  /** A joint cannot follow past `at`, mm; null where it is the steering that has no pose there. */
  | { readonly stop: "reach"; readonly side: Side; readonly joint: string; readonly at: number | null };

/**
 * What keeps the truck from standing at a height straight ahead, met first on the way from travel 0; null = it
 * stands. @param travel mm. @param budget once it is spent, where it is stopped is not told
 */
export function heightStop(
  model: Model,
  travel: number,
  budget: Budget = Budget.endless(),
): HeightStop | null {
  const pose = solvePose(model.frontEnd, travel, 0);
  const borders = limitBordersOf(model, budget);
  const isKept = borders === null || borders.passedAt(0, 0) === null;
  // On the way to a height out of reach a limit may come before the reach ends.
  const way = borders !== null && isKept && travel !== 0 ? borders.alongTravel(0, 0, travel) : null;
  if (!pose.ok) {
    if (way?.stop === "limit") return { stop: "limit", side: way.side, name: way.name, at: way.at };
    const at = pose.along === "travel" ? pose.startsAt : null;
    return { stop: "reach", side: pose.side, joint: jointOf(pose.status), at };
  }
  const passed = borders?.passedAt(travel, 0) ?? null;
  if (passed === null) return null;
  return way?.stop === "limit"
    ? { stop: "limit", side: way.side, name: way.name, at: way.at }
    : { stop: "limit", ...passed, at: null };
}

/** Whether a pose can be: both wheels reach it and every limit is kept. @param travel mm. @param steer −1 … +1 */
export function canStand(model: Model, travel: number, steer: number): boolean {
  const pose = limitMargins(model, travel, steer);
  return pose.ok && pose.margins.every(({ margin }) => margin >= -KEPT);
}
