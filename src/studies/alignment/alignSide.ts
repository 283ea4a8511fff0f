import type { FrontEnd, Side } from "../../suspension/frontEnd.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import type { Model } from "../model/model.ts";
import { type BothSides, type BothSidesResult, bothSides } from "./bothSides.ts";
import { type CasterSweep, casterSweep } from "./casterSweep.ts";
import { type Sensitivity, sensitivitiesOf } from "./sensitivities.ts";
import { type SideSettings, setSide } from "./setSide.ts";
import { type SideJob, straightAhead } from "./straightAhead.ts";

/** What a shop reads on one wheel, straight ahead at the stance. Radians. */
export interface WheelReading {
  readonly camber: number;
  readonly caster: number;
  readonly toe: number;
  readonly kingpinInclination: number;
  /** null = a lock stops the wheel short of 20°. */
  readonly casterSweep: CasterSweep | null;
}

/** How one wheel is brought to its targets, with what is read before and after. mm and radians. */
export interface SideAlignment extends SideSettings {
  readonly asBolted: WheelReading;
  readonly aligned: WheelReading;
  /** aligned − target; null = not asked for. */
  readonly leftOver: { readonly camber: number | null; readonly caster: number | null; readonly toe: number };
  readonly tieRod: { readonly asBolted: number; readonly aligned: number };
  readonly sensitivities: readonly Sensitivity[];
}

/**
 * Solves one wheel (`setSide`); every reading is that of the truck assembled anew with the settings.
 * @returns null where the stance is out of reach as bolted on, or the wanted toe with it.
 */
export function alignSide(job: SideJob): SideAlignment | null {
  const { frontEnd, side, travel } = job;
  const set = setSide(job);
  const before = readingOf(frontEnd, side, travel);
  const after = set && readingOf(set.frontEnd, side, travel);
  if (set === null || after === null || before === null) return null;
  const { targets, settings } = set;
  const excess = (key: "camber" | "caster") => {
    const target = targets[key];
    return target === null ? null : after[key] - target;
  };
  return {
    ...set,
    asBolted: before,
    aligned: after,
    leftOver: { camber: excess("camber"), caster: excess("caster"), toe: after.toe - targets.toe },
    tieRod: {
      asBolted: frontEnd[side].row[SIDE.tieRodLength]!,
      aligned: set.frontEnd[side].row[SIDE.tieRodLength]!,
    },
    sensitivities: sensitivitiesOf(
      job,
      settings.map(({ setting }) => setting),
    ),
  };
}

function readingOf(frontEnd: FrontEnd, side: Side, travel: number): WheelReading | null {
  const read = straightAhead(frontEnd[side], side, travel);
  if (read === null) return null;
  const { camber, caster, toe, kingpinInclination } = read;
  return { camber, caster, toe, kingpinInclination, casterSweep: casterSweep(frontEnd, side, travel) };
}

/** A truck aligned at one stance, with what is read and left over. mm and radians. */
export type TruckAlignment = BothSides<SideAlignment>;

export type AlignmentResult = BothSidesResult<SideAlignment>;

/** Solves both wheels for the setup's `alignment.targets`; without targets the toe as bolted on is all that is asked. */
export function alignTruck(model: Model): AlignmentResult {
  return bothSides(model, alignSide);
}
