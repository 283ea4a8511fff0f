import type { JigSetup } from "../../setup/types/asBuiltTypes.ts";
import { type FittedKnuckle, knuckleOf, UNKNOWNS, type Unknown, valuesOf } from "./fitKnuckle.ts";
import { type BuiltKnuckle, jigReadingsOf } from "./jigReadings.ts";
import { type JigRow, jigRows } from "./jigSheet.ts";

/** One dimension of a knuckle to change, by ordered − built, mm or rad. */
export interface Correction {
  readonly key: Unknown;
  readonly by: number;
}

/** What to change of a knuckle that fails, and what its checks would say then. */
export interface Corrections {
  /** The fewest found, the one that helps most first; empty = the readings do not tell what is off, or nothing fails. */
  readonly changes: readonly Correction[];
  /** Checks that would fail still. */
  readonly failing: readonly JigRow["key"][];
}

/** A reading beside its tolerance, and how far it is off. mm and radians. */
export interface CheckedReading extends Pick<JigRow, "key" | "tolerance"> {
  readonly off: number;
}

/** Whether a dimension is off by more than its readings can be wrong. @param within one standard deviation; null = left open */
export function isOff(off: number, within: number | null): boolean {
  return within !== null && Math.abs(off) > 2 * within;
}

/** A share of a tolerance that nobody reads: a check that passed on its tolerance asks for nothing by it. */
const ON_TOLERANCE = 0.01;

/**
 * The dimensions that brought back to the order make a knuckle's checks pass: of those that are off for certain the one that
 * helps most, until nothing fails or nothing helps, and none of them that could stay.
 * @param clampedAt mm up from the lower ball joint center, where the straightedge stood
 */
export function correctionsOf(
  checks: readonly CheckedReading[],
  fit: FittedKnuckle,
  ordered: BuiltKnuckle,
  clampedAt: number,
  jig: JigSetup,
): Corrections {
  const [built, wanted] = [valuesOf(fit.knuckle), valuesOf(ordered)];
  const readsAt = (changed: ReadonlySet<number>) => {
    const knuckle = knuckleOf(built.map((value, i) => (changed.has(i) ? wanted[i]! : value)));
    return new Map(
      jigRows(jigReadingsOf(knuckle, jig, clampedAt), jig.tolerances).map((row) => [row.key, row.mustRead]),
    );
  };
  const before = readsAt(new Set());
  /** How far each check would be past its tolerance, in tolerances; 0 = it passes. */
  const past = (changed: ReadonlySet<number>) => {
    const reads = readsAt(changed);
    return checks.map(({ key, off, tolerance }) => {
      const share = Math.abs(off + reads.get(key)! - before.get(key)!) / tolerance - 1;
      return share > ON_TOLERANCE ? share : 0;
    });
  };
  const sum = (shares: readonly number[]) => shares.reduce((all, one) => all + one, 0);
  const costOf = (changed: ReadonlySet<number>) => sum(past(changed));
  const without = (i: number) => new Set([...changed].filter((one) => one !== i));
  const candidates = UNKNOWNS.flatMap((key, i) =>
    isOff(built[i]! - wanted[i]!, fit.within[key]) ? [i] : [],
  );
  let changed: ReadonlySet<number> = new Set();
  let cost = costOf(changed);
  while (cost > 0) {
    const tried = candidates
      .filter((i) => !changed.has(i))
      .map((i) => ({ with: new Set([...changed, i]), cost: costOf(new Set([...changed, i])) }))
      .sort((a, b) => a.cost - b.cost)[0];
    if (tried === undefined || tried.cost >= cost) break;
    ({ with: changed, cost } = tried);
  }
  for (const i of [...changed]) if (costOf(without(i)) <= cost) changed = without(i);
  const left = past(changed);
  return {
    changes: [...changed].map((i) => ({ key: UNKNOWNS[i]!, by: wanted[i]! - built[i]! })),
    failing: checks.flatMap(({ key }, i) => (left[i]! > 0 ? [key] : [])),
  };
}
