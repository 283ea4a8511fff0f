import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { AdjustersSetup, Setup, WheelTargets } from "../../../src/setup/types/types.ts";
import { adjustedInput } from "../../../src/studies/alignment/adjusters.ts";
import { alignedModel } from "../../../src/studies/alignment/alignedModel.ts";
import { alignSide, alignTruck, type TruckAlignment } from "../../../src/studies/alignment/alignSide.ts";
import { straightAhead, withToe } from "../../../src/studies/alignment/straightAhead.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import type { FrontEndInput } from "../../../src/suspension/inputs.ts";
import { SIDE } from "../../../src/suspension/sideRow.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { runs } from "../../runs.ts";
import { drawnTrucks, inputOf } from "../../suspension/drawnTrucks.ts";
import { plausibleTrucks, SEED } from "../../suspension/plausibleTrucks.ts";
import { modelAround } from "../geometry/modelAround.ts";

const DEG = Math.PI / 180;
const STEP = 25.4 / 32;

const shims: AdjustersSetup = {
  ...{ kind: "shims", direction: [0, -1, 0], front: 3 * STEP, rear: 5 * STEP },
  ...{ least: 0, most: 24 * STEP, step: STEP },
};
const eccentric = (arm: "upper" | "lower"): AdjustersSetup => ({
  ...{ kind: "eccentric", arm, direction: [0, 1, 0], throw: 9, front: 1, rear: -2 },
});
const legs = (how: "each" | "together"): AdjustersSetup => ({
  ...{ kind: "adjustableUpperArm", legs: how, shorter: 12, longer: 12, step: 0.8 },
});

interface Wanted {
  readonly left: WheelTargets;
  readonly right?: WheelTargets;
  readonly travel?: number;
}

function modelOf(input: FrontEndInput, adjusters: AdjustersSetup | null, wanted: Wanted): Model {
  const { left, right = left, travel = 0 } = wanted;
  const setup: Partial<Setup> = {
    adjusters,
    stances: [{ name: "stance", travel }],
    alignment: { toe: input.toe, targets: { stance: "stance", left, right } },
  };
  return modelAround(input, setup);
}

function aligned(model: Model): TruckAlignment {
  const result = alignTruck(model);
  if (!result.ok) throw new Error(`travel ${result.travel} is out of reach`);
  return result.alignment;
}

/** Camber and caster of the left wheel with settings put in by hand. */
function readWith(
  input: FrontEndInput,
  adjusters: AdjustersSetup,
  settings: number[],
  travel: number,
  toe: number,
) {
  const set = adjustedInput(input, adjusters, settings);
  const frontEnd = set && withToe(set, "left", travel, toe);
  return frontEnd && straightAhead(frontEnd.left, "left", travel);
}

const trucks = drawnTrucks.map((truck) => ({ name: truck.name, input: inputOf(truck) }));

