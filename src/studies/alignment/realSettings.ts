import type { Adjuster } from "./adjusters.ts";
import { costOf, exactSettings, type LeftOver } from "./settings.ts";

/** Settings that can be made: within range, shims in whole steps. mm. */
export interface RealSettings {
  readonly settings: readonly number[];
  /** The exact settings lay within every range, or past it by less than half a step. */
  readonly inRange: boolean;
}

/** mm. An exact setting without steps this far past its range is still at its end. */
const END = 1e-6;

/**
 * The settings within range and in whole steps that leave the least over (camber and caster weighing alike): the exact
 * ones, or the best with one of them at its end; then the grid around them, and its neighbors as long as one is better.
 * @param exact null = none was found: the search then starts as bolted on.
 */
export function realSettings(
  adjusterList: readonly Adjuster[],
  leftOver: LeftOver,
  exact: readonly number[] | null,
): RealSettings {
  const inRange = exact !== null && adjusterList.every((adjuster, i) => isWithin(adjuster, exact[i]!));
  const isInside =
    inRange && exact.every((value, i) => value >= adjusterList[i]!.least && value <= adjusterList[i]!.most);
  const start = isInside ? exact : leastOf(leftOver, startsWithin(adjusterList, leftOver, exact)).settings;
  return { settings: descend(adjusterList, leftOver, start), inRange };
}

/** In range, or past it by less than rounding to a step takes off anyway. */
function isWithin({ least, most, step }: Adjuster, value: number): boolean {
  const slack = step === null ? END : step / 2;
  return value >= least - slack && value <= most + slack;
}

/**
 * The exact settings brought into range, and for each adjuster at an end it lies past the best of the others. Camber and
 * caster change almost in a straight line with every setting, and then the best within range is one of these.
 */
function startsWithin(
  adjusterList: readonly Adjuster[],
  leftOver: LeftOver,
  exact: readonly number[] | null,
): (readonly number[])[] {
  const within = (settings: readonly number[]) =>
    settings.map((value, i) => clamped(adjusterList[i]!, value));
  const starts = [within(exact ?? adjusterList.map(({ asBolted }) => asBolted))];
  adjusterList.forEach((adjuster, i) => {
    const at = exact?.[i] ?? null;
    const ends = [
      at === null || at < adjuster.least ? [adjuster.least] : [],
      at === null || at > adjuster.most ? [adjuster.most] : [],
    ].flat();
    for (const end of ends) {
      const found = exactSettings(
        adjusterList,
        leftOver,
        adjusterList.map((_, j) => (j === i ? end : null)),
      );
      if (found !== null) starts.push(within(found.settings));
    }
  });
  return starts;
}

/** A shim pack or a cam has fewer; a step typed far too small must not make the walk endless. */
const MOST_STEPS = 1000;

/** Walks the grid of steps from the best corner of the cell around `start` to where no neighbor leaves less over. */
function descend(
  adjusterList: readonly Adjuster[],
  leftOver: LeftOver,
  start: readonly number[],
): readonly number[] {
  if (adjusterList.every(({ step }) => step === null)) return start;
  let best = leastOf(leftOver, around(adjusterList, start, [0, 1]));
  for (let step = 0; step < MOST_STEPS; step++) {
    const next = leastOf(leftOver, around(adjusterList, best.settings, [-1, 0, 1]));
    if (!(next.cost < best.cost)) break;
    best = next;
  }
  return best.settings;
}

/** Settings some steps up from the one at or below, adjuster by adjuster, kept in range. */
function around(
  adjusterList: readonly Adjuster[],
  at: readonly number[],
  steps: readonly number[],
): number[][] {
  return adjusterList.reduce<number[][]>(
    (found, adjuster, i) =>
      found.flatMap((before) => steps.map((step) => [...before, stepped(adjuster, at[i]!, step)])),
    [[]],
  );
}

function stepped(adjuster: Adjuster, value: number, steps: number): number {
  const { step } = adjuster;
  if (step === null) return value;
  const at = Math.floor(value / step + 1e-9) + steps;
  // Whole steps within the range, unless none is.
  const [low, high] = [Math.ceil(adjuster.least / step - 1e-9), Math.floor(adjuster.most / step + 1e-9)];
  return low > high ? clamped(adjuster, value) : Math.min(Math.max(at, low), high) * step;
}

function clamped({ least, most }: Adjuster, value: number): number {
  return Math.min(Math.max(value, least), most);
}

function leastOf(leftOver: LeftOver, candidates: readonly (readonly number[])[]) {
  const [first, ...rest] = candidates.map((settings) => ({ settings, cost: costOf(leftOver, settings) }));
  if (!first) throw new TypeError("realSettings: no candidates");
  return rest.reduce((least, next) => (next.cost < least.cost ? next : least), first);
}
