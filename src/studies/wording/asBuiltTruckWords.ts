import { formatAngle } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { answerState, type Doubt, ofTheTruck } from "../doubts/doubt.ts";
import type { AsBuiltSide } from "../jig/asBuiltReport.ts";
import type { AsBuiltTruck, TruckNumbers } from "../jig/asBuiltTruck.ts";
import { toTheOrder } from "../jig/corrections.ts";
import type { BuiltKnuckle } from "../jig/jigReadings.ts";
import type { ShimAnswer } from "../jig/shimsFor.ts";
import type { Model } from "../model/model.ts";
import { settingWords } from "./alignSentence.ts";
import { answerSentence } from "./answerWords.ts";
import { DIMENSIONS, deviationText } from "./asBuiltWords.ts";
import { correctionWords } from "./correctionWords.ts";
import { gaugeFormat, jigOffText, jigText } from "./jigWords.ts";
import { amountWords, lengthText, shimFormat, withMinus } from "./lengths.ts";
import { verdictSentence } from "./verdictSentence.ts";

/** One number of the truck as ordered and as built. mm and radians. */
export interface TruckRow {
  readonly name: string;
  /** What a plus sign means. */
  readonly note?: string;
  readonly measure: "length" | "angle";
  readonly asOrdered: number | null;
  readonly asBuilt: number | null;
  /** One standard deviation of it as built; null = the readings do not tell, or that side was not read. */
  readonly within: number | null;
}

/** What a side's knuckle does to its wheel and to the truck. */
export function truckRows(truck: AsBuiltTruck, side: "left" | "right"): readonly TruckRow[] {
  const of = (numbers: TruckNumbers) => numbers[side];
  const [ordered, built] = [of(truck.asOrdered), of(truck.asBuilt)];
  const { toeAsBolted, tieRodChange, within } = truck.effects[side];
  const row = (
    name: string,
    measure: TruckRow["measure"],
    key: "camber" | "caster" | "kingpinInclination" | "scrubRadius" | "halfTrack",
    note?: string,
  ): TruckRow => ({
    name,
    measure,
    asOrdered: ordered[key],
    asBuilt: built[key],
    within: within?.[key] ?? null,
    ...(note === undefined ? {} : { note }),
  });
  return [
    row("Camber", "angle", "camber", "+ out at top"),
    row("Caster", "angle", "caster", "+ back at top"),
    row("Kingpin inclination", "angle", "kingpinInclination", "+ in at top"),
    {
      name: "Toe on the tie rod as ordered",
      note: "+ in, per wheel",
      measure: "angle",
      asOrdered: truck.toe,
      asBuilt: toeAsBolted,
      within: within?.toeAsBolted ?? null,
    },
    {
      name: "Tie rod to set the toe",
      note: "between its ends' centers",
      measure: "length",
      asOrdered: ordered.tieRod,
      asBuilt: ordered.tieRod + tieRodChange,
      within: within?.tieRod ?? null,
    },
    row("Half track", "length", "halfTrack"),
    row("Scrub radius", "length", "scrubRadius", "+ patch outboard"),
    {
      name: "Bump steer, most",
      note: "+ in, over all travel",
      measure: "angle",
      asOrdered: ordered.bumpSteer?.most.toeChange ?? null,
      asBuilt: built.bumpSteer?.most.toeChange ?? null,
      within: within?.bumpSteerMost ?? null,
    },
    {
      name: "Bump steer, root mean square",
      measure: "angle",
      asOrdered: ordered.bumpSteer?.rms ?? null,
      asBuilt: built.bumpSteer?.rms ?? null,
      within: within?.bumpSteerRms ?? null,
    },
  ];
}

/** What to do about the knuckles that were read. */
export function mendSentences(
  read: readonly AsBuiltSide[],
  { effects }: AsBuiltTruck,
  ordered: BuiltKnuckle,
  model: Model,
  format: LengthFormat,
): readonly string[] {
  const shims = read.map(({ side }) => effects[side].shims);
  return [
    ...read.flatMap((side, i) => sideMends(side, shims[i]!, ordered, model, format)),
    ...(shims.some(({ kind }) => kind === "set")
      ? ["Shims bring back camber and caster, not the hub face, the pin height or the steering arm."]
      : []),
  ];
}

/** Of one knuckle: shims where they do it, else which dimensions are off and by how much. */
function sideMends(
  { side, fit }: AsBuiltSide,
  shims: ShimAnswer,
  ordered: BuiltKnuckle,
  model: Model,
  format: LengthFormat,
): readonly string[] {
  const off = [...toTheOrder(fit, ordered)].sort(
    (a, b) => DIMENSIONS.indexOf(a.key) - DIMENSIONS.indexOf(b.key),
  );
  const words = correctionWords(off, format);
  const whole = `The rest stays off. To match the order in every dimension, which is more than its tolerances ask: ${words}.`;
  const cut = `cut and re-weld it, where a qualified welder and reviewer allow that at all, to match the order in every dimension: ${words}`;
  const only = off.length === 0 ? "the readings do not tell what to change" : cut;
  switch (shims.kind) {
    case "none":
      return [
        `The ${side} knuckle stands at the camber and caster as ordered: no shims.`,
        ...(off.length === 0 ? [] : [whole]),
      ];
    case "withinReadings":
      return [
        `The ${side} wheel’s camber and caster are as ordered within what the readings can tell: no shims.`,
        ...(off.length === 0 ? [] : [whole]),
      ];
    case "noAdjusters":
      return [
        `No adjusters are in the setup, so nothing can be shimmed: use the ${side} knuckle as it came out, or ${only}.`,
      ];
    case "outOfReach":
      return [`No shims bring the ${side} wheel back; ${only}.`];
    case "set": {
      const settings = shims.settings.map((one) => settingWords(one, model, shimFormat(model.setup)));
      const { camber, caster } = shims.leftOver;
      const left = `camber ${offAngle(camber)} and caster ${offAngle(caster)} from as ordered`;
      if (shims.reached) return [`Shim the ${side} side: ${settings.join(", ")}; that leaves ${left}.`];
      return [
        `Shims do not bring the ${side} side all the way: with ${settings.join(", ")}, ${left}; or ${only}.`,
      ];
    }
  }
}

