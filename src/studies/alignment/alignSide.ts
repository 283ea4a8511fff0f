import type { WheelTargets } from "../../setup/types.ts";
import type { FrontEnd, Side } from "../../suspension/frontEnd.ts";
import type { FrontEndInput } from "../../suspension/inputs.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import { type CasterSweep, casterSweep } from "./casterSweep.ts";
import { adjustedInput, type Knob, knobsOf } from "./knobs.ts";
import { realSettings } from "./realSettings.ts";
import { type Sensitivity, sensitivitiesOf } from "./sensitivities.ts";
import { exactSettings, type LeftOver } from "./settings.ts";
import type { SideJob } from "./sideJob.ts";
import { straightAhead, withToe } from "./straightAhead.ts";

/** What a shop reads on one wheel, straight ahead at the stance. Radians. */
export interface WheelReading {
  readonly camber: number;
  readonly caster: number;
  readonly toe: number;
  readonly kingpinInclination: number;
  /** null = a lock stops the wheel short of 20°. */
  readonly casterSweep: CasterSweep | null;
}

/** One thing that is set, mm. */
export interface KnobSetting extends Knob {
  /** What it is to be set to: within range and in whole steps. */
  readonly setting: number;
  /** What would meet the targets exactly, range and steps not looked at; null = nothing does, or nothing was asked. */
  readonly exact: number | null;
}

/** How one wheel is brought to its targets. mm and radians. */
export interface SideAlignment {
  readonly side: Side;
  readonly targets: WheelTargets;
  readonly settings: readonly KnobSetting[];
  /** The targets can be met within every range, but for what the steps leave over. */
  readonly reached: boolean;
  readonly asBolted: WheelReading;
  readonly aligned: WheelReading;
  /** aligned − target; null = not asked for. */
  readonly leftOver: { readonly camber: number | null; readonly caster: number | null; readonly toe: number };
  readonly tieRod: { readonly asBolted: number; readonly aligned: number };
  readonly sensitivities: readonly Sensitivity[];
  /** The truck's measures with this wheel aligned; toe is that at travel 0. */
  readonly input: FrontEndInput;
}

/**
 * Solves one wheel: settings that meet camber and caster exactly, then the nearest that can be made, then the tie rod
 * for the toe. Every reading is that of the truck assembled anew with the settings. @returns null where the stance is
 * out of reach as bolted on, or the wanted toe with it.
 */
export function alignSide(job: SideJob): SideAlignment | null {
  const { frontEnd, adjusters, side, travel, targets } = job;
  const knobs = knobsOf(adjusters);
  const inputAt = (settings: readonly number[]) =>
    adjusters === null ? frontEnd.input : adjustedInput(frontEnd.input, adjusters, settings);
  const frontEndAt = (settings: readonly number[]) => {
    const input = inputAt(settings);
    return input && withToe(input, side, travel, targets.toe);
  };
  const leftOver = remembered((settings) => {
    const set = frontEndAt(settings);
    const read = set && straightAhead(set[side], side, travel);
    return read && (["camber", "caster"] as const).flatMap((key) => excess(read[key], targets[key]) ?? []);
  });
  const asBoltedAt = knobs.map(({ asBolted }) => asBolted);
  const isAsked = targets.camber !== null || targets.caster !== null;
  const exact = isAsked ? exactSettings(knobs, leftOver, []) : null;
  const real = isAsked
    ? realSettings(knobs, leftOver, exact?.settings ?? null)
    : { settings: asBoltedAt, inRange: true };
  const aligned = frontEndAt(real.settings);
  const before = readingOf(frontEnd, side, travel);
  const after = aligned && readingOf(aligned, side, travel);
  if (aligned === null || after === null || before === null) return null;
  return {
    side,
    targets,
    settings: knobs.map((knob, i) => ({
      ...knob,
      setting: real.settings[i]!,
      exact: exact?.meets ? exact.settings[i]! : null,
    })),
    reached: !isAsked || (exact?.meets === true && real.inRange),
    asBolted: before,
    aligned: after,
    leftOver: {
      camber: excess(after.camber, targets.camber),
      caster: excess(after.caster, targets.caster),
      toe: after.toe - targets.toe,
    },
    tieRod: {
      asBolted: frontEnd[side].row[SIDE.tieRodLength]!,
      aligned: aligned[side].row[SIDE.tieRodLength]!,
    },
    sensitivities: sensitivitiesOf(job, real.settings),
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

function excess(value: number, target: number | null): number | null {
  return target === null ? null : value - target;
}

function readingOf(frontEnd: FrontEnd, side: Side, travel: number): WheelReading | null {
  const read = straightAhead(frontEnd[side], side, travel);
  if (read === null) return null;
  const { camber, caster, toe, kingpinInclination } = read;
  return { camber, caster, toe, kingpinInclination, casterSweep: casterSweep(frontEnd, side, travel) };
}
