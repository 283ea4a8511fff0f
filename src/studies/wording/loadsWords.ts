import type { LengthUnit, Setup } from "../../setup/types/types.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { MPA_PER_PSI, quantityInUnits } from "../../units/quantity.ts";
import { BOUND_TOLERANCE } from "../loads/boundForces.ts";
import type { ForceName } from "../loads/caseAt.ts";
import type { Governing, LoadsReport } from "../loads/loadsReport.ts";
import type { Deflection, StrengthOf, Stress } from "../loads/strengthOf.ts";
import { FINEST_STEER, FINEST_TRAVEL, type WorstForce } from "../loads/worstPoses.ts";
import { angleText, lengthText, withMinus } from "./lengths.ts";

/** What a force is called. */
export const FORCE_WORDS: Readonly<Record<ForceName, string>> = {
  lowerBallJoint: "Lower ball joint",
  upperBallJoint: "Upper ball joint",
  tieRod: "Tie rod",
  spring: "Spring",
  bumpStop: "Bump stop",
};

const JOINT_WORDS: Readonly<Record<string, string>> = {
  lowerBallJoint: "lower ball joint",
  upperBallJoint: "upper ball joint",
  tieRodOuter: "outer tie rod end",
  pinRoot: "pin root",
  hubFace: "hub face",
};

/** A force in whole pounds or tens of newtons, without its unit: `1,240`. @param newtons */
export function forceNumber(newtons: number, units: LengthUnit, way: "nearest" | "up" = "nearest"): string {
  const step = units === "in" ? 1 : 10;
  const steps = quantityInUnits(newtons, "load", units) / step;
  const rounded = (way === "up" ? Math.ceil(steps) : Math.round(steps)) * step + 0;
  return withMinus(rounded.toLocaleString("en-US"));
}

/** A force with its unit: `1,240 lb`. @param newtons */
export function forceText(newtons: number, units: LengthUnit): string {
  return `${forceNumber(newtons, units)} ${units === "in" ? "lb" : "N"}`;
}

/** A stress as shops speak of it: `61.2 ksi`, `422 MPa`. */
function stressText(mpa: number, units: LengthUnit): string {
  return units === "in" ? `${(mpa / MPA_PER_PSI / 1000).toFixed(1)} ksi` : `${mpa.toFixed(0)} MPa`;
}

/** A share of yield in whole percent, never told smaller than it is: `62%`, `under 1%`. */
function shareText(share: number): string {
  if (share > 0 && share < 0.01) return "under 1%";
  return `${Math.ceil(100 * share - 1e-6)}%`;
}

/** A stress as every table tells it: where, its share of yield, how much, as if nothing raised it, and of what material. */
export interface StressCells {
  readonly place: string;
  readonly share: string;
  readonly stress: string;
  readonly plain: string;
  readonly material: string;
}

export function stressCells(stress: Stress, format: LengthFormat): StressCells {
  return {
    place: `${stressPart(stress)}, ${stressPlace(stress, format)}`,
    share: shareText(stress.shareOfYield),
    stress: stressText(stress.vonMises, format.units),
    plain: stressText(stress.nominal, format.units),
    material: stress.material,
  };
}

/** Which part of the knuckle a stress is in: `pin`, `member “upper post”`. */
function stressPart({ kind, member }: Stress): string {
  switch (kind) {
    case "pin":
      return "pin";
    case "member":
      return `member “${member}”`;
    case "weld":
      return `weld of “${member}”`;
    case "stud":
      return `stud of the ${jointWords(member)}`;
    case "rodEnd":
      return `rod end at the ${jointWords(member)}`;
  }
}

/** Where in it: `step at 4 1/2 in`, `at the joint “pin seat”`. */
function stressPlace({ kind, at, place }: Stress, format: LengthFormat): string {
  if (kind === "weld") return at === "from" ? "at its start" : "at its end";
  if (kind === "stud" || kind === "rodEnd") return String(at);
  if (kind === "pin") {
    const along = typeof at === "number" ? ` at ${lengthText(at, format)}` : ` at ${jointPlace(at)}`;
    return `${PIN_PLACES[place ?? "inside the knuckle"]}${along}`;
  }
  return typeof at === "number" ? `${Math.round(100 * at)}% along it` : `at ${jointPlace(at)}`;
}

const PIN_PLACES: Readonly<Record<NonNullable<Stress["place"]>, string>> = {
  root: "root",
  step: "step",
  "inner bearing": "inner bearing",
  "outer bearing": "outer bearing",
  "inside the knuckle": "inside the knuckle",
};

export function jointWords(name: string): string {
  return JOINT_WORDS[name] ?? `“${name}”`;
}

/** The same where it stands alone, in a cell or a file's name. */
export function bareJointWords(name: string): string {
  return JOINT_WORDS[name] ?? name;
}

