import fc from "fast-check";
import { expect, it } from "vitest";
import type { Vec3 } from "../../src/geometry/vec.ts";
import { LinkReach, linkReachTo } from "../../src/suspension/linkReach.ts";
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

it("nothing is known of a range in which the pitman's end runs, or comes nearer, by half its way to the idler's pivot", () => {
  const circle = (foot: Vec3, radius: number) => ({
    foot,
    radial: [radius, 0, 0] as Vec3,
    quarter: [0, radius, 0] as Vec3,
  });
  /** Of a link that is too long for any pose. @param toIdler mm, from the pitman's end; @param turn rad, to either side */
  const found = (pitmanRadius: number, toIdler: Vec3, turn: number) => {
    const [x, y] = toIdler;
    const linkage = {
      pitman: circle([0, 0, 0], pitmanRadius),
      idler: circle([pitmanRadius + x, y, 0], 20),
      swing: 1,
      root: 1,
      linkLength: 300,
    };
    const out = { end: [0, 0, 0] as Vec3, turned: (v: Vec3) => v, off: 0 };
    return linkReachTo(out, linkage, 0, turn, [1, 0, 0], 100);
  };
  // Toward the idler: r·t + r·t²/2 + (r·t)²/200 of 100 mm.
  expect(found(20, [0, 100, 0], 1)).toBe(LinkReach.Empty);
  expect(found(45, [0, 100, 0], 1)).toBe(LinkReach.Unknown);
  // Across: r·t of 100 mm.
  expect(found(1000, [100, 0, 0], 0.04)).toBe(LinkReach.Empty);
  expect(found(1000, [100, 0, 0], 0.06)).toBe(LinkReach.Unknown);
});
