import { sub, type Vec3 } from "../../geometry/vec.ts";
import type { BuildSetup, PinStep } from "../../setup/types/buildTypes.ts";
import { pointOnPin } from "../../setup/types/jointPlaces.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";

/** The pin as a body that turns about its axis. Knuckle frame, mm; steps are measured from `origin` along `axis`. */
export interface PinAxis {
  /** Where its axis passes the steering axis. */
  readonly origin: Vec3;
  /** Outboard, of unit length. */
  readonly axis: Vec3;
  readonly steps: readonly PinStep[];
}

/** null = the build gives no pin. */
export function pinAxis({ pin }: BuildSetup, knuckle: KnuckleSetup): PinAxis | null {
  if (pin === null) return null;
  const origin = pointOnPin(knuckle, 0);
  return { origin, axis: sub(pointOnPin(knuckle, 1), origin), steps: pin.steps };
}
