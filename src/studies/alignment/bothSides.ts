import type { Setup, WheelTargets } from "../../setup/types/types.ts";
import { mmFromInches } from "../../units/lengthUnits.ts";
import type { Model } from "../model/model.ts";
import type { SideSettings } from "./setSide.ts";
import type { SideJob } from "./straightAhead.ts";

/** Both wheels of a truck brought to the setup's targets at one stance. mm and radians. */
export interface BothSides<S extends SideSettings> {
  /** Name of the stance; null = as measured, travel 0. */
  readonly stance: string | null;
  readonly travel: number;
  readonly left: S;
  readonly right: S;
  /** The setup has targets; without them both wheels are told as bolted on. */
  readonly asked: boolean;
  /** Both wheels reach their targets but for what steps leave over. */
  readonly reached: boolean;
}

/** `ok` false: the stance (travel in mm) cannot be had straight ahead with that toe. */
export type BothSidesResult<S extends SideSettings> =
  | { readonly ok: true; readonly alignment: BothSides<S> }
  | { readonly ok: false; readonly travel: number };

/**
 * Has each wheel solved for the setup's `alignment.targets`; without targets the toe as bolted on is all that is asked.
 * @param ofSide solves one; not asked twice where both are the same question
 */
export function bothSides<S extends SideSettings>(
  model: Model,
  ofSide: (job: SideJob) => S | null,
): BothSidesResult<S> {
  const { setup, frontEnd } = model;
  const asIs: WheelTargets = { camber: null, caster: null, toe: setup.alignment.toe };
  const targets = setup.alignment.targets ?? { stance: null, left: asIs, right: asIs };
  const { stance } = targets;
  const travel = setup.stances.find(({ name }) => name === stance)?.travel ?? 0;
  const job = { frontEnd, adjusters: setup.adjusters, travel, per: sensitivityLength(setup) };
  const left = ofSide({ ...job, side: "left", targets: targets.left });
  // Mirror images with the same targets are set alike.
  const isTwin = model.mirrored && isSameTargets(targets.left, targets.right);
  const right = isTwin
    ? left && { ...left, side: "right" as const }
    : ofSide({ ...job, side: "right", targets: targets.right });
  if (left === null || right === null) return { ok: false, travel };
  const asked = setup.alignment.targets !== null;
  const reached = left.reached && right.reached;
  return { ok: true, alignment: { stance, travel, asked, reached, left, right } };
}

function isSameTargets(a: WheelTargets, b: WheelTargets): boolean {
  return a.camber === b.camber && a.caster === b.caster && a.toe === b.toe;
}

/** A shop that works in inches thinks in thirty-seconds of shim, one in metric in millimeters. */
function sensitivityLength({ units }: Setup): number {
  return units === "in" ? mmFromInches(1 / 32) : 1;
}
