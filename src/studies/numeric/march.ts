import { requireFinite, requirePositive } from "../../geometry/requireFinite.ts";
import { Budget } from "./budget.ts";

/** Stretches looked at before a proof is given up. */
const MOST_LOOKS = 256;

/**
 * Whether something is so at every value between two, by stretches that are halved until it is proven over each.
 * @param look what is known of the values within `half` of a middle: proven of all, disproven of one, or nothing
 * @returns false where it is not so somewhere, or not proven
 */
export function isEverywhere(
  from: number,
  to: number,
  look: (middle: number, half: number) => "everywhere" | "nowhere" | "unknown",
): boolean {
  const open: (readonly [middle: number, half: number])[] = [[0.5 * (from + to), 0.5 * Math.abs(to - from)]];
  for (let looks = 0; open.length > 0; looks++) {
    if (looks === MOST_LOOKS) return false;
    const [middle, half] = open.pop()!;
    const found = look(middle, half);
    if (found === "nowhere" || (found === "unknown" && half === 0)) return false;
    if (found === "everywhere") continue;
    for (const way of [-0.5, 0.5]) open.push([middle + way * half, 0.5 * half]);
  }
  return true;
}

/** What a look at a stretch says: proven clear, or nothing proven about how the wheel moves there, or who is in the way. */
export const Look = { Clear: -1, Unproven: -2 } as const;

/** A march along one input of the pose. */
export interface March {
  /** All from the start to here is proven clear. */
  readonly clearTo: number;
  /** The stretch that could not be proven ends here; equal to `clearTo` at the end of the range. */
  readonly next: number;
  /** Why it ended: `Clear` at the end of the range, else `Unproven` or the offender's number (≥ 0). */
  readonly found: number;
}

/** Share of the range at which a stretch of which no motion is proven is given up: the border of reach. */
const BORDER_SHARE = 1e-8;

/** Microseconds, about, of a look: of all pairs of a side, some of them pressed deep. */
const LOOK_WORK = 100;

/** Stretches the range is cut into to begin with. */
const FIRST = 8;

/**
 * Goes from `from` toward `to` in stretches that are each proven clear as a whole, doubling them while that works
 * and halving them while it does not, until a stretch no longer than `finest` cannot be proven. So nothing is
 * skipped: every input between `from` and `clearTo` is clear.
 * @param look proves a stretch by its middle and half length (≥ 0), see `Look`.
 * @param budget once it is spent, what lies past `clearTo` is unproven.
 * @throws RangeError for ends that are not finite, and a finest stretch that is not more than 0
 */
export function march(
  look: (middle: number, half: number) => number,
  from: number,
  to: number,
  finest: number,
  budget: Budget = Budget.endless(),
): March {
  requireFinite("march", from, to);
  const way = to < from ? -1 : 1;
  const range = Math.abs(to - from);
  if (range === 0) return { clearTo: to, next: to, found: look(to, 0) };
  requirePositive("march", finest);
  let at = from;
  let step = range / FIRST;
  let cleared = true;
  for (;;) {
    const left = way * (to - at);
    const last = step >= left;
    const next = last ? to : at + way * step;
    if (budget.isSpent(LOOK_WORK)) return { clearTo: at, next, found: Look.Unproven };
    const middle = 0.5 * (at + next);
    const found = look(middle, Math.abs(next - middle));
    if (found === Look.Clear) {
      if (last) return { clearTo: to, next: to, found };
      at = next;
      // Before a border each stretch is shorter than the last: two in a row say that longer ones may do.
      if (cleared) step *= 2;
      cleared = true;
      continue;
    }
    cleared = false;
    step = Math.min(step, left);
    if (step <= (found === Look.Unproven ? range * BORDER_SHARE : finest))
      return { clearTo: at, next, found };
    step *= 0.5;
  }
}