/** What the errors do to track, in one sentence. */
export function trackSentence({ asOrdered, asBuilt }: AsBuiltTruck, format: LengthFormat): string {
  const change = asBuilt.track - asOrdered.track;
  const now = lengthText(asBuilt.track, format);
  if (amountWords(change, format).startsWith("less")) return `Track stays ${now}.`;
  return `Track becomes ${now}, ${amountWords(change, format)} ${change > 0 ? "wider" : "narrower"} than ordered.`;
}

/** How well the readings tell track and worst gap, and why they do not, a sentence each. @param read the sides that were read */
export function truckWithinSentences(
  { within, asBuilt: { check } }: AsBuiltTruck,
  read: readonly AsBuiltSide[],
  format: LengthFormat,
): readonly string[] {
  const whyNot = (side: "left" | "right") =>
    read.some((one) => one.side === side)
      ? `too little of the ${side} knuckle was read`
      : `the ${side} knuckle was not read`;
  const told = (what: string, mm: number) =>
    `The readings tell the ${what} to ${deviationText(mm, "length", format)}, one standard deviation.`;
  const untold = (what: string, why: string) =>
    `The readings do not tell how well the ${what} is known: ${why}.`;
  const { track, worstGap } = within;
  const unread = (["left", "right"] as const).find((side) => !read.some((one) => one.side === side));
  const ofTrack =
    track === null
      ? untold("track", unread ? whyNot(unread) : "too little of the knuckles was read")
      : told("track", track);
  const { worst } = check;
  if (worst === null) return [ofTrack];
  const gap = `worst gap as built (${worst.part}, ${worst.side})`;
  if (worstGap === null) return [ofTrack, untold(gap, whyNot(worst.side))];
  return [ofTrack, told(gap, worstGap.sigma), ...otherNearest(worstGap)];
}

/** That another part may be the one that comes nearest; nothing where that is all but ruled out. */
function otherNearest({ other }: NonNullable<AsBuiltTruck["within"]["worstGap"]>): readonly string[] {
  const percent = other === null ? 0 : Math.round(100 * other.share);
  if (other === null || percent < 1) return [];
  return [
    `In ${percent}% of the knuckles these readings allow another part comes nearest, most often ${other.part}, ${other.side}: the deviation is that of the nearest part of all.`,
  ];
}

/**
 * What the tires come nearest to on the knuckles as ordered and as built, a sentence each. @param models of the two
 * @param doubts of the inputs, of what was read off the jig too, which the truck as ordered does not rest on
 */
export function gapSentences(
  { asOrdered, asBuilt }: AsBuiltTruck,
  models: { readonly ordered: Model; readonly built: Model },
  doubts: readonly Doubt[],
  format: LengthFormat,
): readonly string[] {
  const words = ({ check }: TruckNumbers, model: Model, of: readonly Doubt[]) =>
    answerSentence(verdictSentence(check, model, format), answerState(check, of), of);
  return [
    `As ordered: ${words(asOrdered, models.ordered, ofTheTruck(doubts))}`,
    `As built: ${words(asBuilt, models.built, doubts)}`,
  ];
}

/** What the knuckles as built did to the worst gap, as fine as a gauge reads: fractions of a tape hide it. "" = nothing comes near. */
export function worstGapSentence({ asOrdered, asBuilt }: AsBuiltTruck, { units }: LengthFormat): string {
  const [ordered, built] = [asOrdered.check.worst, asBuilt.check.worst];
  if (ordered === null || built === null) return "";
  const fine: LengthFormat =
    units === "in" ? { units, fraction: "decimal", decimals: 2 } : { units, decimals: 1 };
  const gap = (mm: number) => `${formatLength(Math.abs(mm), fine)}${mm < 0 ? " of rub" : ""}`;
  const place = ({ part, side }: typeof built) => `${part}, ${side}`;
  const where = place(ordered) === place(built) ? "" : ` (${place(ordered)})`;
  return `Worst gap as built ${gap(built.gap)} (${place(built)}), as ordered ${gap(ordered.gap)}${where}.`;
}

/** What stands over the numbers of `truckCells`. */
export const TRUCK_COLUMNS = ["As ordered", "As built", "Change", "Std. deviation"] as const;

/** A row of the truck under `TRUCK_COLUMNS`, as fine as its ±; a dash = there is none, or the readings do not tell. */
export function truckCells(
  { asOrdered, asBuilt, within, measure }: TruckRow,
  format: LengthFormat,
): readonly [asOrdered: string, asBuilt: string, change: string, within: string] {
  const fine = gaugeFormat(format);
  const text = (value: number | null) => (value === null ? "–" : jigText(value, measure, fine));
  return [
    text(asOrdered),
    text(asBuilt),
    asOrdered === null || asBuilt === null ? "–" : jigOffText(asBuilt - asOrdered, measure, fine),
    within === null ? "–" : deviationText(within, measure, format),
  ];
}

function offAngle(rad: number): string {
  const text = withMinus(formatAngle(rad, 2));
  return rad > 0 && text !== "0.00°" ? `+${text}` : text;
}
