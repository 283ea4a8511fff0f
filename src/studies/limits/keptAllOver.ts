import { PoseStatus } from "../../suspension/poseStatus.ts";
import type { Budget } from "../numeric/budget.ts";
import { KEPT } from "./frontEndLimit.ts";
import { CellState, type LimitCell } from "./limitCell.ts";
import type { ArmRange } from "./worstMargin.ts";

/** Cells looked at, at most: what they leave open is searched limit by limit. */
const MOST_LOOKS = 1000;

/** Microseconds, about, of a look at a cell for several limits. */
const LOOK_WORK = 15;

/**
 * Which limits are proven to be kept at all lower arm angles × −1 … +1 of steer, looking at each cell of poses once for
 * all of them: cells are halved until none may fall below 0 in any. One passed at a middle is left out at once.
 * @returns by their places in the cell's `limits`; where cells or the budget do not do, fewer than there are
 */
export function keptAllOver(
  cell: LimitCell,
  { armLow, armHigh }: ArmRange,
  budget: Budget,
): ReadonlySet<number> {
  const kept = new Set(cell.limits.keys());
  const leaveOutPassed = (): void => {
    for (const limit of kept) if (cell.margin(limit) < -KEPT) kept.delete(limit);
  };
  const whole = 0.5 * (armHigh - armLow);
  for (const arm of [armLow, armHigh, armLow + whole])
    for (const steer of [0, -1, 1]) if (cell.put(arm, steer) === PoseStatus.Ok) leaveOutPassed();
  const open: { readonly at: readonly [number, number, number, number]; readonly limits: number[] }[] = [
    { at: [armLow + whole, whole, 0, 1], limits: [...kept] },
  ];
  for (let looks = 0; open.length > 0 && kept.size > 0; looks++) {
    const { at, limits } = open.pop()!;
    const [arm, armHalf, steer, steerHalf] = at;
    const left = limits.filter((limit) => kept.has(limit));
    if (left.length === 0) continue;
    if (looks === MOST_LOOKS || budget.isSpent(LOOK_WORK)) {
      for (const { limits: undecided } of [...open, { limits }])
        for (const limit of undecided) kept.delete(limit);
      break;
    }
    const state = cell.look(arm, armHalf, steer, steerHalf);
    if (state === CellState.Empty) continue;
    let acrossArm = armHalf >= steerHalf * whole;
    let still = left;
    if (state === CellState.Bounded) leaveOutPassed();
    if (state === CellState.Bounded || cell.boundAtBorder()) {
      let least = 0;
      still = left.filter((limit) => {
        const spread = cell.spreadOf(limit);
        const [byArm, bySteer] = [spread[0]!, spread[1]!];
        const bound = cell.margin(limit) - byArm - bySteer;
        if (bound >= -KEPT) return false;
        if (Number.isFinite(bound) && bound / cell.limits[limit]!.range < least) {
          least = bound / cell.limits[limit]!.range;
          acrossArm = state === CellState.Bounded ? byArm >= bySteer : cell.loosest === "arm";
        }
        return true;
      });
    }
    if (still.length === 0) continue;
    const [a, s] = acrossArm ? [0.5 * armHalf, 0] : [0, 0.5 * steerHalf];
    for (const way of [-1, 1])
      open.push({ at: [arm + way * a, armHalf - a, steer + way * s, steerHalf - s], limits: still });
  }
  return kept;
}
