import { setAt } from "../../setup/reading/setAt.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { Budget } from "../numeric/budget.ts";
import { evenly } from "../numeric/evenly.ts";
import { type CheckReport, checkClearance } from "../reports/check.ts";
import { type TruckToVary, truckWith } from "../window/truckOverField.ts";
import { WINDOW_TOLERANCE, type WindowField } from "../window/windowField.ts";
import { windowOfField } from "../window/windowOf.ts";
import type { SetBy } from "../window/windowTypes.ts";
import type { Solved, SolveReport } from "./solveTypes.ts";

/** Values looked at for the one that comes nearest, where none gives the gap. */
const LOOKS = 9;

/** Microseconds, about, of a check. */
const CHECK_WORK = 20_000;

/**
 * Values of a field at which the worst gap of all is the one wanted: the ends of the field's window with that gap to keep, which
 * are proven on both sides. An end that something else sets, such as a limit, gives no such value.
 * @param wanted mm, at least 0
 */
export function solveGap(
  truck: TruckToVary,
  field: WindowField,
  wanted: number,
  range: { readonly from: number; readonly to: number },
  budget: Budget,
): Pick<SolveReport, "reachedNow" | "found" | "nearest" | "isUnmoved" | "between"> {
  const { setup } = truck;
  const keeping: TruckToVary = {
    ...truck,
    document: setAt(truck.document, ["allowance"], unitsFromMm(wanted, setup.units)),
    setup: { ...setup, allowance: wanted },
  };
  const check = (value: number): CheckReport | null => {
    const made = truckWith(truck, [[field, value]]);
    return made.ok ? checkClearance(made.value, { budget: budget.share(2) }) : null;
  };
  const now = check(field.now)?.worst?.gap ?? null;
  // What is to be kept moves no metal.
  if (field.key === "allowance")
    return {
      reachedNow: now,
      found: [],
      nearest: null,
      isUnmoved: now !== null,
      between: { rank: "proven" },
    };
  const tolerance = WINDOW_TOLERANCE[field.kind];
  const window = windowOfField(keeping, field, { ...range, tolerance, budget, isOpened: false });
  const solved = (value: number, out: 1 | -1, by: SetBy): readonly Solved[] => {
    if (by.kind !== "part") return [];
    const worst = check(value)?.worst;
    if (!worst) return [];
    return [
      { value, reached: worst.gap, bracket: { bound: worst.bound, beyond: value + out * tolerance, by } },
    ];
  };
  const found = window.fits.flatMap((fit) => [
    ...solved(fit.from, -1, fit.fromSetBy),
    ...solved(fit.to, 1, fit.toSetBy),
  ]);
  if (found.length > 0)
    return { reachedNow: now, found, nearest: null, isUnmoved: false, between: window.between };
  const looks: Solved[] = [];
  for (const value of [field.now, ...evenly(range.from, range.to, LOOKS)]) {
    if (budget.isSpent(CHECK_WORK)) break;
    const reached = check(value)?.worst?.gap;
    if (reached !== undefined) looks.push({ value, reached });
  }
  const off = ({ reached }: Solved) => Math.abs(reached - wanted);
  const gaps = looks.map(({ reached }) => reached);
  return {
    reachedNow: now,
    found,
    nearest: looks.length === 0 ? null : looks.reduce((best, one) => (off(one) < off(best) ? one : best)),
    isUnmoved: looks.length === LOOKS + 1 && Math.max(...gaps) - Math.min(...gaps) < tolerance,
    between: window.between,
  };
}
