import { addScaled, dot, mirrorY, normalize, scale, sub, type Vec3, vecAt } from "../../../geometry/vec.ts";
import type { PathPart } from "../../../setup/types/truckTypes.ts";
import { angleText, lengthText } from "../../../studies/wording/lengths.ts";
import type { Side } from "../../../suspension/frontEnd.ts";
import { POSE } from "../../../suspension/poseRow.ts";
import type { SidePose, SolvedPose } from "../../../suspension/solvePose.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import type { Truck } from "../../state/truck.ts";

/** A length between two points, drawn beside them. Vehicle axes, mm. */
export interface LinearDimension {
  readonly kind: "linear";
  readonly from: Vec3;
  readonly to: Vec3;
  /** Where the dimension line may stand, as ways from the two points, the best first; none = between the points themselves. */
  readonly asides: readonly Vec3[];
  /** Where along the dimension line the text stands, from `from`, where it fits. Default half. */
  readonly textAt?: number;
  /**
   * Where the text stands: in the dimension line; outside, off its middle and away from what is measured; before its
   * `from`, beside the end and away from what is measured. Default in.
   */
  readonly textStands?: "in" | "outside" | "before";
  /** Left out where the picture is narrow. Default no. */
  readonly isSmall?: boolean;
  readonly text: string;
}

/** An angle at a vertex between two ways, as an arc. */
export interface AngleDimension {
  readonly kind: "angle";
  readonly vertex: Vec3;
  /** Unit. */
  readonly from: Vec3;
  /** Unit. */
  readonly to: Vec3;
  readonly radius: number;
  /** As of a length. */
  readonly isSmall?: boolean;
  readonly text: string;
}

export type Dimension = LinearDimension | AngleDimension;

export interface DimensionInputs {
  readonly truck: Truck;
  readonly pose: SolvedPose;
  /** The wheel they are drawn on. */
  readonly side: Side;
  readonly format: LengthFormat;
  /** The setup below the variant shown, at the same height and steering; null = no variant is shown. */
  readonly base: SolvedPose | null;
}

/** mm under the floor at which dimension lines stand, one row under the other. */
const ROW = 75;

/** The truck's main dimensions at a pose: hub face, scrub radius, pin angle, lip height and track, as far as there are any. */
export function dimensionsAt(inputs: DimensionInputs): Dimension[] {
  const lip = lipHeight(inputs);
  return [hubFaceAtPin(inputs), scrub(inputs), pinAngle(inputs), ...(lip ? [lip] : []), track(inputs)];
}

/** Distance between the contact patches, and against the setup below the variant. */
function track({ truck, pose, base, format }: DimensionInputs): LinearDimension {
  const width = trackOf(pose);
  const change = base ? width - trackOf(base) : 0;
  const more = base ? `, ${change < 0 ? "" : "+"}${lengthText(change, format)}` : "";
  return {
    kind: "linear",
    from: pose.right.contactPatch,
    to: pose.left.contactPatch,
    asides: [
      [0, 0, -2 * ROW],
      [truck.model.tire.freeRadius + 2 * ROW, 0, 0],
    ],
    text: `track ${lengthText(width, format)}${more}`,
  };
}

/** mm across the truck between the middles of the contact patches. */
export function trackOf({ left, right }: SolvedPose): number {
  return left.contactPatch[1] - right.contactPatch[1];
}

/** From the steering axis to the mounting face, along the pin. */
function hubFaceAtPin({ truck, pose, side, format }: DimensionInputs): LinearDimension {
  const { wheelAxis, hubFace } = pose[side];
  const far = 1.32 * truck.model.tire.freeRadius;
  const up = normalize(addScaled([0, 0, 1], wheelAxis, -wheelAxis[2]));
  return {
    kind: "linear",
    from: crossing(truck, pose[side]),
    to: hubFace,
    asides: [scale(up, far), scale(heading(pose[side], side), far)],
    text: `hub face ${lengthText(truck.setup.knuckle.hubFace, format)}`,
  };
}

function scrub({ truck, pose, side, format }: DimensionInputs): LinearDimension {
  const { contactPatch, scrubRadius, wheelAxis } = pose[side];
  const out = normalize([wheelAxis[0], wheelAxis[1], 0]);
  return {
    kind: "linear",
    from: addScaled(contactPatch, out, -scrubRadius),
    to: contactPatch,
    asides: [[0, 0, -ROW], scale(heading(pose[side], side), truck.model.tire.freeRadius + ROW)],
    isSmall: true,
    text: `scrub ${lengthText(scrubRadius, format)}`,
  };
}

/** The pin below the square to the steering axis. */
function pinAngle({ truck, pose, side }: DimensionInputs): AngleDimension {
  const { wheelAxis, row } = pose[side];
  const axis = onSide(vecAt(row, POSE.knuckleZ), side);
  const { profile } = truck.model.tire;
  const { hubFace } = truck.setup.knuckle;
  const outboard = hubFace - truck.setup.wheel.offset + profile[profile.length - 2]!;
  return {
    kind: "angle",
    vertex: crossing(truck, pose[side]),
    from: normalize(addScaled(wheelAxis, axis, -dot(wheelAxis, axis))),
    to: wheelAxis,
    radius: outboard + 150,
    isSmall: true,
    text: `pin ${angleText(truck.setup.knuckle.pinAngle)}`,
  };
}

/** From the floor to the lower edge of the wheel opening, over the wheel's middle; null where nothing is. */
function lipHeight({ truck, pose, side, format }: DimensionInputs): LinearDimension | null {
  const [x, , z] = pose[side].wheelCenter;
  let lip: Vec3 | null = null;
  for (const part of truck.setup.truck.body) {
    if (part.kind !== "path" || (part.side !== "both" && part.side !== side)) continue;
    for (const point of crossingsOf(part, x)) {
      if (point[2] > z && (lip === null || point[2] < lip[2])) lip = point;
    }
  }
  if (lip === null) return null;
  const floor = pose[side].contactPatch[2];
  const y = side === "left" ? Math.abs(lip[1]) : -Math.abs(lip[1]);
  const away = 1.25 * truck.model.tire.freeRadius;
  return {
    kind: "linear",
    from: [x, y, floor],
    to: [x, y, lip[2]],
    asides: [
      [0, side === "left" ? 110 : -110, 0],
      [-away, 0, 0],
    ],
    textAt: 0.22,
    text: `lip ${lengthText(lip[2] - floor, format)}`,
  };
}

/** Where a path passes a distance ahead of the axle line: the underside of it there. */
function crossingsOf({ points, radius }: PathPart, x: number): Vec3[] {
  return points.flatMap((a, i): Vec3[] => {
    const b = points[i + 1];
    if (b === undefined || (a[0] - x) * (b[0] - x) > 0 || a[0] === b[0]) return [];
    const on = addScaled(a, sub(b, a), (x - a[0]) / (b[0] - a[0]));
    return [[on[0], on[1], on[2] - radius]];
  });
}

/** Where the pin's line passes the steering axis, seen from the front. */
function crossing(truck: Truck, { hubFace, wheelAxis }: SidePose): Vec3 {
  return addScaled(hubFace, wheelAxis, -truck.setup.knuckle.hubFace);
}

/** Unit, level, the way the wheel rolls. */
function heading({ wheelAxis }: SidePose, side: Side): Vec3 {
  const [x, y] = wheelAxis;
  return normalize(side === "left" ? [y, -x, 0] : [-y, x, 0]);
}

function onSide(v: Vec3, side: Side): Vec3 {
  return side === "left" ? v : mirrorY(v);
}
