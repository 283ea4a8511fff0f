import { leastStep } from "../numeric/leastStep.ts";
import type { Adjuster } from "./adjusters.ts";

/** What is left over of each thing asked for at some settings, rad; null = that cannot be set. */
export type LeftOver = (settings: readonly number[]) => readonly number[] | null;

/** The settings that meet the targets exactly, or come as near as any, ranges and steps not looked at. mm. */
export interface ExactSettings {
  readonly settings: readonly number[];
  /** Nothing is left over. */
  readonly meets: boolean;
}

/** rad. Left over below this is rounding. */
const MET = 1e-9;

/** mm. Settings are solved to this, and derivatives taken over this. */
const SETTLED = 1e-8;
const DIFFERENCE = 0.02;

/** Newton doubles its digits a step; more steps mean that there is nothing to find. */
const MOST_STEPS = 60;

/** mm. One step is never longer: beyond it the slopes tell nothing. */
const LONGEST_STEP = 30;

/**
 * Newton with central differences from the settings as bolted on; with fewer targets than adjusters the least change, with
 * more the least squares. @param fixed settings that must stay, by adjuster. @returns null when it does not settle.
 */
export function exactSettings(
  adjusterList: readonly Adjuster[],
  leftOver: LeftOver,
  fixed: readonly (number | null)[] = [],
): ExactSettings | null {
  const free = adjusterList.flatMap((_, i) => ((fixed[i] ?? null) === null ? [i] : []));
  let settings = adjusterList.map((adjuster, i) => fixed[i] ?? adjuster.asBolted);
  for (let step = 0; step < MOST_STEPS; step++) {
    const now = leftOver(settings);
    if (now === null) return null;
    const meets = now.every((value) => Math.abs(value) < MET);
    if (now.length === 0 || free.length === 0) return { settings, meets };
    const slopes = free.map((i) => slopeOf(leftOver, settings, i));
    if (slopes.some((slope) => slope === null)) return null;
    const rows = now.map((_, row) => slopes.map((slope) => slope![row]!));
    const change = leastStep(rows, now);
    if (change === null) return null;
    const size = Math.max(...change.map(Math.abs));
    if (size < SETTLED) return { settings, meets };
    const next = shortened(leftOver, settings, free, change, Math.min(1, LONGEST_STEP / size));
    if (next === null) return null;
    settings = next;
  }
  return null;
}

/** What is left over, squared and summed; infinite where it cannot be set. */
export function costOf(leftOver: LeftOver, settings: readonly number[]): number {
  const now = leftOver(settings);
  return now === null ? Number.POSITIVE_INFINITY : now.reduce((sum, value) => sum + value ** 2, 0);
}

/** Change of what is left over per mm of one adjuster. */
function slopeOf(leftOver: LeftOver, settings: readonly number[], adjuster: number): number[] | null {
  const at = (by: number) => leftOver(settings.map((value, i) => (i === adjuster ? value + by : value)));
  const [more, less] = [at(DIFFERENCE), at(-DIFFERENCE)];
  if (more === null || less === null) return null;
  return more.map((value, i) => (value - less[i]!) / (2 * DIFFERENCE));
}

/** Takes a step, halved until the truck can be set so; null = not even a thousandth of it. */
function shortened(
  leftOver: LeftOver,
  settings: readonly number[],
  free: readonly number[],
  change: readonly number[],
  share: number,
): number[] | null {
  for (let part = share; part > share / 1000; part /= 2) {
    const next = [...settings];
    free.forEach((adjuster, i) => {
      next[adjuster] = next[adjuster]! + part * change[i]!;
    });
    if (leftOver(next) !== null) return next;
  }
  return null;
}
