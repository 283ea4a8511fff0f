import { describe, expect, it } from "vitest";
import { addScaled, dot, scale, sub } from "../../src/geometry/vec.ts";
import type { FrontEndInput } from "../../src/suspension/inputs.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../src/suspension/poseRow.ts";
import { type SidePose, solvePose } from "../../src/suspension/solvePose.ts";
import { inKnuckleFrame } from "./knuckleFixedPoint.ts";
import { leanedAxisFrontEnd } from "./leanedAxis.ts";
import { assembled } from "./trucks.ts";

const DEG = Math.PI / 180;
const INCH = 25.4;
/** Finest mark of the tape the trade reads. */
const SIXTEENTH = INCH / 16;

/**
 * Facts of the trade (common practice, no source): four knuckles measured on one jig have their mounting
 * face this far from the ball joint line at pin height, and make the truck this much wider per side.
 */
const KNUCKLES = [
  { face: 5 + 3 / 16, wider: 0 },
  { face: 5 + 1 / 2, wider: 5 / 16 },
  { face: 5 + 11 / 16, wider: 1 / 2 },
  { face: 6 + 3 / 16, wider: 1 },
] as const;

const camberDeg = -0.75;
const base = leanedAxisFrontEnd({ caster: 3 * DEG, inclination: 9 * DEG, camber: camberDeg * DEG });

/** The truck on a knuckle with its face `faceIn` inches out and its pin carried `dropIn` inches higher. */
function truckOn(faceIn: number, dropIn = 0): FrontEndInput {
  const pinHeight = base.knuckle.pinHeight + dropIn * INCH;
  return { ...base, knuckle: { ...base.knuckle, hubFace: faceIn * INCH, pinHeight }, wheelOffset: 12 };
}

function standing(input: FrontEndInput): SidePose {
  const pose = solvePose(assembled(input), 0, 0);
  if (!pose.ok) throw new Error("out of reach at rest");
  return pose.left;
}

/**
 * What a straightedge-and-tape jig reads: the straightedge along the ball joint line, the tape laid parallel
 * to the pin from the face to the straightedge, `above` the pin's own height along the straightedge.
 */
function jigReading(side: SidePose, pinHeight: number, above = 0): number {
  const line = scale(sub(side.upperBallJoint, side.lowerBallJoint), 1 / base.knuckle.span);
  const onLine = addScaled(side.lowerBallJoint, line, pinHeight + above);
  // The face is a plane square to the pin, so the tape's length is the plane's distance.
  return dot(sub(side.hubFace, onLine), side.wheelAxis);
}

describe("four knuckles measured on the same jig", () => {
  const first = standing(truckOn(KNUCKLES[0].face));

  it.each(KNUCKLES)(
    "face $face in from the ball joint line: $wider in wider per side than the first",
    ({ face, wider }) => {
      const side = standing(truckOn(face));
      // Exactly: the face moves out along the pin, so the track grows by the difference times cos(camber).
      const outward = side.hubFace[1] - first.hubFace[1];
      expect(outward).toBeCloseTo(wider * INCH * Math.cos(camberDeg * DEG), 9);
      expect(side.contactPatch[1] - first.contactPatch[1]).toBeCloseTo(outward, 9);
      expect(side.wheelCenter[1] - first.wheelCenter[1]).toBeCloseTo(outward, 9);
      // To the trade's own precision it is the plain difference of the readings.
      expect(Math.abs(outward - wider * INCH)).toBeLessThan(SIXTEENTH / 100);
    },
  );

  it.each(KNUCKLES)(
    "face $face in: in every pose, both sides, the shift is along the wheel axis",
    ({ face, wider }) => {
      const [narrow, wide] = [assembled(truckOn(KNUCKLES[0].face)), assembled(truckOn(face))];
      const [a, b] = [new Float64Array(POSE_ROW), new Float64Array(POSE_ROW)];
      for (const degrees of [-10, 0, 10]) {
        for (const slide of [-60, 0, 60]) {
          for (const side of ["left", "right"] as const) {
            const [x, y, z] = narrow[side].innerAtRest;
            const place = [Math.cos(degrees * DEG), Math.sin(degrees * DEG), x, y + slide, z] as const;
            poseRowTo(a, 0, narrow[side].row, ...place);
            poseRowTo(b, 0, wide[side].row, ...place);
            for (let i = 0; i < 3; i++) {
              const shift = b[POSE.hubFace + i]! - a[POSE.hubFace + i]!;
              expect(shift).toBeCloseTo(wider * INCH * a[POSE.wheelAxis + i]!, 9);
            }
          }
        }
      }
    },
  );

  it.each([0, 1.5, 2, 3])("a drop of %d in changes neither the reading nor the widths", (drop) => {
    const narrow = standing(truckOn(KNUCKLES[0].face, drop));
    for (const { face, wider } of KNUCKLES) {
      const side = standing(truckOn(face, drop));
      expect(jigReading(side, base.knuckle.pinHeight + drop * INCH)).toBeCloseTo(face * INCH, 9);
      const outward = side.hubFace[1] - narrow.hubFace[1];
      expect(outward).toBeCloseTo(wider * INCH * Math.cos(camberDeg * DEG), 9);
    }
  });

  it("is the same reading at every travel and steering angle", () => {
    const frontEnd = assembled(truckOn(5.5, 2));
    for (const [travel, steer] of [
      [-70, 1],
      [0, -0.4],
      [70, -1],
    ] as const) {
      const pose = solvePose(frontEnd, travel, steer);
      if (!pose.ok) throw new Error("out of reach");
      for (const side of [pose.left, pose.right]) {
        expect(jigReading(side, base.knuckle.pinHeight + 2 * INCH)).toBeCloseTo(5.5 * INCH, 9);
      }
      // In the knuckle's own frame the face center lies `hubFace` out along the pin from the axis.
      const [, y] = inKnuckleFrame(pose.left.row, pose.left.hubFace);
      expect(y / Math.cos(base.knuckle.pinAngle)).toBeCloseTo(5.5 * INCH, 9);
    }
  });

  /**
   * Why the jig is read at pin height: the ball joint line leans by the pin angle against the face, so the
   * reading grows by sin(pin angle) for each unit the tape sits higher. Derived; the fact itself is common
   * practice, no source.
   */
  it("read off pin height the jig is wrong by sin(pin angle) per inch, more than the tape's own marks", () => {
    const side = standing(truckOn(5.5));
    const { pinHeight, pinAngle } = base.knuckle;
    for (const above of [-2, -1, 1, 2]) {
      const error = jigReading(side, pinHeight, above * INCH) - 5.5 * INCH;
      expect(error).toBeCloseTo(above * INCH * Math.sin(pinAngle), 9);
      expect(Math.abs(error)).toBeGreaterThan(2 * SIXTEENTH);
    }
    // Three inches too low the second knuckle even reads narrower than the first one does read right.
    expect(jigReading(side, pinHeight, -3 * INCH)).toBeLessThan(KNUCKLES[0].face * INCH);
  });
});
