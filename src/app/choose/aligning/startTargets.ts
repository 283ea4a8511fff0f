import type { LengthUnit, Setup } from "../../../setup/types/types.ts";
import type { TruckAlignment } from "../../../studies/alignment/alignSide.ts";
import { degFromRad } from "../../../units/angle.ts";

/** Targets to start from, as the file holds them: what it reads as bolted on, to the nearest quarter of a degree. */
export function startTargets({ left }: TruckAlignment, { stances }: Setup): object {
  const quarter = (rad: number) => Math.round(degFromRad(rad) * 4) / 4 + 0;
  const standing = stances.find(({ travel }) => travel === 0);
  return {
    ...(standing && { stance: standing.name }),
    camber: quarter(left.asBolted.camber),
    caster: quarter(left.asBolted.caster),
  };
}

/** Shim stacks to start from, as the file holds them: about what many trucks have (common practice, no source). */
export function startShims(units: LengthUnit): object {
  const stack = units === "in" ? "1/4" : 6;
  return { kind: "shims", front: stack, rear: stack, most: units === "in" ? "3/4" : 20 };
}
