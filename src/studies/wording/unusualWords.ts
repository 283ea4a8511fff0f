import { fieldAt } from "../../setup/fieldCatalogue.ts";
import { type KeyPath, keyText } from "../../setup/types/keyPath.ts";
import type { Reading } from "../../setup/types/readingTypes.ts";
import type { Setup } from "../../setup/types/types.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { Model } from "../model/model.ts";
import { CHECKS } from "../plausibility/checks.ts";
import { type SpanEffect, spanEffect } from "../plausibility/spanEffect.ts";
import type { Meant, Unusual } from "../plausibility/unusual.ts";
import { lineFrom } from "../worksheet/candidates.ts";
import { readingsBehind } from "../worksheet/readingsBehind.ts";
import { amountWords, angleText, finestLength, lengthText, withMinus } from "./lengths.ts";
import { readingWords } from "./measureNames.ts";
import { listWords } from "./nameWords.ts";
import { askName } from "./worksheetWords.ts";

/**
 * One unusual value: what it is, why it is unusual, and what it may have been meant to be. Two to three sentences, the
 * first of them with the value.
 */
export function unusualText(one: Unusual, model: Model, format: LengthFormat): string {
  const { setup } = model;
  const told = `${unusualSubject(one, setup, format)} is unusual: ${reasonOf(one, format)}.`;
  return [told, effectText(one, model, format), meantText(one, setup, format)]
    .filter((text) => text !== "")
    .join(" ");
}

/** What is judged, with its value, to begin a sentence with. */
export function unusualSubject(one: Unusual, setup: Setup, format: LengthFormat): string {
  return capitalized(subject(one, setup, format));
}

function subject(one: Unusual, setup: Setup, format: LengthFormat): string {
  const { check, value, beside } = one;
  const text = valueText(one, value, format);
  const amount = amountWords(value, format);
  switch (check) {
    case "fileUnits":
      return `a front end whose lower ball joint stands ${text} from the center plane, in a file whose unit is ${setup.units},`;
    case "span":
      return `a ball joint span of ${lengthText(setup.knuckle.span, format)} where the arms as measured hold ${lengthText(beside!, format)}`;
    case "backspacing":
      return `backspacing of ${text} on a rim ${lengthText(beside!, format)} wide`;
    case "armAngle":
      return `${one.paths[0][1] === "upperArm" ? "the upper arm" : "the lower arm"} at ${text} to level as measured`;
    case "steeringAxis":
      return `${one.paths[0][3] === 0 ? "a caster" : "a kingpin inclination"} of ${text} as measured`;
    case "camber":
      return `a camber of ${text} as measured`;
    case "tieRodAcross":
      return `a tie rod whose inner end lies ${amount} ${value > 0 ? "ahead of" : "behind"} its outer end`;
    case "rideHeight":
      return `a tire whose tread stands ${amount} ${value > 0 ? "above" : "below"} the floor as measured`;
    case "lipTrack":
      return `a fender lip ${amount} ${value > 0 ? "outside" : "inside"} of the middle of the tire`;
    case "lipInTire":
      return `${placeName(one.paths[0], setup)}, ${amount} inside the tire as measured,`;
    case "tenTimes":
      return `${placeName(one.paths[0], setup)}, ${text} where its neighbors have about ${lengthText(beside!, format)},`;
    case "jigReading":
      return `${placeName(one.paths[0], setup)}, read as ${text} where the sheet asks for ${valueText(one, beside!, format)},`;
    case "leftRight":
    case "farAway":
    case "buildSize":
    case "loadMultiple":
    case "size":
    case "hubFace":
    case "loadedRadius":
      return `${placeName(one.paths[0], setup)} of ${text}`;
  }
}

function reasonOf(one: Unusual, format: LengthFormat): string {
  const { check, least, most } = one;
  const { reason } = CHECKS.find(({ name }) => name === check)!;
  const hasRange = RANGED.has(check) && least !== null && most !== null;
  return hasRange
    ? `${reason}, here ${valueText(one, least, format)} to ${valueText(one, most, format)}`
    : reason;
}

/** Checks whose range differs from field to field, and is told. */
const RANGED: ReadonlySet<Unusual["check"]> = new Set([
  ...(["size", "hubFace", "loadedRadius", "buildSize", "loadMultiple"] as const),
]);

/** What it does all the same, where that is worth telling. */
function effectText({ check }: Unusual, { setup, frontEnd }: Model, format: LengthFormat): string {
  const effect = check === "span" ? spanEffect(setup, frontEnd) : null;
  return effect ? spanSentence(effect, format) : "";
}

