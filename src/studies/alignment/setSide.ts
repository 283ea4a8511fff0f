import type { WheelTargets } from "../../setup/types/types.ts";
import type { FrontEnd, Side } from "../../suspension/frontEnd.ts";
import type { FrontEndInput } from "../../suspension/inputs.ts";
import { type Adjuster, adjustedInput, adjustersOf } from "./adjusters.ts";
import { realSettings } from "./realSettings.ts";
import { exactSettings, type LeftOver } from "./settings.ts";
import { type SideJob, straightAhead, withToe } from "./straightAhead.ts";

/** One thing that is set, mm. */
export interface AdjusterSetting extends Adjuster {
  /** What it is to be set to: within range and in whole steps. */
  readonly setting: number;
  /** What would meet the targets exactly, range and steps not looked at; null = nothing does, or nothing was asked. */
  readonly exact: number | null;
}

/** What one wheel is set to so that it meets its targets. */
export interface SideSettings {
  readonly side: Side;
  readonly targets: WheelTargets;
  readonly settings: readonly AdjusterSetting[];
  /** The targets can be met within every range, but for what the steps leave over. */
  readonly reached: boolean;
  /** The truck with this wheel aligned; toe of its input is that at travel 0. */
  readonly frontEnd: FrontEnd;
  readonly input: FrontEndInput;
}

/**
 * Solves one wheel: settings that meet camber and caster exactly, then the nearest that can be made, then the tie rod
 * for the toe. @returns null where the stance is out of reach with the wanted toe.
 */
export function setSide(job: SideJob): SideSettings | null {
  const { frontEnd, adjusters, side, travel, targets } = job;
  const adjusterList = adjustersOf(adjusters);
  const frontEndAt = (settings: readonly number[]) => {
    const input = adjusters === null ? frontEnd.input : adjustedInput(frontEnd.input, adjusters, settings);
    return input && withToe(input, side, travel, targets.toe);
  };
  const leftOver = remembered((settings) => {
    const set = frontEndAt(settings);
    const read = set && straightAhead(set[side], side, travel);
    if (!read) return null;
    return (["camber", "caster"] as const).flatMap((key) => {
      const target = targets[key];
      return target === null ? [] : [read[key] - target];
    });
  });
  const isAsked = targets.camber !== null || targets.caster !== null;
  const exact = isAsked ? exactSettings(adjusterList, leftOver, []) : null;
  const real = isAsked
    ? realSettings(adjusterList, leftOver, exact?.settings ?? null)
    : { settings: adjusterList.map(({ asBolted }) => asBolted), inRange: true };
  const aligned = frontEndAt(real.settings);
  if (aligned === null) return null;
  return {
    side,
    targets,
    settings: adjusterList.map((adjuster, i) => ({
      ...adjuster,
      setting: real.settings[i]!,
      exact: exact?.meets ? exact.settings[i]! : null,
    })),
    reached: !isAsked || (exact?.meets === true && real.inRange),
    frontEnd: aligned,
    input: aligned.input,
  };
}

/** Neighbors on the grid are asked for over and over, and each assembles a truck. */
function remembered(leftOver: LeftOver): LeftOver {
  const known = new Map<string, ReturnType<LeftOver>>();
  return (settings) => {
    const key = settings.join();
    const before = known.get(key);
    if (before !== undefined) return before;
    const found = leftOver(settings);
    known.set(key, found);
    return found;
  };
}
