import { cross, dot, length, sub, type Vec3, vecAt } from "../../geometry/vec.ts";
import type { ShockLimit } from "../../setup/types/limitsTypes.ts";
import { airMotion } from "../../suspension/airMotion.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE } from "../../suspension/poseRow.ts";
import { ratesAt } from "../../suspension/wheelMotion.ts";
import { RATE } from "../../suspension/wheelRates.ts";
import type { Model } from "../model/model.ts";
import { lowerMountTo, springOrShockOnKnuckle } from "../model/springOrShock.ts";

/** One side's shock at one height, steering straight ahead; mm. */
export interface ShockAt {
  /** Between the centers of its mounts. */
  readonly length: number;
  /** How far it is in from its extended length: 0 = fully out, the whole stroke = bottomed. */
  readonly travel: number;
  /** How much it shortens per travel of the wheel center, + = bump shortens it. Exact derivative. */
  readonly motionRatio: number;
}

/** The shock of a side at a travel, mm; null where the setup has none, or the wheel cannot stand there. */
export function shockAt(model: Model, side: Side, travel: number): ShockAt | null {
  const shock = model.setup.limits?.shock ?? null;
  if (shock === null) return null;
  const moved =
    shock.on === "knuckle" ? onKnuckle(model, side, shock, travel) : onArm(model, side, shock, travel);
  return moved && { ...moved, travel: shock.extended - moved.length };
}

/** A mount on the lower arm runs on a circle, as an air spring's does. */
function onArm({ frontEnd }: Model, side: Side, { bodyMount, lowerMount }: ShockLimit, travel: number) {
  const motion = airMotion(frontEnd[side], bodyMount, lowerMount, travel);
  return motion && { length: motion.height, motionRatio: motion.motionRatio };
}

/** A mount on the knuckle moves as a point of that rigid body: v = v_wheel center + ω × (mount − wheel center). */
function onKnuckle({ frontEnd }: Model, side: Side, { bodyMount, lowerMount }: ShockLimit, travel: number) {
  const found = ratesAt(frontEnd, side, travel, 0);
  if (found === null) return null;
  const { pose, rates, rise } = found;
  const at = new Float64Array(3);
  lowerMountTo(at, springOrShockOnKnuckle(bodyMount, lowerMount), pose, 0);
  const mount: Vec3 = [at[0]!, at[1]!, at[2]!];
  const turned = cross(vecAt(rates, RATE.armTurn), sub(mount, vecAt(pose, POSE.wheelCenter)));
  const slide = vecAt(rates, RATE.armSlide);
  const line = sub(mount, bodyMount);
  const velocity: Vec3 = [slide[0] + turned[0], slide[1] + turned[1], slide[2] + turned[2]];
  const long = length(line);
  return { length: long, motionRatio: -dot(line, velocity) / long / rise };
}
