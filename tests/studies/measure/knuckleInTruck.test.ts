import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addScaled, type Vec3 } from "../../../src/geometry/vec.ts";
import { knuckleInTruck } from "../../../src/studies/measure/knuckleInTruck.ts";
import { modelOf } from "../../../src/studies/model/model.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { demoModel } from "../demoModel.ts";

const { setup, frontEnd } = demoModel();
const { knuckle } = setup;
const here = knuckleInTruck(frontEnd, knuckle.pinAngle)!;

/** The truck with another knuckle, solved as measured. */
function standing(change: Partial<typeof knuckle>) {
  const built = modelOf({ ...setup, knuckle: { ...knuckle, ...change } }, "changed");
  if (!built.ok) throw new Error(built.issues.map(({ mend }) => mend).join("\n"));
  const pose = solvePose(built.value.frontEnd, 0, 0);
  if (!pose.ok) throw new Error("cannot stand");
  return pose.left;
}

const inch = () => fc.double({ min: -25, max: 25, noNaN: true });
const moved = (from: Vec3, by: Vec3) => addScaled(from, by, 1);

describe("a knuckle by points in the truck's axes", () => {
  it("gives its own dimensions back where nothing is moved", () => {
    const { hubFace, pinHeight, pinLead } = here.hubFaceAt(here.hubFace);
    expect(hubFace).toBeCloseTo(knuckle.hubFace, 9);
    expect(pinHeight).toBeCloseTo(knuckle.pinHeight, 9);
    expect(pinLead).toBeCloseTo(knuckle.pinLead, 9);
    here.steeringArmAt(here.tieRodEnd).forEach((value, i) => {
      expect(value).toBeCloseTo(knuckle.steeringArm[i]!, 9);
    });
  });

  it("stands where it was given: the hub face's middle and the tie rod end, solved anew", () => {
    fc.assert(
      fc.property(fc.tuple(inch(), inch(), inch()), (by) => {
        const face = moved(here.hubFace, by as Vec3);
        standing(here.hubFaceAt(face)).hubFace.forEach((value, i) => {
          expect(Math.abs(value - face[i]!)).toBeLessThan(1e-6);
        });
        const end = moved(here.tieRodEnd, by as Vec3);
        standing({ steeringArm: here.steeringArmAt(end) }).tieRodOuter.forEach((value, i) => {
          expect(Math.abs(value - end[i]!)).toBeLessThan(1e-6);
        });
      }),
      { numRuns: 40 },
    );
  });
});
