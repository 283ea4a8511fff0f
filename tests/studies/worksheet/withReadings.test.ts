import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../src/geometry/vec.ts";
import { resolveShown } from "../../../src/setup/editing/resolveShown.ts";
import { exampleFields, withMine } from "../../../src/setup/exampleMarks.ts";
import { setAt } from "../../../src/setup/reading/setAt.ts";
import { keyText, valueAt } from "../../../src/setup/types/keyPath.ts";
import { KnownParts } from "../../../src/setup/types/knownParts.ts";
import { inKnuckle, knuckleFrom } from "../../../src/studies/measure/knuckleFrom.ts";
import { modelOf } from "../../../src/studies/model/model.ts";
import { choleskyOf } from "../../../src/studies/numeric/leastSquares.ts";
import { ownTruckDocument } from "../../../src/studies/worksheet/ownTruck.ts";
import { withReadings } from "../../../src/studies/worksheet/withReadings.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { runs } from "../../runs.ts";

const SEED = 1212;
const begun = ownTruckDocument({ units: "mm", steering: "rack", isFull: true });

function setupOf(document: unknown) {
  const read = resolveShown(document, "truck.json", null, new Map(), new KnownParts());
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value;
}

function poseOf(document: unknown) {
  const model = modelOf(setupOf(document), "truck.json");
  if (!model.ok) throw new Error("no model");
  const pose = solvePose(model.value.frontEnd, 0, 0);
  if (!pose.ok) throw new Error("no pose");
  return pose.left;
}

const reading = (ask: object, is: number) => ({ ...ask, is });
const withList = (readings: readonly object[]) => withReadings({ ...begun, readings });
const lower = "lowerArm.ballJoint";

describe("a truck on the assumed layout with its readings", () => {
  it.each(["in", "mm"] as const)(
    "goes together before anything is read, with either steering (%s)",
    (units) => {
      for (const steering of ["rack", "pitman"] as const) {
        const document = withReadings(ownTruckDocument({ units, steering, isFull: true }));
        expect(setupOf(document).fromExample).toMatchObject({ of: "assumed layout", isAsItCame: true });
      }
    },
  );

  it("has each coordinate where it was read, marks that and nothing else as the truck's own", () => {
    const document = withList([reading({ height: lower }, 231), reading({ offset: lower }, 655)]);
    const [, y, z] = setupOf(document).truck.lowerArm.ballJoint;
    expect([y, z]).toEqual([expect.closeTo(655, 1), expect.closeTo(231, 1)]);
    expect(valueAt(document, ["fromExample", "read"])).toEqual([
      "truck.lowerArm.ballJoint[1]",
      "truck.lowerArm.ballJoint[2]",
    ]);
    expect(exampleFields(document).map(keyText)).toContain("truck.lowerArm.ballJoint");
  });

  it("is the same whatever was read before: a reading taken back leaves nothing", () => {
    const one = [reading({ height: lower }, 231)];
    const document = [
      [
        reading({ height: lower }, 180),
        reading({ offset: lower }, 600),
        reading({ size: "frameWidth" }, 820),
      ],
      [reading({ height: lower }, 300)],
      one,
    ].reduce<unknown>((all, readings) => withReadings({ ...(all as object), readings }), begun);
    const rail = (all: unknown) => valueAt(all, ["truck", "body", 1]);
    expect({ ...(document as object), truck: null }).toEqual({ ...(withList(one) as object), truck: null });
    expect(valueAt(document, ["truck", "lowerArm"])).toEqual(valueAt(withList(one), ["truck", "lowerArm"]));
    expect(rail(document)).toEqual(expect.objectContaining({ name: "frame rail" }));
  });

  it("stands with its wheel's center where that was read, by the pin angle and hub face that were read", () => {
    fc.assert(
      fc.property(
        fc.record({
          height: fc.integer({ min: 320, max: 352 }),
          pinAngle: fc.double({ min: 6, max: 12, noNaN: true }),
          hubFace: fc.integer({ min: 150, max: 200 }),
          joint: fc.integer({ min: 200, max: 240 }),
        }),
        ({ height, pinAngle, hubFace, joint }) => {
          const own = [
            [["knuckle", "pinAngle"], pinAngle],
            [["knuckle", "hubFace"], hubFace],
            [["wheel", "backspacing"], 110],
            [["wheel", "rimWidth"], 203.2],
          ] as const;
          const typed = own.reduce<unknown>(
            (all, [path, value]) => withMine(setAt(all, path, value), [path]),
            begun,
          );
          const readings = [
            reading({ height: "wheelCenter" }, height),
            reading({ height: lower }, joint),
            reading({ offset: lower }, 662),
          ];
          const document = withReadings({ ...(typed as object), readings });
          expect(poseOf(document).wheelCenter[2]).toBeCloseTo(height, 1);
          expect(setupOf(document).tire.loadedRadius).toBeCloseTo(height, 1);
          expect(setupOf(document).knuckle.hubFace).toBe(hubFace);
        },
      ),
      { seed: SEED, numRuns: runs(8, 40) },
    );
  });

  it("leaves what somebody typed, other trucks and readings that say nothing alone", () => {
    const path = ["truck", "lowerArm", "ballJoint", 2];
    const typed = withMine(setAt(begun, path, 222), [path]);
    const document = withReadings({ ...(typed as object), readings: [reading({ height: lower }, 231)] });
    expect(valueAt(document, path)).toBe(222);
    const other = {
      ...begun,
      fromExample: { of: "some example" },
      readings: [reading({ height: lower }, 231)],
    };
    expect(withReadings(other)).toBe(other);
    const asked = withReadings({
      ...begun,
      readings: [{ height: lower }, { height: lower, is: 9, leftOut: true }],
    });
    expect(valueAt(asked, ["fromExample", "read"])).toBeUndefined();
  });
});