describe("alignment to shims", () => {
  it.each(trucks)("$name: finds the stacks that a truck was given, to the shim", ({ input }) => {
    for (const [front, rear, travel] of [
      [3, 5, 0],
      [0, 11, -25],
      [17, 2, 30],
    ] as const) {
      const toe = 0.1 * DEG;
      const read = readWith(input, shims, [front * STEP, rear * STEP], travel, toe)!;
      const wanted = { left: { camber: read.camber, caster: read.caster, toe }, travel };
      const { left, right, reached } = aligned(modelOf(input, shims, wanted));
      expect(reached).toBe(true);
      for (const side of [left, right]) {
        expect(side.settings.map(({ setting }) => Math.round(setting / STEP))).toEqual([front, rear]);
        // Unlike tie rods bump steer unlike, so off travel 0 the right wheel is not the left one's mirror image.
        const digits = side === left ? 9 : 3;
        side.settings.forEach(({ exact, setting }) => {
          expect(Math.abs(exact! - setting)).toBeLessThan(side === left ? 1e-5 : 0.02);
        });
        expect(side.leftOver.camber).toBeCloseTo(0, digits);
        expect(side.leftOver.caster).toBeCloseTo(0, digits);
        expect(side.leftOver.toe).toBeCloseTo(0, 11);
      }
    }
  });

  it.each(trucks)("$name: of all stacks there are, none leaves less over", ({ input }) => {
    const rest = readWith(input, shims, [3 * STEP, 5 * STEP], 0, 0)!;
    // The second is beyond every stack.
    for (const [camber, caster] of [
      [-0.63 * DEG, 0.41 * DEG],
      [-6 * DEG, 5 * DEG],
    ] as const) {
      const target = { camber: rest.camber + camber, caster: rest.caster + caster, toe: 0 };
      const { left, reached } = aligned(modelOf(input, shims, { left: target }));
      const found = left.leftOver.camber! ** 2 + left.leftOver.caster! ** 2;
      let least = Number.POSITIVE_INFINITY;
      for (let front = 0; front <= 24; front++) {
        for (let rear = 0; rear <= 24; rear++) {
          const read = readWith(input, shims, [front * STEP, rear * STEP], 0, 0);
          if (!read) continue;
          least = Math.min(least, (read.camber - target.camber) ** 2 + (read.caster - target.caster) ** 2);
        }
      }
      expect(found).toBeLessThanOrEqual(least + 1e-15);
      const isBeyond = camber < -5 * DEG;
      expect(reached).toBe(!isBeyond);
      if (isBeyond) expect(Math.sqrt(found)).toBeGreaterThan(1 * DEG);
    }
  });

  it("inboard shims lean the top in, and more at the front than at the rear take caster off", () => {
    const { left } = aligned(
      modelOf(inputOf(drawnTrucks[0]!), shims, { left: { camber: 0, caster: null, toe: 0 } }),
    );
    const [front, rear] = left.sensitivities;
    expect(front!.camber).toBeLessThan(0);
    expect(rear!.camber).toBeLessThan(0);
    expect(front!.caster).toBeLessThan(0);
    expect(rear!.caster).toBeGreaterThan(0);
  });

  it("with camber alone asked for changes the stacks the least", () => {
    const input = inputOf(drawnTrucks[0]!);
    const rest = readWith(input, shims, [3 * STEP, 5 * STEP], 0, 0)!;
    const target = rest.camber - 0.5 * DEG;
    const { left } = aligned(modelOf(input, shims, { left: { camber: target, caster: null, toe: 0 } }));
    const size = (a: number, b: number) => Math.hypot(a - 3 * STEP, b - 5 * STEP);
    const [front, rear] = left.settings.map(({ exact }) => exact!) as [number, number];
    const read = readWith(input, shims, [front, rear], 0, 0)!;
    expect(read.camber).toBeCloseTo(target, 8);
    // Along the line of equal camber, no point lies nearer to the stacks as they are.
    for (const off of [-2, -0.5, 0.5, 2]) {
      let other = rear;
      for (let i = 0; i < 40; i++) {
        const slope = left.sensitivities[1]!.camber / left.sensitivities[1]!.per;
        other -= (readWith(input, shims, [front + off, other], 0, 0)!.camber - target) / slope;
      }
      expect(size(front + off, other)).toBeGreaterThan(size(front, rear));
    }
    expect(left.leftOver.caster).toBeNull();
  });
});

describe("sensitivities", () => {
  it.each(trucks)("$name: are what a real step does, tie rod set again or left alone", ({ input }) => {
    const model = modelOf(input, shims, { left: { camber: 0, caster: null, toe: 0.05 * DEG }, travel: 10 });
    const { left } = aligned(model);
    const settings = left.settings.map(({ setting }) => setting);
    left.sensitivities.forEach((found, i) => {
      const by = (amount: number) => settings.map((value, j) => (i === j ? value + amount : value));
      const half = found.per / 2;
      const [more, less] = [half, -half].map((amount) => readWith(input, shims, by(amount), 10, 0.05 * DEG)!);
      expect(found.camber).toBeCloseTo(more!.camber - less!.camber, 6);
      expect(found.caster).toBeCloseTo(more!.caster - less!.caster, 6);
      // The toe that, set again, gives the same tie rod length is the one it had gone off to.
      const rod = (amount: number, toe: number) =>
        withToe(adjustedInput(input, shims, by(amount))!, "left", 10, toe)!.left.row[SIDE.tieRodLength]!;
      const toeOn = (amount: number) => {
        const wanted = rod(0, 0.05 * DEG);
        let [a, b] = [0, 0.1 * DEG];
        for (let n = 0; n < 30 && Math.abs(b - a) > 1e-13; n++) {
          const [atA, atB] = [rod(amount, a) - wanted, rod(amount, b) - wanted];
          [a, b] = [b, b - (atB * (b - a)) / (atB - atA)];
        }
        return b;
      };
      expect(found.toeUntilSet).toBeCloseTo(toeOn(half) - toeOn(-half), 6);
    });
  });
});

