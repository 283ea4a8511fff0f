import { GAP } from "../../gaps/partGap.ts";
import type { PartInput } from "../../gaps/partShape.ts";
import type { RingShape } from "../../gaps/ring/ringShape.ts";
import type { Vec3 } from "../../geometry/vec.ts";
import type { HardwareName } from "../../setup/blocks/hardwareNames.ts";
import type { CaliperFrame, HardwareSetup, Setup } from "../../setup/types/types.ts";
import type { FrontEnd, Side } from "../../suspension/frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { rideGap, roughRideGap } from "./knuckleFrame.ts";
import type { Pair, RodPair, Solid } from "./pairs.ts";
import { rodsOf } from "./rods.ts";
import { rotorRing, wheelCenterRing } from "./solids.ts";

/**
 * What is measured of the moving parts: left side first, each side in this order. Left out by design, since
 * they are mounted in or around each other: pin and hub against ring, rotor and wheel; the knuckle's body and
 * the caliper against the rotor; parts that are joined (an arm against its own ball joint); caliper against
 * arms and rods.
 *
 * - ring (tire and rim) to upper arm, lower arm, tie rod: `rod`, depends on travel and steer;
 * - ring to tie rod end, steering arm, both ball joints, knuckle: `together`, depends on the parts alone;
 * - with a rotor: rotor to arms and tie rod `rod`, to ball joints, steering arm and tie rod end `together`;
 * - with a caliper: caliper to barrel (the ring) and to the wheel's center: `together`.
 *
 * @param known pairs of a truck with the same knuckle, wheel, tire and hardware: what rides on its knuckle is not
 * worked out again
 */
export function hardwarePairs(
  setup: Setup,
  frontEnd: FrontEnd,
  ring: RingShape,
  known: readonly Pair[] = [],
): Pair[] {
  const { hardware } = setup;
  if (hardware === null) return [];
  const left = sidePairs(setup, hardware, frontEnd, ring, "left", known);
  const right = sidePairs(setup, hardware, frontEnd, ring, "right", left);
  return [...left, ...right];
}

