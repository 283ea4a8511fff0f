import type { AdjustersSetup, AlignedStanding, Setup } from "../../setup/types/types.ts";
import { joinedModel, type Model, type ModelResult, modelOf } from "../model/model.ts";
import type { BothSides } from "./bothSides.ts";
import type { SideSettings } from "./setSide.ts";

/**
 * The setup with one wheel's alignment put on both: pivots moved, toe set, and the adjusters as they then stand, so
 * that aligning it again changes nothing.
 */
function alignedSetup(setup: Setup, { input, settings }: SideSettings, standing: AlignedStanding): Setup {
  const { upperArm, lowerArm, toe } = input;
  return {
    ...setup,
    truck: { ...setup.truck, upperArm, lowerArm },
    alignment: { ...setup.alignment, toe, standing },
    adjusters: setup.adjusters && asSet(setup.adjusters, settings),
  };
}

/**
 * The truck as aligned; the model handed in is the truck as bolted on. Where left and right are set differently, each
 * side is that of its own setup, and `setup` and `frontEnd.input` of the result tell of the left one, with the right
 * one's arms in `setup.alignment.standing`. @param file the file's name for the issues
 */
export function alignedModel(model: Model, alignment: BothSides<SideSettings>, file: string): ModelResult {
  const { left, right, reached } = alignment;
  const { upperArm, lowerArm } = right.input;
  const alike = isAlike(left, right);
  const standing = { reached, rightArms: alike ? null : { upperArm, lowerArm } };
  const leftModel = modelOf(alignedSetup(model.setup, left, standing), file, model);
  if (!leftModel.ok || alike) return leftModel;
  const rightModel = modelOf(alignedSetup(model.setup, right, standing), file, model);
  if (!rightModel.ok) return rightModel;
  return { ok: true, value: joinedModel(leftModel.value, rightModel.value) };
}

/** rad. Toe at travel 0 closer than this is the same toe. */
const SAME_TOE = 1e-11;

function isAlike(left: SideSettings, right: SideSettings): boolean {
  return (
    left.settings.every(({ setting }, i) => setting === right.settings[i]!.setting) &&
    Math.abs(left.input.toe - right.input.toe) < SAME_TOE
  );
}

function asSet(adjusters: AdjustersSetup, settings: SideSettings["settings"]): AdjustersSetup {
  const [first, second = first] = settings.map(({ setting }) => setting);
  if (adjusters.kind !== "adjustableUpperArm") return { ...adjusters, front: first!, rear: second! };
  // Legs are told from where they stand; the one with less room left keeps both within it.
  const [low, high] = [Math.min(first!, second!), Math.max(first!, second!)];
  return { ...adjusters, shorter: adjusters.shorter + low, longer: adjusters.longer - high };
}
