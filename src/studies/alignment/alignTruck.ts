import type { Setup } from "../../setup/types.ts";
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
  /** Both wheels reach their targets but for what steps leave over. */
  readonly reached: boolean;
}

/** Why there is no alignment: nothing was asked for, or the stance (travel in mm) cannot be had with that toe. */
export type AlignmentResult =
  | { readonly ok: true; readonly alignment: TruckAlignment }
  | { readonly ok: false; readonly why: "no targets" | "out of reach"; readonly travel: number };

/** Solves both wheels for the setup's `alignment.targets`. */
export function alignTruck(model: Model): AlignmentResult {
  const { setup, frontEnd } = model;
  const { targets } = setup.alignment;
  if (targets === null) return { ok: false, why: "no targets", travel: 0 };
  const travel = setup.stances.find(({ name }) => name === targets.stance)?.travel ?? 0;
  const job = { frontEnd, adjusters: setup.adjusters, travel, per: sensitivityLength(setup) };
  const asBolted = solvePose(frontEnd, travel, 0);
  const left = asBolted.ok ? alignSide({ ...job, side: "left", targets: targets.left }) : null;
  const right = asBolted.ok ? alignSide({ ...job, side: "right", targets: targets.right }) : null;
  if (left === null || right === null) return { ok: false, why: "out of reach", travel };
  const { stance } = targets;
  return { ok: true, alignment: { stance, travel, left, right, reached: left.reached && right.reached } };
}

/** A shop that works in inches thinks in thirty-seconds of shim, one in metric in millimeters. */
function sensitivityLength({ units }: Setup): number {
  return units === "in" ? mmFromInches(1 / 32) : 1;
}