function sidePairs(
  setup: Setup,
  hardware: HardwareSetup,
  frontEnd: FrontEnd,
  ring: RingShape,
  side: Side,
  /** Pairs of the other side or another such truck: what rides on the knuckle is the same on both, worked out once. */
  known: readonly Pair[],
): Pair[] {
  const { truck, knuckle, wheel } = setup;
  const pose = restPose(frontEnd, side);
  const rods = (
    name: HardwareName,
    partName: string,
    solid: Solid,
    shape: RingShape,
    part: "upperArm" | "lowerArm" | "tieRod",
  ): RodPair => {
    const { radius } = hardware[part];
    const outerAt =
      part === "upperArm"
        ? POSE.upperBallJoint
        : part === "lowerArm"
          ? POSE.lowerBallJoint
          : POSE.tieRodOuter;
    const inners =
      part === "tieRod" ? [pointAt(pose, POSE.tieRodInner)] : [truck[part].frontPivot, truck[part].rearPivot];
    return {
      kind: "rod",
      name,
      partName,
      solid,
      side,
      ring: shape,
      outerAt,
      pivots: part === "tieRod" ? null : Float64Array.from(inners.flat()),
      part: rodsOf(name, inners, pointAt(pose, outerAt), radius),
    };
  };
  const riding = (
    name: HardwareName,
    partName: string,
    solid: Solid,
    shape: RingShape,
    part: PartInput,
    frame: CaliperFrame = "knuckle",
  ): Pair => {
    const twin = known.find((pair) => pair.name === name);
    let row: Float64Array | null = null;
    return {
      kind: "together",
      name,
      partName,
      solid,
      side,
      ring: shape,
      // Most of the work of putting a truck together, and many are put together whose gaps nobody asks for.
      get row() {
        row ??= twin?.kind === "together" ? twin.row : rideGap(shape, part, frame, knuckle, wheel.offset);
        return row;
      },
      roughGap(beat, coarse) {
        if (row !== null) return Math.min(beat, row[GAP.gap]!);
        if (twin?.kind === "together") return twin.roughGap(beat, coarse);
        return roughRideGap(shape, part, frame, knuckle, wheel.offset, beat, coarse);
      },
    };
  };

  const parts = ridingParts(setup, hardware);
  const pairs: Pair[] = [
    rods("upper arm", "upper arm", "ring", ring, "upperArm"),
    rods("lower arm", "lower arm", "ring", ring, "lowerArm"),
    rods("tie rod", "tie rod", "ring", ring, "tieRod"),
    riding("tie rod end", "tie rod end", "ring", ring, parts.tieRodEnd),
    riding("steering arm", "steering arm", "ring", ring, parts.steeringArm),
    riding("upper ball joint", "upper ball joint", "ring", ring, parts.upperBallJoint),
    riding("lower ball joint", "lower ball joint", "ring", ring, parts.lowerBallJoint),
    riding("knuckle", "knuckle", "ring", ring, parts.knuckle),
  ];
  if (hardware.rotor) {
    const rotor = rotorRing(hardware.rotor, wheel.offset);
    pairs.push(
      riding("rotor to lower ball joint", "lower ball joint", "rotor", rotor, parts.lowerBallJoint),
      rods("rotor to lower arm", "lower arm", "rotor", rotor, "lowerArm"),
      riding("rotor to upper ball joint", "upper ball joint", "rotor", rotor, parts.upperBallJoint),
      rods("rotor to upper arm", "upper arm", "rotor", rotor, "upperArm"),
      riding("rotor to steering arm", "steering arm", "rotor", rotor, parts.steeringArm),
      riding("rotor to tie rod end", "tie rod end", "rotor", rotor, parts.tieRodEnd),
      rods("rotor to tie rod", "tie rod", "rotor", rotor, "tieRod"),
    );
  }
  if (hardware.caliper) {
    const { frame, min, max } = hardware.caliper;
    const box: PartInput = { name: "caliper", kind: "box", min, max };
    pairs.push(
      riding("caliper to barrel", "caliper", "ring", ring, box, frame),
      riding("caliper to wheel center", "caliper", "wheel center", wheelCenterRing(wheel), box, frame),
    );
  }
  return pairs;
}

/** What rides on the knuckle, in its frame. */
function ridingParts({ knuckle }: Setup, hardware: HardwareSetup) {
  const top: Vec3 = [0, 0, knuckle.span];
  const bottom: Vec3 = [0, 0, 0];
  const end = knuckle.steeringArm;
  // The steering arm leaves the body at the height of its end, or at the ball joint beyond which that lies.
  const root: Vec3 = [0, 0, Math.min(Math.max(end[2], 0), knuckle.span)];
  const path = (name: keyof HardwareSetup & keyof typeof radii, ...points: readonly Vec3[]): PartInput => ({
    name,
    kind: "path",
    radius: radii[name].radius,
    points,
  });
  const { tieRodEnd, steeringArm, upperBallJoint, lowerBallJoint, knuckle: body } = hardware;
  const radii = { tieRodEnd, steeringArm, upperBallJoint, lowerBallJoint, knuckle: body };
  return {
    tieRodEnd: path("tieRodEnd", end),
    steeringArm: path("steeringArm", root, end),
    upperBallJoint: path("upperBallJoint", top),
    lowerBallJoint: path("lowerBallJoint", bottom),
    knuckle: path("knuckle", bottom, top),
  };
}

/** The pose the truck was assembled in: it exists. */
function restPose(frontEnd: FrontEnd, side: Side): Float64Array {
  const pose = new Float64Array(POSE_ROW);
  poseRowTo(pose, 0, frontEnd[side].row, 1, 0, ...frontEnd[side].innerAtRest);
  return pose;
}

function pointAt(pose: Float64Array, at: number): Vec3 {
  return [pose[at]!, pose[at + 1]!, pose[at + 2]!];
}
