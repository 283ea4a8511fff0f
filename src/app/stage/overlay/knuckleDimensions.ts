import { addScaled, scale, type Vec3 } from "../../../geometry/vec.ts";
import { angleText, lengthText } from "../../../studies/wording/lengths.ts";
import type { Dimension, DimensionInputs, LinearDimension } from "./dimensions.ts";
import { knuckleAxes } from "./knuckleAxes.ts";

/** mm that the rows of dimension lines stand off the part. */
const ROW = 70;

/** The knuckle's own dimensions, each between what it is measured from: for the part drawn alone. */
export function knuckleDimensions({
  truck,
  pose,
  side,
  format,
}: Pick<DimensionInputs, "truck" | "pose" | "side" | "format">): Dimension[] {
  const { span, pinHeight, pinLead, hubFace, pinAngle, steeringArm } = truck.setup.knuckle;
  const { x, y, z, at } = knuckleAxes(pose, side);
  const along = (out: number): Vec3 =>
    at(pinLead, out * Math.cos(pinAngle), pinHeight - out * Math.sin(pinAngle));
  const [arm, , armUp] = steeringArm;
  const inward = (far: number) => scale(y, -far);
  return [
    linear(
      at(0, 0, 0),
      at(0, 0, span),
      `span ${lengthText(span, format)}`,
      "outside",
      inward(1.7 * ROW),
      scale(x, 1.7 * ROW),
    ),
    linear(
      at(0, 0, 0),
      at(0, 0, pinHeight),
      `pin height ${lengthText(pinHeight, format)}`,
      // Under the foot of both lines, where nothing is.
      "before",
      inward(ROW),
      scale(x, ROW),
    ),
    linear(
      along(0),
      along(hubFace),
      `hub face ${lengthText(hubFace, format)}`,
      "outside",
      scale(z, span - pinHeight + 1.2 * ROW),
      scale(x, 2 * ROW),
    ),
    linear(
      at(0, steeringArm[1], armUp),
      at(arm, steeringArm[1], armUp),
      `steering arm ${lengthText(Math.abs(arm), format)} ${arm < 0 ? "back" : "forward"}`,
      "outside",
      scale(z, -(armUp + 0.8 * ROW)),
      inward(ROW),
    ),
    {
      kind: "angle",
      vertex: along(0),
      from: y,
      to: addScaled(scale(y, Math.cos(pinAngle)), z, -Math.sin(pinAngle)),
      radius: hubFace + ROW,
      text: `pin ${angleText(pinAngle)}`,
    },
  ];
}

function linear(
  from: Vec3,
  to: Vec3,
  text: string,
  textStands: LinearDimension["textStands"] & string,
  ...asides: Vec3[]
): Dimension {
  return { kind: "linear", from, to, asides, text, textStands };
}
