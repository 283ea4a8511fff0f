import { solvePose } from "../../suspension/solvePose.ts";
import type { Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import { type GapEntry, gapsAt } from "../reports/gapsAt.ts";
import { type LowestTravels, lowestTravels } from "./lowestTravels.ts";

/** Shares of full lock looked at short of it, from half lock on, the nearest to it first: there a lip is often met soonest. */
const SHORT_OF_LOCK = [0.9, 0.8, 0.7, 0.6, 0.5] as const;

/** mm. Less is no difference to anybody. */
const SAME = 0.05;

/** Where on the way to a full lock the truck has to stay higher than at the lock itself. */
export interface BeforeLock {
  /** At the lock. */
  readonly full: LowestTravels;
  /** The steering input, of those looked at, at which it stays highest; null = at none of them higher than at the lock. */
  readonly higher: LowestTravels | null;
  /** Whether every way looked at, the lock's own too, is proven to where it ends: without that none higher is no answer. */
  readonly isWhole: boolean;
}

/**
 * At full left lock, then at full right: how low the truck comes there, and where short of it, by tenths from half lock on, it
 * does not come as low before something touches; where that is nowhere, before the allowance is no longer kept. Each way down is
 * proven as `lowestTravels` is; between the steering inputs looked at it may be worse still.
 * @returns null for a lock the truck cannot stand at. @param budget once it is spent, nothing is proven past where each has come
 */
export function beforeLocks(model: Model, budget: Budget): readonly (BeforeLock | null)[] {
  return [1, -1].map((lock) => {
    const share = budget.share(lock > 0 ? 2 : 1);
    const ways = lowestTravels(
      model,
      [1, ...SHORT_OF_LOCK].map((part) => lock * part),
      share,
    );
    const [full, ...short] = ways.map((way) => (way.ok ? way : null));
    if (!full) return null;
    const others = short.filter((way) => way !== null);
    const higher = highest(others, full, "touch") ?? highest(others, full, "allowance");
    return { full, higher, isWhole: others.length === short.length && [full, ...others].every(isProven) };
  });
}

function isProven({ touch, allowance }: LowestTravels): boolean {
  return touch.either.stop !== "unproven" && allowance.either.stop !== "unproven";
}

/** The way that ends first before a level, where that is before the full lock's own; one not proven tells nothing. */
function highest(
  ways: readonly LowestTravels[],
  full: LowestTravels,
  level: "touch" | "allowance",
): LowestTravels | null {
  return ways
    .filter(
      (way) => way[level].either.stop === "touch" && way[level].either.at < full[level].either.at - SAME,
    )
    .reduce<LowestTravels | null>(
      (best, way) => (best === null || way[level].either.at < best[level].either.at ? way : best),
      null,
    );
}

/** A gap on the way to a full lock. */
export interface NearerBefore {
  readonly steer: number;
  readonly entry: GapEntry;
  /** mm. The least at the lock itself. */
  readonly atLock: number;
}

/**
 * The least gap at a height short of a full lock, by tenths from half lock on, where it is less than the least at the lock itself.
 * Exact at each of these poses. @param travel mm @param lock 1 or −1 @returns null = none is
 */
export function nearerBefore(model: Model, travel: number, lock: 1 | -1): NearerBefore | null {
  const atLock = leastAt(model, travel, lock);
  if (atLock === null) return null;
  let best: NearerBefore | null = null;
  for (const part of SHORT_OF_LOCK) {
    const entry = leastAt(model, travel, lock * part);
    const most = best === null ? atLock.gap - SAME : best.entry.gap;
    if (entry !== null && entry.gap < most) best = { steer: lock * part, entry, atLock: atLock.gap };
  }
  return best;
}

function leastAt(model: Model, travel: number, steer: number): GapEntry | null {
  const pose = solvePose(model.frontEnd, travel, steer);
  if (!pose.ok) return null;
  return gapsAt(model, pose).reduce<GapEntry | null>(
    (least, one) => (least === null || one.gap < least.gap ? one : least),
    null,
  );
}
