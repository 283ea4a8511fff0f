import type { KnuckleSetup, Setup, SetupIssue } from "../../setup/types/types.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { onTieRod } from "../alignment/onTieRod.ts";
import { type BumpSteer, bumpSteer } from "../geometry/bumpSteer.ts";
import { followedRange } from "../geometry/geometryReport.ts";
import { joinedModel } from "../model/joinedModel.ts";
import { type Model, modelOf } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import { type CheckReport, checkClearance } from "../reports/check.ts";
import { type ShimAnswer, shimsFor } from "./shimsFor.ts";

/** One wheel at travel 0, straight ahead, its toe set as the setup says. mm and radians. */
export interface WheelNumbers {
  readonly camber: number;
  readonly caster: number;
  readonly kingpinInclination: number;
  readonly scrubRadius: number;
  /** Center plane to contact patch. */
  readonly halfTrack: number;
  readonly tieRod: number;
  /** null where the wheel cannot follow the whole travel. */
  readonly bumpSteer: BumpSteer | null;
}

/** A truck's numbers that a knuckle decides. */
export interface TruckNumbers {
  readonly left: WheelNumbers;
  readonly right: WheelNumbers;
  /** Between the contact patches. */
  readonly track: number;
  /** Certified, over all travel and both locks. */
  readonly check: CheckReport;
}

/** What one knuckle's errors do until they are mended. mm and radians. */
export interface WheelEffect {
  /** Toe with the tie rods as the ordered knuckle has them, + = in: what is left to be set; null = out of their reach. */
  readonly toeAsBolted: number | null;
  /** What brings it back: + = longer. */
  readonly tieRodChange: number;
  readonly shims: ShimAnswer;
}

/** The truck on the knuckles as ordered and as built. */
export interface AsBuiltTruck {
  /** Wanted, per wheel, + = in. */
  readonly toe: number;
  readonly asOrdered: TruckNumbers;
  readonly asBuilt: TruckNumbers;
  readonly effects: Readonly<Record<Side, WheelEffect>>;
}

export type AsBuiltTruckResult =
  | ({ readonly ok: true } & AsBuiltTruck)
  /** The knuckle of a side does not go on this truck, or its wheels do not stand. */
  | { readonly ok: false; readonly side: Side; readonly issues: readonly SetupIssue[] };

/** A truck on knuckles of its own a side. */
export type KnucklesModel =
  | {
      readonly ok: true;
      /** `setup` tells of the left one. */
      readonly model: Model;
      /** The truck with the knuckle of that side on both. */
      readonly sides: Readonly<Record<Side, Model>>;
    }
  | { readonly ok: false; readonly side: Side; readonly issues: readonly SetupIssue[] };

/** Puts knuckles on a truck as bolted on. @param file the file's name for the issues */
export function modelOnKnuckles(
  setup: Setup,
  { left, right }: Readonly<Record<Side, KnuckleSetup>>,
  file: string,
): KnucklesModel {
  const ofLeft = modelOf({ ...setup, knuckle: left }, file);
  if (!ofLeft.ok) return { ok: false, side: "left", issues: ofLeft.issues };
  if (isSameKnuckle(left, right)) {
    const model = ofLeft.value;
    return { ok: true, model, sides: { left: model, right: model } };
  }
  const ofRight = modelOf({ ...setup, knuckle: right }, file);
  if (!ofRight.ok) return { ok: false, side: "right", issues: ofRight.issues };
  const sides = { left: ofLeft.value, right: ofRight.value };
  return { ok: true, model: joinedModel(sides.left, sides.right), sides };
}

/**
 * What the knuckles as built make of the truck. @param bolted on the knuckle as ordered, as bolted on
 * @param knuckles as built; @param file the file's name for the issues
 */
export function asBuiltTruck(
  bolted: Model,
  knuckles: Readonly<Record<Side, KnuckleSetup>>,
  file: string,
  budget: Budget,
): AsBuiltTruckResult {
  const { setup } = bolted;
  const built = modelOnKnuckles(setup, knuckles, file);
  if (!built.ok) return built;
  const { model, sides } = built;
  const asOrdered = numbersOf(bolted, budget.share(2));
  const asBuilt = numbersOf(model, budget.share(1));
  const effectOf = (side: Side): WheelEffect => ({
    toeAsBolted: onTieRod(sides[side].frontEnd, side, 0, asOrdered[side].tieRod)?.toe ?? null,
    tieRodChange: asBuilt[side].tieRod - asOrdered[side].tieRod,
    shims: shimsFor(sides[side], side, asOrdered[side]),
  });
  return {
    ok: true,
    toe: setup.alignment.toe,
    asOrdered,
    asBuilt,
    effects: { left: effectOf("left"), right: effectOf("right") },
  };
}

function numbersOf(model: Model, budget: Budget): TruckNumbers {
  const left = wheelNumbers(model, "left");
  const right = wheelNumbers(model, "right");
  return {
    left,
    right,
    track: left.halfTrack + right.halfTrack,
    check: checkClearance(model, { budget }),
  };
}

function wheelNumbers(model: Model, side: Side): WheelNumbers {
  const { frontEnd } = model;
  const pose = solvePose(frontEnd, 0, 0);
  if (!pose.ok) throw new TypeError("asBuiltTruck: an assembled truck stands at rest");
  const { camber, caster, kingpinInclination, scrubRadius, contactPatch } = pose[side];
  return {
    camber,
    caster,
    kingpinInclination,
    scrubRadius,
    halfTrack: Math.abs(contactPatch[1]),
    tieRod: frontEnd[side].row[SIDE.tieRodLength]!,
    bumpSteer: bumpSteer(frontEnd, side, followedRange(model)),
  };
}

function isSameKnuckle(a: KnuckleSetup, b: KnuckleSetup): boolean {
  return (
    a.span === b.span &&
    a.pinHeight === b.pinHeight &&
    a.pinLead === b.pinLead &&
    a.pinAngle === b.pinAngle &&
    a.hubFace === b.hubFace &&
    a.steeringArm.every((value, i) => value === b.steeringArm[i])
  );
}
