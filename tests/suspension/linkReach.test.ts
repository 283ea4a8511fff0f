import fc from "fast-check";
import { expect, it } from "vitest";
import { LinkReach } from "../../src/suspension/linkReach.ts";
import { PoseStatus } from "../../src/suspension/poseStatus.ts";
import { INNER_ENDS_ROW, innerEndsNear, steeringOf } from "../../src/suspension/steering.ts";
import { between } from "../reference/gapCases.ts";
import { plausibleTrucks, SEED } from "./plausibleTrucks.ts";

/** rad. Full lock asks this much of the pitman arm: most idlers stop short of it. */
const WIDE_SWING = 1.4;

const SAMPLES = 65;

/** Steerings of a truck with a pitman arm that swings so far that the idler's reach ends within the lock. */
const shortIdlers = plausibleTrucks()
  .filter(({ input }) => input.steering.type === "pitman")
  .map(({ input }) => {
    const { steering, knuckle } = input;
    if (steering.type !== "pitman") throw new TypeError("filtered above");
    const made = steeringOf({ ...steering, swing: WIDE_SWING }, knuckle.steeringArm[0] > 0);
    if (made === null) throw new TypeError("it steers at a lesser swing");
    return made;
  });

it("at the end of the idler's reach no inner end is farther off than told, and a range told empty holds no pose", () => {
  const ends = new Float64Array(INNER_ENDS_ROW);
  const near = innerEndsNear();
  const seen = { empty: 0, bounded: 0, atBorder: 0 };
  fc.assert(
    fc.property(shortIdlers, between(-1, 1), between(-14, -1), (steering, steer, size) => {
      const half = 2 ** size;
      const found = steering.innerEndsNearTo(near, steer, half);
      let standing = 0;
      let most = 0;
      for (let i = 0; i < SAMPLES; i++) {
        if (steering.innerEndsTo(ends, steer + half * ((2 * i) / (SAMPLES - 1) - 1)) !== PoseStatus.Ok)
          continue;
        standing++;
        for (const side of [0, 3])
          most = Math.max(most, Math.hypot(...[0, 1, 2].map((k) => ends[side + k]! - near.at[side + k]!)));
      }
      if (found === LinkReach.Empty) {
        expect(standing).toBe(0);
        seen.empty++;
      } else if (found === LinkReach.Bounded) {
        expect(most).toBeLessThanOrEqual(near.off);
        seen.bounded++;
        if (standing > 0 && standing < SAMPLES) seen.atBorder++;
      }
    }),
    { ...SEED, numRuns: 3000 },
  );
  expect(seen.empty).toBeGreaterThan(200);
  expect(seen.bounded).toBeGreaterThan(200);
  expect(seen.atBorder).toBeGreaterThan(20);
});

it("halving a range at the border brings the ends together as its root", () => {
  const near = innerEndsNear();
  const ends = new Float64Array(INNER_ENDS_ROW);
  fc.assert(
    fc.property(shortIdlers, (steering) => {
      let stands = 0;
      let falls = 1;
      if (steering.innerEndsTo(ends, 1) === PoseStatus.Ok) return;
      for (let i = 0; i < 50; i++) {
        const middle = 0.5 * (stands + falls);
        if (steering.innerEndsTo(ends, middle) === PoseStatus.Ok) stands = middle;
        else falls = middle;
      }
      expect(steering.innerEndsNearTo(near, stands, 2 ** -12)).toBe(LinkReach.Bounded);
      const wide = near.off;
      expect(steering.innerEndsNearTo(near, stands, 2 ** -22)).toBe(LinkReach.Bounded);
      expect(near.off).toBeLessThan(wide / 20);
      expect(steering.innerEndsNearTo(near, stands + 2 ** -10, 2 ** -12)).toBe(LinkReach.Empty);
    }),
    { ...SEED, numRuns: 400 },
  );
});
