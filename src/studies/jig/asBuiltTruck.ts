import type { KnuckleSetup, Setup, SetupIssue } from "../../setup/types/types.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { alignedFrom, modelAsked } from "../alignment/modelAsked.ts";
import { followedRange } from "../geometry/geometryReport.ts";
import { joinedModel, type Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import { type CheckReport, checkClearance } from "../reports/check.ts";
import type { FittedKnuckle } from "./fitKnuckle.ts";
import { type ShimAnswer, shimsFor } from "./shimsFor.ts";
import { gapWithin, type TruckWithin, trackWithin } from "./truckWithin.ts";
import { toeOnRod, type WheelNumbers, wheelNumbers } from "./wheelNumbers.ts";
import { type WheelWithin, wheelWithin } from "./wheelWithin.ts";

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
  /** Of its numbers as built, by what the readings tell; null = that side was not read. */
  readonly within: WheelWithin | null;
}

/** The truck on the knuckles as ordered and as built. */
export interface AsBuiltTruck {
  /** Wanted, per wheel, + = in. */
  readonly toe: number;
  readonly asOrdered: TruckNumbers;
  readonly asBuilt: TruckNumbers;
  readonly effects: Readonly<Record<Side, WheelEffect>>;
  /** Of the track and the worst gap as built. */
  readonly within: TruckWithin;
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

/** Puts knuckles on a truck. @param file the file's name for the issues; @param isAligned to the setup's targets; default as bolted on */
export function modelOnKnuckles(
  setup: Setup,
  { left, right }: Readonly<Record<Side, KnuckleSetup>>,
  file: string,
  isAligned = false,
): KnucklesModel {
  const made = (knuckle: KnuckleSetup) => modelAsked({ setup: { ...setup, knuckle }, file, isAligned });
  const ofLeft = made(left);
  if (!ofLeft.ok) return { ok: false, side: "left", issues: ofLeft.issues };
  if (isSameKnuckle(left, right)) {
    const model = ofLeft.value;
    return { ok: true, model, sides: { left: model, right: model } };
  }
  const ofRight = made(right);
  if (!ofRight.ok) return { ok: false, side: "right", issues: ofRight.issues };
  const sides = { left: ofLeft.value, right: ofRight.value };
  return { ok: true, model: joinedModel(sides.left, sides.right), sides };
}

/** What is put on the truck, and how. */
export interface AsBuiltAsk {
  readonly knuckles: Readonly<Record<Side, KnuckleSetup>>;
  /** What the readings tell of each; null = that side was not read, and is as ordered. */
  readonly fits: Readonly<Record<Side, FittedKnuckle | null>>;
  /** The file's name for the issues. */
  readonly file: string;
  /** The truck on either knuckle aligned to the setup's targets first; default as bolted on. */
  readonly isAligned?: boolean;
}

/** What the knuckles as built make of the truck. @param bolted on the knuckle as ordered, as bolted on */
export function asBuiltTruck(
  bolted: Model,
  { knuckles, fits, file, isAligned = false }: AsBuiltAsk,
  budget: Budget,
): AsBuiltTruckResult {
  const { setup } = bolted;
  const built = modelOnKnuckles(setup, knuckles, file, isAligned);
  const asBolted = isAligned ? modelOnKnuckles(setup, knuckles, file) : built;
  if (!built.ok) return built;
  if (!asBolted.ok) return asBolted;
  const { model, sides } = built;
  const ordered = isAligned ? (alignedFrom(bolted, file) ?? bolted) : bolted;
  const asOrdered = numbersOf(ordered, budget.share(2));
  const asBuilt = numbersOf(model, budget.share(1));
  const effectOf = (side: Side): WheelEffect => {
    const { frontEnd } = sides[side];
    const { tieRod } = asOrdered[side];
    const fit = fits[side];
    const within = fit && wheelWithin(frontEnd, side, fit, followedRange(model), tieRod);
    const shims = shimsFor(asBolted.sides[side], side, asOrdered[side]);
    const isTold = shims.kind !== "none" && !isAligned && isWithin(asBuilt[side], asOrdered[side], within);
    return {
      toeAsBolted: toeOnRod(frontEnd, side, tieRod),
      tieRodChange: asBuilt[side].tieRod - tieRod,
      shims: isTold ? { kind: "withinReadings" } : shims,
      within,
    };
  };
  const effects = { left: effectOf("left"), right: effectOf("right") };
  const onTruck = (side: Side) => {
    const fit = fits[side];
    return fit && { setup: { ...setup, knuckle: knuckles[side] }, file, isAligned, fit };
  };
  return {
    ok: true,
    toe: setup.alignment.toe,
    asOrdered,
    asBuilt,
    effects,
    within: {
      track: trackWithin({ left: effects.left.within, right: effects.right.within }),
      worstGap: gapWithin({ left: onTruck("left"), right: onTruck("right") }, asBuilt.check),
    },
  };
}

function numbersOf(model: Model, budget: Budget): TruckNumbers {
  const range = followedRange(model);
  const left = wheelNumbers(model.frontEnd, "left", range);
  const right = wheelNumbers(model.frontEnd, "right", range);
  return {
    left,
    right,
    track: left.halfTrack + right.halfTrack,
    check: checkClearance(model, { budget }),
  };
}

/** Standard deviations within which what is off may be the readings alone. */
const TOLD = 2;

/** Whether camber and caster are as ordered as far as the readings can tell. */
function isWithin(built: WheelNumbers, ordered: WheelNumbers, within: WheelWithin | null): boolean {
  return (["camber", "caster"] as const).every((key) => {
    const sigma = within?.[key];
    return sigma != null && Math.abs(built[key] - ordered[key]) <= TOLD * sigma;
  });
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
