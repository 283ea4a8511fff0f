import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addScaled, cross, dot, length, mirrorY, sub, type Vec3, vecAt } from "../../src/geometry/vec.ts";
import { POSE } from "../../src/suspension/poseRow.ts";
import { type SidePose, solvePose } from "../../src/suspension/solvePose.ts";
import { bitsOf } from "./bitsOf.ts";
import {
  type GeneratedPose,
  type GeneratedTruck,
  plausibleTrucks,
  SEED,
  usualPoses,
  wildPoses,
} from "./plausibleTrucks.ts";

const SIDES = ["left", "right"] as const;
const LENGTH_TOLERANCE = 1e-9;

const distance = (a: Vec3, b: Vec3) => length(sub(a, b));

/** Runs a claim on every generated pose that can be reached. */
function onPoses(
  claim: (truck: GeneratedTruck, side: SidePose, right: boolean, pose: GeneratedPose) => void,
) {
  let reached = 0;
  fc.assert(
    fc.property(plausibleTrucks(), usualPoses(), (truck, pose) => {
      const solved = solvePose(truck.frontEnd, pose.travel, pose.steer);
      if (!solved.ok) return;
      reached++;
      for (const side of SIDES) claim(truck, solved[side], side === "right", pose);
    }),
    SEED,
  );
  // The claim must have been put to the test.
  expect(reached).toBeGreaterThan(0.85 * SEED.numRuns);
}

