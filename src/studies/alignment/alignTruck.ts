import type { Setup, WheelTargets } from "../../setup/types.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { mmFromInches } from "../../units/lengthUnits.ts";
import type { Model } from "../model.ts";
import { alignSide, type SideAlignment } from "./alignSide.ts";

/** A truck aligned at one stance. mm and radians. */
export interface TruckAlignment {
  /** Name of the stance; null = as measured, travel 0. */
  readonly stance: string | null;
  readonly travel: number;
  readonly left: SideAlignment;
  readonly right: SideAlignment;
  /** The setup has targets; without them both wheels are told as bolted on. */
  readonly asked: boolean;
  /** Both wheels reach their targets but for what steps leave over. */
  readonly reached: boolean;
}

/** `ok` false: the stance (travel in mm) cannot be had straight ahead, or not with that toe. */
export type AlignmentResult =
  | { readonly ok: true; readonly alignment: TruckAlignment }
  | { readonly ok: false; readonly travel: number };

/** Solves both wheels for the setup's `alignment.targets`; without targets the toe as bolted on is all that is asked. */
export function alignTruck(model: Model): AlignmentResult {
  const { setup, frontEnd } = model;
  const asIs: WheelTargets = { camber: null, caster: null, toe: setup.alignment.toe };
  const targets = setup.alignment.targets ?? { stance: null, left: asIs, right: asIs };
  const travel = setup.stances.find(({ name }) => name === targets.stance)?.travel ?? 0;
  const job = { frontEnd, adjusters: setup.adjusters, travel, per: sensitivityLength(setup) };
  const asBolted = solvePose(frontEnd, travel, 0);
  const left = asBolted.ok ? alignSide({ ...job, side: "left", targets: targets.left }) : null;
  const right = asBolted.ok ? alignSide({ ...job, side: "right", targets: targets.right }) : null;
  if (left === null || right === null) return { ok: false, travel };
  const { stance } = targets;
  const asked = setup.alignment.targets !== null;
  const reached = left.reached && right.reached;
  return { ok: true, alignment: { stance, travel, asked, reached, left, right } };
}

/** A shop that works in inches thinks in thirty-seconds of shim, one in metric in millimeters. */
function sensitivityLength({ units }: Setup): number {
  return units === "in" ? mmFromInches(1 / 32) : 1;
}
