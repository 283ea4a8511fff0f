import { keyText } from "../../setup/types/keyPath.ts";
import type { OddsInput } from "./oddsInputs.ts";

/** A number, or a point of three, and what its uncertainty does to the odds. */
export interface Matter {
  /** Key of the number or the point. */
  readonly field: string;
  /** Share of what all numbers do together, 0 … 1, by the linear part of what each does. */
  readonly share: number;
  /** The odds were its uncertainty half as large. */
  readonly ifMeasuredAgain: number;
}

/** What was found of each draw: how far each number was off, and whether the truck clears. */
export interface FoundDraws {
  readonly inputs: readonly OddsInput[];
  /** Rows of one a draw, in standard deviations. */
  readonly deviations: readonly Float64Array[];
  readonly clears: readonly boolean[];
}

/**
 * What matters, most first. A number that is off by z standard deviations in draws that clear or not is told by the mean of z
 * times the verdict: for a gap that changes evenly with all numbers, its square is in proportion to the number's share of the
 * gap's variance. What so many draws at random would show of a number that does nothing is taken off. Odds with a
 * number known twice as well weigh the same draws by how much more often each would then come: 2·exp(−3z²/2).
 */
export function whatMatters({ inputs, deviations, clears }: FoundDraws): readonly Matter[] {
  const count = clears.length;
  const share = clears.filter(Boolean).length / count;
  const noise = (share * (1 - share)) / count;
  const effects = inputs.map((_, i) => {
    let sum = 0;
    for (let draw = 0; draw < count; draw++) sum += deviations[draw]![i]! * ((clears[draw] ? 1 : 0) - share);
    return Math.max(0, (sum / count) ** 2 - noise);
  });
  const whole = effects.reduce((sum, effect) => sum + effect, 0);
  const groups = new Map<string, number[]>();
  for (const [i, input] of inputs.entries()) {
    const key = measuredKey(input);
    groups.set(key, [...(groups.get(key) ?? []), i]);
  }
  return [...groups]
    .map(([field, of]): Matter => {
      const effect = of.reduce((sum, i) => sum + effects[i]!, 0);
      return {
        field,
        share: whole > 0 ? effect / whole : 0,
        ifMeasuredAgain: oddsOfHalved(of, deviations, clears),
      };
    })
    .sort((a, b) => b.share - a.share || (a.field < b.field ? -1 : 1));
}

/** Whoever measures a point again measures all of it. */
function measuredKey({ path, key }: OddsInput): string {
  return typeof path.at(-1) === "number" && path.length > 1 ? keyText(path.slice(0, -1)) : key;
}

function oddsOfHalved(
  of: readonly number[],
  deviations: readonly Float64Array[],
  clears: readonly boolean[],
): number {
  let all = 0;
  let clear = 0;
  for (let draw = 0; draw < clears.length; draw++) {
    let square = 0;
    for (const i of of) square += deviations[draw]![i]! ** 2;
    const weight = Math.exp(-1.5 * square);
    all += weight;
    if (clears[draw]) clear += weight;
  }
  return all > 0 ? clear / all : 0;
}