function jointPlace(name: string): string {
  return JOINT_WORDS[name] ?? `the joint “${name}”`;
}

/** When a case stands where it is told of: `left side, travel 3 1/4 in, 100% of left lock`. */
export function casePoseWords(
  { side, travel, steer }: Pick<Governing, "side" | "travel" | "steer">,
  format: LengthFormat,
): string {
  return `${side} side, travel ${lengthText(travel, format)}, ${steerWords(steer)}`;
}

/** `straight ahead`, `50% of right lock`. */
function steerWords(steer: number): string {
  if (Math.abs(steer) < 0.005) return "straight ahead";
  return `${Math.round(100 * Math.abs(steer))}% of ${steer > 0 ? "left" : "right"} lock`;
}

/** What governs, in one sentence; null = nothing has a strength to compare. Never a verdict. */
export function governsSentence(
  { governs, isAtPose }: LoadsReport,
  setup: Setup,
  format: LengthFormat,
): string | null {
  if (governs === null) return null;
  const { units } = setup;
  const raised = governs.vonMises > governs.nominal * (1 + 1e-9) ? ", raised by its shoulder" : "";
  const of = `${stressText(governs.vonMises, units)}${raised}, ${shareText(governs.shareOfYield)} of the yield of ${governs.material}`;
  const looked = isAtPose ? "" : ", the largest found";
  return `What governs: the ${stressPart(governs)}, ${stressPlace(governs, format)}: ${of}. Case “${governs.case}”, ${casePoseWords(governs, format)}${looked}.`;
}

/** How far the hub face goes and what camber does: `0.021 in, camber +0.08°`. */
export function deflectionText({ hubFace, camber }: Deflection, units: LengthUnit): string {
  const signed = `${camber > 0 ? "+" : ""}${angleText(camber, 2)}`;
  return `${fineLength(hubFace, units)}, camber ${signed}`;
}

/** A length of the size parts give by, to a thousandth of an inch or a hundredth of a millimeter. */
function fineLength(mm: number, units: LengthUnit): string {
  return formatLength(mm, { units, fraction: "decimal", decimals: units === "in" ? 3 : 2 });
}

/** Why members and deflection are not worked out; null = they are, or there is no build. */
export function noFrameSentence(why: StrengthOf["noFrame"]): string | null {
  const not = "Members, welds and deflection are not worked out";
  if (why !== null && typeof why !== "string")
    return `${not}: no member meets ${why.map(jointWords).join(", ")}.`;
  switch (why) {
    case null:
      return null;
    case "no pin":
      return `${not}, nor is the pin: build.pin is not given.`;
    case "no bearings":
      return `${not}, nor is the pin: build.pin.bearings is not given.`;
    case "no members":
      return `${not}: build.members is not given.`;
  }
}

/** What no pose passes of a force: `4,310`; `not proven`. */
export function boundNumber({ bound }: Pick<WorstForce, "bound">, units: LengthUnit): string {
  return bound === null ? "not proven" : forceNumber(bound, units, "up");
}

/** What is proven of the forces over all poses. */
function provenWords(worst: LoadsReport["worst"]): string {
  const percent = `${100 * BOUND_TOLERANCE}%`;
  const off = worst.filter(({ isNear }) => !isNear).length;
  const near = `within ${percent} of the largest found, or of the load where that is more`;
  const but =
    off === 0
      ? ""
      : `, but for ${off} of ${worst.length}, at a dead center, at the end of reach or for want of time`;
  return `For each force a size is proven that no pose of all travel and both locks passes, ${near}${but}. For shares of yield and deflections the largest found is given, which is not a bound`;
}

/** How the answer was come by, whatever it is. */
export function howLoadsSentence(
  { grid, worst }: Pick<LoadsReport, "grid" | "worst">,
  units: LengthUnit,
): string {
  const looked =
    grid === null
      ? "Exact at this pose"
      : `Each case is given at the largest found: the worst of ${grid.travels} heights by ${grid.steers} steering inputs, followed from there to ${fineLength(FINEST_TRAVEL, units)} of travel and ${FINEST_STEER * 100}% of lock. ${provenWords(worst)}`;
  return `${looked}. Rigid arms without weight, joints without friction, loads standing still; multiples are of the corner's weight, less the unsprung weight times the multiple up. Shares are of the published yield, away from welds; fatigue, buckling and heat are not looked at.`;
}

/** What the bar beside the arrows says: `arrow this long = 1,000 lb, seen square on`. @param force in the unit people read */
export function loadScaleText(force: number, units: LengthUnit): string {
  return `arrow this long = ${force.toLocaleString("en-US")} ${units === "in" ? "lb" : "N"}, seen square on`;
}
