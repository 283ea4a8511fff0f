import type { Setup } from "../../../setup/types/types.ts";
import type { ChartAsk } from "../../../studies/chart/chartTypes.ts";

/** What of the heights and of the steering a chart looks at, as it is chosen. */
export interface PosesChosen {
  /** Names of stances; null = the end of the travel. */
  readonly from: string | null;
  readonly to: string | null;
  /** Share of full lock either way. */
  readonly lock: number;
}

/** Shares of lock to choose from. */
export const LOCKS: readonly number[] = [1, 0.75, 0.5, 0.25];

const ALL: PosesChosen = { from: null, to: null, lock: 1 };

const KEPT = "wellsweep chart poses";

/** What was chosen last; a browser may keep nothing for a page. */
export function keptPoses(): PosesChosen {
  try {
    const kept = JSON.parse(localStorage.getItem(KEPT) ?? "null") as Partial<PosesChosen> | null;
    const isName = (name: unknown) => name === null || typeof name === "string";
    const isWhole = kept !== null && isName(kept.from) && isName(kept.to) && LOCKS.includes(kept.lock!);
    return isWhole ? (kept as PosesChosen) : ALL;
  } catch {
    return ALL;
  }
}

export function keepPoses(poses: PosesChosen): void {
  try {
    localStorage.setItem(KEPT, JSON.stringify(poses));
  } catch {
    // Then the next visit begins with all of them.
  }
}

/** The poses to ask about; a stance that this truck does not have is the end of its travel. */
export function askedPoses(
  { from, to, lock }: PosesChosen,
  { travel, stances }: Setup,
): Pick<ChartAsk, "travel" | "lock"> {
  const of = (name: string | null) => stances.find((stance) => stance.name === name)?.travel ?? null;
  const [a, b] = [of(from), of(to)];
  if (a === null && b === null) return { travel: null, lock };
  const ends = [a ?? travel.droop, b ?? travel.bump];
  return { travel: { low: Math.min(...ends), high: Math.max(...ends) }, lock };
}