describe("other adjusters", () => {
  it.each([
    ["eccentrics at the upper arm", eccentric("upper"), [4.2, -3.1]],
    ["eccentrics at the lower arm", eccentric("lower"), [-5.5, 6.3]],
    ["legs set each by itself", legs("each"), [3.2, -1.6]],
    ["legs set together", legs("together"), [2.4]],
  ] as const)("%s: find what a truck was given", (_, adjusters, given) => {
    for (const { input } of trucks) {
      const read = readWith(input, adjusters, [...given], -10, 0)!;
      const caster = given.length === 1 ? null : read.caster;
      const { left, reached } = aligned(
        modelOf(input, adjusters, { left: { camber: read.camber, caster, toe: 0 }, travel: -10 }),
      );
      expect(reached).toBe(true);
      left.settings.forEach(({ setting }, i) => {
        expect(setting).toBeCloseTo(given[i]!, 5);
      });
    }
  });

  it("one length cannot meet camber and caster both, and says so", () => {
    const { input } = trucks[0]!;
    const read = readWith(input, legs("together"), [2.4], 0, 0)!;
    const target = { camber: read.camber, caster: read.caster + 2 * DEG, toe: 0 };
    const { left, reached } = aligned(modelOf(input, legs("together"), { left: target }));
    expect(reached).toBe(false);
    expect(left.settings[0]!.exact).toBeNull();
  });

  it.each([null, shims])("no answer where no tie rod gives the toe wanted", (adjusters) => {
    const { input } = trucks[0]!;
    const straight = { camber: null, caster: null, toe: 0 };
    const turned = { ...straight, toe: -50 * DEG };
    for (const wanted of [{ left: turned }, { left: turned, right: straight }])
      expect(alignTruck(modelOf(input, adjusters, { ...wanted, travel: -40 }))).toEqual({
        ok: false,
        travel: -40,
      });
  });

  it("without adjusters the tie rods alone are set, and only toe can be met", () => {
    const { input } = trucks[0]!;
    const toeOnly = { camber: null, caster: null, toe: 0.2 * DEG };
    const met = aligned(modelOf(input, null, { left: toeOnly, travel: 20 }));
    expect(met.reached).toBe(true);
    expect(met.left.settings).toEqual([]);
    expect(met.left.aligned.toe).toBeCloseTo(0.2 * DEG, 11);
    expect(met.left.tieRod.aligned).not.toBe(met.left.tieRod.asBolted);
    expect(aligned(modelOf(input, null, { left: { ...toeOnly, camber: 1 * DEG } })).reached).toBe(false);
  });

  it("an eccentric asked for too much ends at its throw, the other at its best", () => {
    const { input } = trucks[0]!;
    const adjusters = eccentric("upper");
    const read = readWith(input, adjusters, [14, 3], 0, 0)!;
    const target = { camber: read.camber, caster: read.caster, toe: 0 };
    const { left, reached } = aligned(modelOf(input, adjusters, { left: target }));
    expect(reached).toBe(false);
    expect(left.settings[0]!.setting).toBeCloseTo(9, 9);
    expect(left.settings[0]!.exact).toBeCloseTo(14, 4);
    const cost = (settings: number[]) => {
      const at = readWith(input, adjusters, settings, 0, 0)!;
      return (at.camber - target.camber) ** 2 + (at.caster - target.caster) ** 2;
    };
    const found = left.leftOver.camber! ** 2 + left.leftOver.caster! ** 2;
    for (let front = -9; front <= 9; front += 0.75) {
      for (let rear = -9; rear <= 9; rear += 0.75)
        expect(found).toBeLessThanOrEqual(cost([front, rear]) + 1e-15);
    }
  });
});