describe("the knuckle between two joints", () => {
  it("put together again holds the wheel and the tie rod end where they were (solved by the pose kernel)", () => {
    fc.assert(
      fc.property(
        fc.record({
          upper: fc.tuple(fc.integer({ min: -40, max: 10 }), fc.integer({ min: 590, max: 640 })),
          wheel: fc.tuple(fc.integer({ min: 800, max: 860 }), fc.integer({ min: 315, max: 350 })),
          camber: fc.double({ min: -0.03, max: 0.03, noNaN: true }),
        }),
        ({ upper, wheel, camber }) => {
          const lowerJoint: Vec3 = [10, 670, 215];
          const upperJoint: Vec3 = [upper[0], upper[1], 475];
          const lean = Math.asin(
            (lowerJoint[1] - upperJoint[1]) / Math.hypot(...lowerJoint.map((v, i) => v - upperJoint[i]!)),
          );
          const offset = -4;
          const found = knuckleFrom(
            { lowerJoint, upperJoint, wheelCenter: [0, ...wheel] },
            lean + camber,
            null,
            offset,
          );
          const rod: Vec3 = [-140, 640, 255];
          const arm = inKnuckle(rod, lowerJoint, upperJoint, found.pinAngle);
          const deg = (found.pinAngle / Math.PI) * 180;
          const document = {
            ...begun,
            readings: [],
            truck: {
              ...(begun.truck as object),
              lowerArm: { frontPivot: [190, 270, 240], rearPivot: [-190, 265, 245], ballJoint: lowerJoint },
              upperArm: { frontPivot: [120, 415, 450], rearPivot: [-160, 410, 440], ballJoint: upperJoint },
            },
            knuckle: {
              span: found.span,
              pinHeight: found.pinHeight,
              pinAngle: deg,
              hubFace: found.hubFace,
              steeringArm: arm,
            },
            wheel: { rimDiameter: 381, rimWidth: 203.2, offset },
          };
          const pose = poseOf(document);
          expect([pose.wheelCenter[1], pose.wheelCenter[2]]).toEqual(wheel.map((v) => expect.closeTo(v, 6)));
          expect([...pose.tieRodOuter]).toEqual(rod.map((v) => expect.closeTo(v, 6)));
          const again = knuckleFrom(
            { lowerJoint, upperJoint, wheelCenter: [0, 0, wheel[1]] },
            found.pinAngle,
            found.hubFace,
            offset,
          );
          expect(again.pinHeight).toBeCloseTo(found.pinHeight, 9);
        },
      ),
      { seed: SEED, numRuns: runs(20, 120) },
    );
  });
});

describe("the ellipsoid of a covariance", () => {
  it("has that covariance, also where a direction has no spread", () => {
    const rows: readonly (readonly [Vec3, Vec3, Vec3])[] = [
      [
        [4, 1, 0.5],
        [1, 9, -2],
        [0.5, -2, 16],
      ],
      [
        [4, 2, 0],
        [2, 1, 0],
        [0, 0, 0],
      ],
      [
        [0, 0, 0],
        [0, 3, 1],
        [0, 1, 2],
      ],
    ];
    for (const covariance of rows) {
      const l = choleskyOf(covariance);
      const product = l.map((a) => l.map((b) => a.reduce((sum, value, k) => sum + value * b[k]!, 0)));
      expect(product).toEqual(covariance.map((row) => row.map((value) => expect.closeTo(value, 12))));
    }
  });
});
