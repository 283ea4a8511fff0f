import type { RollSetup } from "../../setup/types/floorTypes.ts";
import type { Model } from "../model/model.ts";
import { type RollAsked, type RollCase, RollCases } from "./rollCase.ts";

/** Roll and curb at one stance. */
export interface RollStance {
  readonly name: string;
  readonly travel: number;
  /** Left side up, right side up; then left wheel, right wheel over the curb, where one is given. */
  readonly cases: readonly RollCase[];
}

/** What the setup's roll asks of the wheels at every stance. */
export interface RollCoverage {
  readonly roll: RollSetup;
  readonly stances: readonly RollStance[];
  /** The travel `check` looks at, mm. */
  readonly range: { readonly droop: number; readonly bump: number };
  /** Every travel that roll and curb ask for and nothing stops lies within it. */
  readonly covered: boolean;
}

/**
 * What body roll of ± `most` and one wheel over the curb ask of the wheels at each stance (the measured height when the
 * setup names none), and whether `check` has it: since the body is held still, each wheel's gaps depend on its own
 * travel and the common steer alone, so every pair of travels within the setup's range is checked once each wheel is
 * checked over that range. Roll between 0 and `most` asks for travels between, at the same mean travel; roll and curb
 * are not added up. Limits are looked at straight ahead, where the wheels end; those passed there are followed back.
 * @param roll what to ask instead of the setup's block @returns null when neither is given
 */
export function rollCoverage(model: Model, roll: RollSetup | null = model.setup.roll): RollCoverage | null {
  if (roll === null) return null;
  const { setup } = model;
  const looked = new RollCases(model);
  const named = setup.stances.length > 0 ? setup.stances : [{ name: "as measured", travel: 0 }];
  const stances = named.map(({ name, travel }) => ({
    name,
    travel,
    cases: askedOf(roll).map((asked) => looked.at(travel, asked)),
  }));
  const covered = stances.every(({ cases }) => cases.every(({ state }) => state !== "uncovered"));
  return { roll, stances, range: setup.travel, covered };
}

function askedOf({ most, curb }: RollSetup): RollAsked[] {
  return [
    { kind: "roll", roll: most },
    { kind: "roll", roll: -most },
    ...(curb === null
      ? []
      : (["left", "right"] as const).map((side) => ({ kind: "curb", side, lift: curb }) as const)),
  ];
}