describe("the truck as aligned", () => {
  it.each(trucks)(
    "$name: posed the ordinary way reads what was reported, targets alike or not",
    ({ input }) => {
      const left = { camber: 0.2 * DEG, caster: 4.5 * DEG, toe: 0.1 * DEG };
      for (const right of [left, { camber: -0.3 * DEG, caster: 5 * DEG, toe: 0 }]) {
        const model = modelOf(input, shims, { left, right, travel: 15 });
        const alignment = aligned(model);
        const made = alignedModel(model, alignment, "made up");
        if (!made.ok) throw new Error("does not go together");
        const pose = solvePose(made.value.frontEnd, 15, 0);
        if (!pose.ok) throw new Error("out of reach");
        for (const side of ["left", "right"] as const) {
          for (const key of ["camber", "caster", "toe"] as const) {
            expect(pose[side][key]).toBeCloseTo(alignment[side].aligned[key], 10);
          }
          expect(pose[side].tieRodLength).toBeCloseTo(alignment[side].tieRod.aligned, 8);
        }
        expect(made.value.pairs.map(({ name, side }) => [name, side])).toEqual(
          model.pairs.map(({ name, side }) => [name, side]),
        );
      }
    },
  );

  it("is left alone when it is aligned again", () => {
    for (const adjusters of [shims, eccentric("lower"), legs("each")]) {
      const wanted = { camber: -0.2 * DEG, caster: 5 * DEG, toe: 0.1 * DEG };
      const model = modelOf(trucks[0]!.input, adjusters, { left: wanted });
      const first = aligned(model);
      const made = alignedModel(model, first, "made up");
      if (!made.ok) throw new Error("does not go together");
      const again = aligned(made.value);
      again.left.settings.forEach(({ setting, asBolted }) => {
        expect(setting).toBeCloseTo(asBolted, 6);
      });
      expect(again.left.aligned.camber).toBeCloseTo(first.left.aligned.camber, 9);
      expect(again.left.tieRod.aligned).toBeCloseTo(first.left.tieRod.aligned, 7);
    }
  });

  it("of any truck reads its targets, but for less than one step of each stack", () => {
    let reachedCount = 0;
    fc.assert(
      fc.property(
        plausibleTrucks(),
        fc.integer({ min: -15, max: 15 }),
        fc.integer({ min: -15, max: 15 }),
        fc.integer({ min: -30, max: 30 }),
        ({ input, frontEnd }, camber, caster, travel) => {
          const rest = readWith(input, shims, [3 * STEP, 5 * STEP], travel, 0);
          if (!rest) return;
          const left = {
            camber: rest.camber + (camber * DEG) / 10,
            caster: rest.caster + (caster * DEG) / 10,
            toe: 0,
          };
          const job = { frontEnd, adjusters: shims, travel, targets: left, per: STEP };
          for (const name of ["left", "right"] as const) {
            const side = alignSide({ ...job, side: name });
            if (side === null) continue;
            expect(side.leftOver.toe).toBeCloseTo(0, 10);
            for (const { setting, least, most, step } of side.settings) {
              expect(setting).toBeGreaterThanOrEqual(least - 1e-9);
              expect(setting).toBeLessThanOrEqual(most + 1e-9);
              expect(Math.abs(setting / step! - Math.round(setting / step!))).toBeLessThan(1e-9);
            }
            if (!side.reached) continue;
            reachedCount++;
            const most = (key: "camber" | "caster") =>
              side.sensitivities.reduce((sum, one) => sum + Math.abs(one[key] / one.per) * STEP, 0);
            const off = Math.hypot(side.leftOver.camber!, side.leftOver.caster!);
            expect(off).toBeLessThan(1.1 * Math.hypot(most("camber"), most("caster")));
          }
        },
      ),
      { ...SEED, numRuns: runs(16, 40) },
    );
    expect(reachedCount).toBeGreaterThan(runs(8, 20));
  }, 240_000);

  it("is no truck with targets at a stance out of reach, and without targets is as bolted on", () => {
    const { input } = trucks[0]!;
    const left = { camber: 0, caster: null, toe: 0 };
    expect(() => modelOf(input, shims, { left, travel: 900 })).toThrow(/stances\[0\]\.travel: out of reach/);
    const bare = aligned(modelAround(input));
    expect(bare).toMatchObject({ asked: false, reached: true, travel: 0 });
    expect(bare.left.tieRod.aligned).toBeCloseTo(bare.left.tieRod.asBolted, 9);
  });
});
