import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mirrorY, type Vec3, vecAt } from "../../src/geometry/vec.ts";
import { LinkReach } from "../../src/suspension/linkReach.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { INNER_ENDS_ROW, innerEndsNear, steeringOf } from "../../src/suspension/steering.ts";
import { between } from "../reference/gapCases.ts";
import { plausibleTrucks, SEED } from "./plausibleTrucks.ts";

describe("a rack", () => {
  const END: Vec3 = [120, 300, 250];
  const STROKE = 70;

  it.each([
    [true, 1],
    [false, -1],
  ] as const)("moves both ends alike across the truck, arms ahead of the axis: %s", (ahead, sense) => {
    const steering = steeringOf({ type: "rack", innerEnd: END, stroke: STROKE }, ahead)!;
    expect([steering.type, steering.sense, steering.restLeft, steering.restRight]).toEqual([
      "rack",
      sense,
      END,
      END,
    ]);
    for (const steer of [-1, -0.25, 0, 0.6]) {
      const row = new Float64Array(INNER_ENDS_ROW).fill(Number.NaN);
      expect(steering.innerEndsTo(row, steer)).toBe(PoseStatus.Ok);
      const moved = sense * STROKE * steer;
      // The right one stands in its own mirrored frame.
      expect([...row]).toEqual(
        [
          ...[END[0], END[1] + moved, END[2], END[0], END[1] - moved, END[2]],
          ...[0, sense * STROKE, 0, 0, -sense * STROKE, 0],
        ].map((v) => v + 0),
      );
      const spread = { speedMost: 0, velocityOff: 1 };
      expect(steering.innerEndSpreadTo(spread, steer, 0.1)).toBe(true);
      expect(spread).toEqual({ speedMost: STROKE, velocityOff: 0 });
      const near = innerEndsNear();
      expect(steering.innerEndsNearTo(near, steer, 0.1)).toBe(LinkReach.Bounded);
      expect([...near.at]).toEqual([...row.subarray(0, 6)]);
      expect(near.off).toBeCloseTo(0.1 * STROKE, 12);
    }
  });
});

describe(`a pitman arm and an idler (seed ${SEED.seed})`, () => {
  it("stand at rest as measured, turn the wheels the way asked for, and answer the same from memory", () => {
    fc.assert(
      fc.property(
        plausibleTrucks("pitman"),
        between(-0.9, 0.9),
        between(0.001, 0.1),
        ({ input }, steer, half) => {
          const { knuckle, steering: linkage } = input;
          if (linkage.type !== "pitman") throw new TypeError("asked for those");
          const make = () => steeringOf(linkage, knuckle.steeringArm[0] > 0)!;
          const steering = make();
          expect(steering.restLeft).toEqual(linkage.innerEnd);
          expect(steering.restRight).toEqual(mirrorY(linkage.innerEndRight));
          const row = new Float64Array(INNER_ENDS_ROW);
          steering.innerEndsTo(row, 0);
          for (const [at, rest] of [
            [0, steering.restLeft],
            [3, steering.restRight],
          ] as const)
            vecAt(row, at).forEach((v, i) => {
              expect(v).toBeCloseTo(rest[i]!, 9);
            });
          // A left turn takes both ends toward +Y where the arms are ahead of the axis; the right one is mirrored.
          expect(Math.sign(row[7]!)).toBe(steering.sense);
          expect(Math.sign(row[10]!)).toBe(-steering.sense);
          const [first, again] = [new Float64Array(INNER_ENDS_ROW), new Float64Array(INNER_ENDS_ROW)];
          const status = steering.innerEndsTo(first, steer);
          expect(steering.innerEndsTo(again, steer)).toBe(status);
          expect(again).toEqual(first);
          // One range's answer is not another's.
          const fresh = { speedMost: 0, velocityOff: 0 };
          const known = { speedMost: 0, velocityOff: 0 };
          steering.innerEndSpreadTo(known, steer, 0.5 * half);
          for (const width of [half, 0.5 * half, half]) {
            expect(steering.innerEndSpreadTo(known, steer, width)).toBe(
              make().innerEndSpreadTo(fresh, steer, width),
            );
            expect(known).toEqual(fresh);
          }
          if (status !== PoseStatus.Ok || !steering.innerEndSpreadTo(known, steer, half)) return;
          const near = innerEndsNear();
          expect(steering.innerEndsNearTo(near, steer, half)).toBe(LinkReach.Bounded);
          expect([...near.at]).toEqual([...first.subarray(0, 6)]);
          expect(near.off).toBeCloseTo(known.speedMost * half, 9);
        },
      ),
      { ...SEED, numRuns: 150 },
    );
  });
});
