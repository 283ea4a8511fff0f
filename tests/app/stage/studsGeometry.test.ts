import { expect, it } from "vitest";
import { studsGeometry } from "../../../src/app/stage/knuckleGeometry.ts";

const stud = (joint: "lowerBallJoint" | "upperBallJoint" | "tieRodOuter") => ({
  ...{ joint, diameter: 20, reach: 40, material: null },
});

function heightsOf(geometry: ReturnType<typeof studsGeometry>): readonly [number, number] {
  geometry.computeBoundingBox();
  const { min, max } = geometry.boundingBox!;
  return [min.z, max.z];
}

it("studs are drawn from a ball at the joint into the knuckle as far as the taper's large end, and no rod end's", () => {
  const [lowLeast, lowMost] = heightsOf(studsGeometry([stud("lowerBallJoint")], 270));
  expect(lowLeast).toBeCloseTo(-15, 1);
  expect(lowMost).toBeCloseTo(40, 6);
  const [least, most] = heightsOf(studsGeometry([stud("upperBallJoint"), stud("tieRodOuter")], 270));
  expect(least).toBeCloseTo(230, 6);
  expect(most).toBeCloseTo(285, 1);
  expect(studsGeometry([stud("tieRodOuter")], 270).getAttribute("position")).toBeUndefined();
});
