import { describe, expect, it } from "vitest";
import { beforeLocks, nearerBefore } from "../../../src/studies/map/beforeLock.ts";
import { lowestTravels } from "../../../src/studies/map/lowestTravels.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { gapsAt } from "../../../src/studies/reports/gapsAt.ts";
import {
  isHigherBefore,
  lowestParts,
  nearerBeforeSentence,
  nowhereHigherSentence,
} from "../../../src/studies/wording/beforeLockWords.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { mmFromInches } from "../../../src/units/lengthUnits.ts";
import { assembledModel, exampleSetup } from "../../reference/demoModel.ts";

const INCHES = { units: "in" } as const;
const model = assembledModel(exampleSetup("half-ton-limits.json"));

describe("short of a full lock", () => {
  it("the truck stays highest where, of all tenths of lock, the lip is met first, and both locks are told alike", () => {
    const told = beforeLocks(model, Budget.endless());
    for (const [i, lock] of [1, -1].entries()) {
      const { full, higher } = told[i]!;
      const lows = [0.5, 0.6, 0.7, 0.8, 0.9].map((part) => {
        const [way] = lowestTravels(model, [lock * part]);
        if (!way?.ok) throw new Error("out of reach");
        return { steer: way.steer, at: way.touch.either.at };
      });
      const least = lows.reduce((a, b) => (b.at < a.at ? b : a));
      expect(full.steer).toBe(lock);
      expect(told[i]!.isWhole).toBe(true);
      expect(higher?.steer).toBeCloseTo(least.steer, 12);
      expect(higher?.touch.either.at).toBe(least.at);
      expect(least.at).toBeLessThan(full.touch.either.at);
      expect(higher?.steer).toBeCloseTo(0.8 * lock, 12);
      expect(isHigherBefore(told[i]!, model, INCHES)).toBe(true);
      const { kept, end } = lowestParts(higher!, model, INCHES);
      expect(kept).toEqual({ text: expect.stringMatching(/^keeps 1\/4 in down to /), isPlace: true });
      expect(end).toMatch(/^touches past 3 1\/8 in bump: fender lip, /);
    }
  });

  it("where the lock itself is the worst nothing is told, but that it is of what was looked at: from half lock on", () => {
    const touched = assembledModel(exampleSetup("flatbed-long-arms.json"));
    const told = beforeLocks(touched, Budget.endless());
    expect(told.map((one) => one?.higher)).toEqual([null, null]);
    for (const one of told)
      expect(nowhereHigherSentence(one!)).toBe("At no tenth of lock from half lock on is it worse.");
  });

  it("a search cut short never says that it is nowhere worse", () => {
    let now = 0;
    const budget = Budget.of(1e-6, () => now++);
    const told = beforeLocks(model, budget);
    expect(budget.cut).toBe(true);
    for (const one of told) {
      expect(one!.isWhole).toBe(false);
      expect(isHigherBefore(one!, model, INCHES)).toBe(false);
      expect(nowhereHigherSentence(one!)).toMatch(/^Not every tenth of lock from half lock on was looked at/);
    }
  });

  it("the nearest at a height is the least of all gaps at that pose, nearer than at the lock, and told by the wheel it is on", () => {
    const travel = mmFromInches(3.25);
    const nearer = nearerBefore(model, travel, 1)!;
    const least = (steer: number) => {
      const pose = solvePose(model.frontEnd, travel, steer);
      if (!pose.ok) throw new Error("out of reach");
      return Math.min(...gapsAt(model, pose).map(({ gap }) => gap));
    };
    expect(nearer.entry.gap).toBe(least(nearer.steer));
    expect(nearer.atLock).toBe(least(1));
    expect(nearer.entry.gap).toBe(Math.min(...[0.5, 0.6, 0.7, 0.8, 0.9].map(least)));
    expect(nearer.entry.gap).toBeLessThan(nearer.atLock);
    expect(nearerBeforeSentence(nearer, travel, model, INCHES)).toMatch(
      /^On the way there it is worse: at 80% of left lock the (left|right) tire rubs the fender lip by /,
    );
    const far = { ...nearer, entry: { ...nearer.entry, gap: mmFromInches(2) } };
    expect(nearerBeforeSentence(far, travel, model, INCHES)).toBe("");
  });
});
