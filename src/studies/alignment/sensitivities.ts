import type { Alignment } from "../../suspension/alignment.ts";
import type { FrontEnd } from "../../suspension/frontEnd.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import { type Adjuster, adjustedInput, adjustersOf } from "./adjusters.ts";
import { onTieRod, type SideJob, straightAhead, withToe } from "./straightAhead.ts";

/** What a little more of one setting does. Radians for `per` mm of it. */
export interface Sensitivity {
  readonly name: Adjuster["name"];
  /** mm. */
  readonly per: number;
  /** With the toe set again. */
  readonly camber: number;
  readonly caster: number;
  /** With the tie rod left as it is: how far the toe goes off until it is set again. */
  readonly toeUntilSet: number;
}

/** mm. Over so little the motion is straight, and rounding still far below. */
const DIFFERENCE = 0.02;

/** Central differences about settings (mm), straight ahead at the stance. None where the truck cannot be set so. */
export function sensitivitiesOf(job: SideJob, settings: readonly number[]): readonly Sensitivity[] {
  const { adjusters, side, travel, targets, per } = job;
  if (adjusters === null) return [];
  const setAt = (adjuster: number, by: number): FrontEnd | null => {
    const moved = settings.map((value, i) => (i === adjuster ? value + by : value));
    const input = adjustedInput(job.frontEnd.input, adjusters, moved);
    return input && withToe(input, side, travel, targets.toe);
  };
  const middle = setAt(-1, 0);
  if (middle === null) return [];
  const tieRod = middle[side].row[SIDE.tieRodLength]!;
  return adjustersOf(adjusters).flatMap(({ name }, i): readonly Sensitivity[] => {
    const [more, less] = [setAt(i, DIFFERENCE), setAt(i, -DIFFERENCE)];
    if (more === null || less === null) return [];
    const set = slope(straightAhead(more[side], side, travel), straightAhead(less[side], side, travel), per);
    const left = slope(onTieRod(more, side, travel, tieRod), onTieRod(less, side, travel, tieRod), per);
    if (set === null || left === null) return [];
    return [{ name, per, camber: set.camber, caster: set.caster, toeUntilSet: left.toe }];
  });
}

function slope(more: Alignment | null, less: Alignment | null, per: number) {
  if (more === null || less === null) return null;
  const of = (key: "camber" | "caster" | "toe") => ((more[key] - less[key]) / (2 * DIFFERENCE)) * per;
  return { camber: of("camber"), caster: of("caster"), toe: of("toe") };
}
