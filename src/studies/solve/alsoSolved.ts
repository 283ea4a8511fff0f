import { solvePose } from "../../suspension/solvePose.ts";
import { alsoMoves } from "../change/alsoMoves.ts";
import type { Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import { leaningWheel } from "../plausibility/standing.ts";
import { checkClearance } from "../reports/check.ts";
import { type AlsoOf, type AlsoSolved, type SolveTarget, targetTravel } from "./solveTypes.ts";

/** What a smaller change of is not told: half a millimeter, as of changes; a twentieth of a degree, finer than a gauge reads. */
const LEAST = { angle: (0.05 * Math.PI) / 180, length: 0.5 } as const;

/**
 * What a value of a field moves besides what is wanted: of the left wheel at the height wanted, straight ahead, and the worst gap of all.
 * @param before the truck as it is @param after the same with the value
 */
export function alsoSolved(before: Model, after: Model, target: SolveTarget, budget: Budget): AlsoSolved {
  const { of } = target;
  const at = targetTravel(target);
  const [a, b] = [solvePose(before.frontEnd, at, 0), solvePose(after.frontEnd, at, 0)];
  const moves = alsoMoves(before, after, budget).filter(({ what }) => what !== of);
  const numbers: AlsoOf[] = [];
  const tell = (what: AlsoOf["what"], from: number, to: number) => {
    if (of === what || Math.abs(to - from) < LEAST[what === "camber" ? "angle" : "length"]) return;
    const isUnusual = what === "camber" && leaningWheel(after).length > 0;
    numbers.push({ what, from, to, isUnusual });
  };
  if (a.ok && b.ok) {
    tell("camber", a.left.camber, b.left.camber);
    tell("mechanicalTrail", a.left.mechanicalTrail, b.left.mechanicalTrail);
  }
  if (of !== "gap") {
    // A check that was cut short knows no worst gap.
    const worst = (model: Model) => {
      const { cutShort, worst: found } = checkClearance(model, { budget: budget.share(2) });
      return cutShort === true ? null : (found?.gap ?? null);
    };
    const [from, to] = [worst(before), worst(after)];
    if (from !== null && to !== null) tell("gap", from, to);
  }
  return { numbers, moves };
}
