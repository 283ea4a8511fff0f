import { scale } from "../../geometry/vec.ts";
import type { AdjustersSetup } from "../../setup/types/types.ts";
import type { FrontEndInput } from "../../suspension/inputs.ts";
import { lengthenedArm, lowerArmAt, movedArm } from "./movedArm.ts";

/** One thing that can be set, mm: a stack, an eccentric's place, a leg's change of length. */
export interface Adjuster {
  readonly name: "front" | "rear" | "both legs";
  readonly asBolted: number;
  readonly least: number;
  readonly most: number;
  /** Settings are whole multiples of it; null = any. */
  readonly step: number | null;
}

/** What can be set on a truck besides its tie rods; none without adjusters. */
export function adjustersOf(adjusters: AdjustersSetup | null): readonly Adjuster[] {
  if (adjusters === null) return [];
  switch (adjusters.kind) {
    case "shims": {
      const { front, rear, least, most, step } = adjusters;
      const stack = { least, most, step };
      return [
        { name: "front", asBolted: front, ...stack },
        { name: "rear", asBolted: rear, ...stack },
      ];
    }
    case "eccentric": {
      const { front, rear, throw: reach } = adjusters;
      const cam = { least: -reach, most: reach, step: null };
      return [
        { name: "front", asBolted: front, ...cam },
        { name: "rear", asBolted: rear, ...cam },
      ];
    }
    case "adjustableUpperArm": {
      const { legs, shorter, longer, step } = adjusters;
      const leg = { asBolted: 0, least: -shorter, most: longer, step };
      if (legs === "together") return [{ name: "both legs", ...leg }];
      return [
        { name: "front", ...leg },
        { name: "rear", ...leg },
      ];
    }
  }
}

/**
 * The front end as it stands with other settings (mm, in the order of `adjustersOf`).
 * @returns null when an arm cannot be set so.
 */
export function adjustedInput(
  input: FrontEndInput,
  adjusters: AdjustersSetup,
  settings: readonly number[],
): FrontEndInput | null {
  const adjusterList = adjustersOf(adjusters);
  const change = (i: number) =>
    (settings[i] ?? settings[0]!) - (adjusterList[i] ?? adjusterList[0]!).asBolted;
  if (adjusters.kind === "adjustableUpperArm") {
    const upperArm = lengthenedArm(input.upperArm, change(0), change(1));
    return upperArm && { ...input, upperArm };
  }
  const { direction } = adjusters;
  const moves = { front: scale(direction, change(0)), rear: scale(direction, change(1)) };
  if (adjusters.kind === "shims" || adjusters.arm === "upper") {
    const upperArm = movedArm(input.upperArm, moves);
    return upperArm && { ...input, upperArm };
  }
  const moved = movedArm(input.lowerArm, moves);
  const lowerArm = moved && lowerArmAt(moved, input.lowerArm.ballJoint[2]);
  return lowerArm && { ...input, lowerArm };
}