function meantText(one: Unusual, setup: Setup, format: LengthFormat): string {
  const { check, meant, paths } = one;
  const read = readingsBehind(setup, paths);
  if (read.length > 0) return `${comesFrom(read)}: read ${read.length === 1 ? "it" : "them"} again.`;
  if (check === "fileUnits") return `Are the numbers in ${setup.units === "in" ? "millimeters" : "inches"}?`;
  if (check === "tieRodAcross")
    return "Is the inner tie rod end or the steering arm typed with the sign of the other side of the axle?";
  if (check === "span")
    return "With a taller spindle or taller ball joints it is on purpose; else measure the span and the ball joints again.";
  if (check === "lipInTire")
    return "With another wheel than the one it was measured with it may be so; else measure the part again.";
  if (meant.length > 0)
    return `Was ${meant.map((slip) => meantWords(slip, one, setup.units, format)).join(", or ")} meant?`;
  return `Look again at ${paths.map((path) => placeName(path, setup)).join(", ")}.`;
}

/** Most readings named where a value comes of many. */
const MOST_NAMED = 4;

/** The readings a value is worked out of, by their names. */
function comesFrom(readings: readonly Reading[]): string {
  const names = readings.slice(0, MOST_NAMED).map((reading) => {
    const ask = lineFrom(reading);
    return `“${lowerFirst(ask ? askName(ask) : readingWords(reading))}”`;
  });
  const rest = readings.length - names.length;
  const more = rest > 0 ? [`${rest} more`] : [];
  return `Nobody typed it: it comes from ${listWords([...new Set([...names, ...more])])}`;
}

/** A number in the other unit is told in that unit, as it stands in the file. */
function meantWords(
  { slip, value }: Meant,
  { kind }: Unusual,
  units: Setup["units"],
  format: LengthFormat,
): string {
  if (kind !== "length") return valueText({ kind }, value, format);
  const isOther = slip === "unit" && format.units === units;
  return lengthText(value, isOther ? { units: units === "in" ? "mm" : "in" } : format);
}

function valueText({ kind }: Pick<Unusual, "kind">, value: number, format: LengthFormat): string {
  if (kind === "number") return withMinus(String(Number(value.toPrecision(6))));
  if (kind === "angle") return angleText(value);
  // What a tape shows as nothing is told finer.
  const isHidden = value !== 0 && Math.abs(value) < 0.5 * finestLength(format);
  return lengthText(value, isHidden ? { units: format.units, fraction: "decimal", decimals: 4 } : format);
}

const AXES = ["x", "y", "z"];

/** The place of a number as a form names it: `hub face`, `lower arm, front pivot, y`, `fender lip, point 4, z`. */
function placeName(path: KeyPath, setup: Setup): string {
  const [, block, index, list, entry] = path;
  if (block === "body" && typeof index === "number") {
    const name = setup.truck.body[index]?.name ?? "a body part";
    const point =
      list === "points" ? `, point ${Number(entry) + 1}` : list === "min" ? ", lowest corner" : "";
    const corner = list === "max" ? ", highest corner" : point;
    const axis = path.at(-1);
    return `${name}${corner}${path.length > 3 && typeof axis === "number" ? `, ${AXES[axis]}` : ""}`;
  }
  const owner = ownerName(path, setup);
  if (owner !== null) return `${owner}, ${lowerFirst(fieldAt(path, setup)?.label ?? keyText(path))}`;
  const last = path.at(-1);
  const whole = typeof last === "number" ? path.slice(0, -1) : path;
  const label = fieldAt(whole, setup)?.label ?? keyText(whole);
  const axis = typeof last === "number" ? `, ${AXES[last]}` : "";
  return `${lowerFirst(label)}${axis}`;
}

/** What has the field, where several have one of its name: a member of the build, a load case, a knuckle read; null = nothing. */
function ownerName([block, list, entry]: KeyPath, { build, loads }: Setup): string | null {
  if (block === "asBuilt") return `${list} knuckle`;
  if (typeof entry !== "number") return null;
  if (block === "loads" && list === "cases") return `load case “${loads?.cases?.[entry]?.name ?? entry + 1}”`;
  if (block !== "build") return null;
  if (list === "members") return `member “${build?.members[entry]?.name ?? entry + 1}”`;
  if (list === "plates") return `plate “${build?.plates[entry]?.name ?? entry + 1}”`;
  return list === "welds" ? `weld of “${build?.welds[entry]?.member ?? entry + 1}”` : null;
}

function lowerFirst(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
}

function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What it does that the knuckle's span is not the distance of the arms' ball joints; "" where the two are the same. */
export function spanSentence(effect: SpanEffect, format: LengthFormat): string {
  const { span, apart, withSpan, asMeasured } = effect;
  const off = span - apart;
  if (Math.abs(off) < 0.5 * finestLength(format)) return "";
  const amount = `${amountWords(off, format)} ${off > 0 ? "taller" : "shorter"}`;
  const more = (
    [
      ["the upper arm leans from level by", withSpan.upperArm, asMeasured.upperArm],
      ["camber is", withSpan.camber, asMeasured.camber],
      ["caster is", withSpan.caster, asMeasured.caster],
    ] as const
  ).map(([what, now, before]) => {
    const [is, was] = [angleText(now), angleText(before)];
    return is === was ? `${what} ${is} either way` : `${what} ${is} instead of ${was}`;
  });
  return `The knuckle is ${amount} than the arms' ball joints are apart; with it, as measured, ${more.join(", ")}.`;
}
