import type { TruckAlignment } from "../../../studies/alignment/alignSide.ts";

/** rad, mm. Far below what is shown. */
const SAME = 1e-9;

/** Whether both wheels are asked for, read and set the same. */
export function isAlike({ left, right }: TruckAlignment): boolean {
  const near = (a: number | null, b: number | null) =>
    a === b || (a !== null && b !== null && Math.abs(a - b) < SAME);
  return (["camber", "caster", "toe"] as const).every(
    (key) =>
      near(left.targets[key], right.targets[key]) &&
      near(left.asBolted[key], right.asBolted[key]) &&
      near(left.aligned[key], right.aligned[key]),
  );
}
