import { addScaled, type Vec3 } from "../../geometry/vec.ts";
import type { BuildSetup, PinStep } from "../../setup/types/buildTypes.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";

/** The pin as a body that turns about its axis. Knuckle frame, mm; steps are measured from `origin` along `axis`. */
export interface PinAxis {
  /** Where its axis passes the steering axis. */
  readonly origin: Vec3;
  /** Outboard, of unit length. */
  readonly axis: Vec3;
  readonly steps: readonly PinStep[];
}

export interface BuildPlaces {
  /** Joints by name, knuckle frame, mm. */
  readonly joints: ReadonlyMap<string, Vec3>;
  /** null = the build gives no pin. */
  readonly pin: PinAxis | null;
}

/** Where the joints of a build are. */
export function buildPlaces(build: BuildSetup, knuckle: KnuckleSetup): BuildPlaces {
  const { origin, axis } = pinLine(knuckle);
  const joints = new Map<string, Vec3>([
    ["lowerBallJoint", [0, 0, 0]],
    ["upperBallJoint", [0, 0, knuckle.span]],
    ["tieRodOuter", knuckle.steeringArm],
    ["hubFace", addScaled(origin, axis, knuckle.hubFace)],
  ]);
  const [first] = build.pin?.steps ?? [];
  if (first) joints.set("pinRoot", addScaled(origin, axis, first.from));
  for (const { name, at } of build.joints) joints.set(name, at);
  return { joints, pin: build.pin === null ? null : { origin, axis, steps: build.pin.steps } };
}

/** The pin's axis in the knuckle frame: where it passes the steering axis, and its direction outboard. */
export function pinLine({ pinLead, pinHeight, pinAngle }: KnuckleSetup): { origin: Vec3; axis: Vec3 } {
  return { origin: [pinLead, 0, pinHeight], axis: [0, Math.cos(pinAngle), -Math.sin(pinAngle)] };
}