describe(`on generated trucks (seed ${SEED.seed}, ${SEED.numRuns} runs)`, () => {
  it("arms, knuckle and tie rod keep their lengths to 1e-9 mm", () => {
    onPoses(({ input, frontEnd }, side, right) => {
      const at = (p: Vec3) => (right ? mirrorY(p) : p);
      for (const [arm, joint] of [
        [input.lowerArm, side.lowerBallJoint],
        [input.upperArm, side.upperBallJoint],
      ] as const) {
        for (const pivot of [arm.frontPivot, arm.rearPivot]) {
          const excess = distance(joint, at(pivot)) - distance(arm.ballJoint, pivot);
          expect(Math.abs(excess)).toBeLessThan(LENGTH_TOLERANCE);
        }
      }
      const { knuckle } = input;
      const near = (found: number, wanted: number) =>
        expect(Math.abs(found - wanted)).toBeLessThan(LENGTH_TOLERANCE);
      near(distance(side.upperBallJoint, side.lowerBallJoint), knuckle.span);
      const rest = solvePose(frontEnd, 0, 0);
      if (!rest.ok) throw new Error("rest must be reachable");
      const atRest = right ? rest.right : rest.left;
      near(distance(side.tieRodOuter, side.tieRodInner), distance(atRest.tieRodOuter, atRest.tieRodInner));
      near(side.tieRodLength, distance(atRest.tieRodOuter, atRest.tieRodInner));
      near(distance(side.tieRodOuter, side.lowerBallJoint), length(knuckle.steeringArm));
      for (const joint of ["upperBallJoint", "lowerBallJoint"] as const) {
        for (const end of ["tieRodOuter", "wheelCenter", "hubFace"] as const) {
          near(distance(side[end], side[joint]), distance(atRest[end], atRest[joint]));
        }
      }
      near(dot(sub(side.hubFace, side.wheelCenter), side.wheelAxis), input.wheelOffset);
      near(length(side.wheelAxis), 1);
      const [x, y, z] = [POSE.knuckleX, POSE.knuckleY, POSE.knuckleZ].map((axis) => vecAt(side.row, axis));
      expect(distance(cross(x!, y!), z!)).toBeLessThan(1e-12);
    });
  });

  it("with the steering straight ahead the wheel stands exactly the asked travel above rest", () => {
    onPoses(({ frontEnd }, _, right, { travel }) => {
      const straight = solvePose(frontEnd, travel, 0);
      const rest = solvePose(frontEnd, 0, 0);
      if (!straight.ok || !rest.ok) throw new Error("reached while steered, so reached straight ahead");
      const side = right ? "right" : "left";
      const risen = straight[side].wheelCenter[2] - rest[side].wheelCenter[2];
      expect(Math.abs(risen - travel)).toBeLessThan(LENGTH_TOLERANCE);
    });
  });

  it("steering holds the lower arm where straight ahead left it", () => {
    onPoses(({ frontEnd }, side, right, { travel }) => {
      const straight = solvePose(frontEnd, travel, 0);
      if (!straight.ok) throw new Error("reached while steered, so reached straight ahead");
      expect(side.lowerBallJoint).toEqual(straight[right ? "right" : "left"].lowerBallJoint);
      expect(side.upperBallJoint).toEqual(straight[right ? "right" : "left"].upperBallJoint);
    });
  });

  it("at rest the lower ball joint is where it was measured and each wheel has its toe", () => {
    fc.assert(
      fc.property(plausibleTrucks(), ({ input, frontEnd }) => {
        const rest = solvePose(frontEnd, 0, 0);
        if (!rest.ok) throw new Error("rest must be reachable");
        expect(distance(rest.left.lowerBallJoint, input.lowerArm.ballJoint)).toBeLessThan(1e-10);
        expect(rest.left.toe).toBeCloseTo(input.toe, 12);
        expect(rest.right.toe).toBeCloseTo(input.toe, 12);
        // Toe-in turns the left wheel right and the right wheel left.
        expect(rest.left.steerAngle).toBeCloseTo(-input.toe, 12);
        expect(rest.right.steerAngle).toBeCloseTo(input.toe, 12);
      }),
      SEED,
    );
  });

  it("a rack truck steered left is the mirror image of itself steered right, bit for bit", () => {
    fc.assert(
      fc.property(plausibleTrucks("rack"), usualPoses(), ({ frontEnd }, { travel, steer }) => {
        const [one, other] = [solvePose(frontEnd, travel, steer), solvePose(frontEnd, travel, -steer)];
        expect(one.ok).toBe(other.ok);
        if (!one.ok || !other.ok) return;
        expect(one.left.row).toEqual(other.right.row);
        expect(one.right.row).toEqual(other.left.row);
        expect(one.left.wheelCenter).toEqual(mirrorY(other.right.wheelCenter));
        expect(one.left.camber).toBe(other.right.camber);
        expect(one.left.steerAngle).toBe(-other.right.steerAngle);
        expect(one.left.scrubRadius).toBe(other.right.scrubRadius);
        expect(one.left.mechanicalTrail).toBe(other.right.mechanicalTrail);
      }),
      SEED,
    );
  });

  it("poses do not depend on the order or the company in which they are asked", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 2 }), fc.oneof(usualPoses(), wildPoses())), {
          minLength: 2,
          maxLength: 8,
        }),
        fc.tuple(plausibleTrucks(), plausibleTrucks(), plausibleTrucks()),
        (asked, trucks) => {
          const ask = ([which, { travel, steer }]: (typeof asked)[number]) =>
            bitsOf(solvePose(trucks[which]!.frontEnd, travel, steer));
          const forward = asked.map(ask);
          const backward = [...asked].reverse().map(ask).reverse();
          expect(backward).toEqual(forward);
        },
      ),
      { ...SEED, numRuns: 150 },
    );
  });

  it("the alignment is what ISO 8855 and SAE J670 define, worked from the points of each side", () => {
    onPoses((_, side, right) => {
      const out = right ? -1 : 1;
      const near = (found: number, wanted: number, digits = 10) => expect(found).toBeCloseTo(wanted, digits);
      const [nx, ny, nz] = side.wheelAxis;
      // Heading: level, square to the wheel axis, forward.
      const heading: Vec3 = [out * ny, -out * nx, 0];
      const forward = Math.hypot(heading[0], heading[1]);
      near(side.camber, -Math.asin(nz));
      near(side.steerAngle, Math.atan2(heading[1], heading[0]));
      near(side.toe, -out * side.steerAngle);
      const axis = sub(side.upperBallJoint, side.lowerBallJoint);
      near(side.caster, Math.atan2(-axis[0], axis[2]));
      near(side.kingpinInclination, Math.atan2(-out * axis[1], axis[2]));
      // The steering axis cut by the ground through the contact patch.
      const down = (side.contactPatch[2] - side.lowerBallJoint[2]) / axis[2];
      const ground = addScaled(side.lowerBallJoint, axis, down);
      const toPatch = sub(side.contactPatch, ground);
      const outboard = [nx / forward, ny / forward];
      near(side.scrubRadius, toPatch[0] * outboard[0]! + toPatch[1] * outboard[1]!, 8);
      near(side.mechanicalTrail, -dot(toPatch, heading) / forward, 8);
      // Contact center: in the wheel plane, straight below the wheel axis.
      const toCenter = sub(side.contactPatch, side.wheelCenter);
      near(dot(toCenter, side.wheelAxis), 0, 8);
      near(dot(toCenter, heading), 0, 8);
      expect(toCenter[2]).toBeLessThan(0);
    });
  });

  it("the contact patch is the loaded radius away from the wheel center", () => {
    onPoses(({ input }, side) => {
      expect(distance(side.contactPatch, side.wheelCenter)).toBeCloseTo(input.loadedRadius, 9);
    });
  });
});
