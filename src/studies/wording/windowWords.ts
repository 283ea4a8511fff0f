import { parseKeyText } from "../../setup/types/keyPath.ts";
import { degFromRad, radFromDeg } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { Model } from "../model/model.ts";
import { isInside } from "../window/variantTicks.ts";
import type { ClosedBy, Closer, FieldWindow, Fit, SetBy, TooNear } from "../window/windowTypes.ts";
import { fieldName } from "./fieldName.ts";
import { amountWords, angleText, finestLength, lengthText } from "./lengths.ts";
import { nearestSurface, partWords } from "./nearestSurface.ts";
import { heightWords, inputWords, reportedPose } from "./poseWords.ts";
import { onSafeSide, type SafeWay, safeLength } from "./safeSide.ts";

/** What a window is told with: the truck it is of, and how lengths are shown. */
export interface WindowSpeech {
  readonly model: Model;
  readonly format: LengthFormat;
  /** The setup as typed, the variant shown applied: it names the fields. */
  readonly document: unknown;
}

/** Degrees. Steps an angle's end is told in, on the safe side. */
const ANGLE_STEP = 0.1;

/** A value of the field, mm or radians; of an end on the safe side. */
export function valueText(
  value: number,
  kind: FieldWindow["kind"],
  format: LengthFormat,
  way: SafeWay | null = null,
): string {
  const told = way === null ? value : safeValue(value, kind, format, way);
  return kind === "length" ? lengthText(told, format) : angleText(told);
}

/** A value of a field on the steps it is told in, on the safe side; mm or radians. */
export function safeValue(
  value: number,
  kind: FieldWindow["kind"],
  format: LengthFormat,
  way: SafeWay,
): number {
  return kind === "length"
    ? safeLength(value, way, format)
    : radFromDeg(onSafeSide(degFromRad(value), ANGLE_STEP, way));
}

/** What a form calls the field of a key. */
function nameOf(key: string, document: unknown): string {
  return fieldName(parseKeyText(key) ?? [], document);
}

/** Whether the time ended before anything was known of any value. */
export function isNothingKnown({ fits, closedBy, cutShort }: FieldWindow): boolean {
  return cutShort === true && fits.length === 0 && closedBy.length === 0;
}

/**
 * Everything a window tells, a sentence each: what fits, what sets each end, what closes it, how far it is proven.
 * @param isNowProven a check proves that the value it has fits
 */
export function windowSentences(
  window: FieldWindow,
  speech: WindowSpeech,
  isNowProven = false,
): readonly string[] {
  if (window.fits.length === 0 && window.cutShort && isNowProven) {
    const own = valueText(window.now, window.kind, speech.format);
    return [
      `${nameOf(window.field, speech.document)}: yours, ${own}, fits; how far it can go is not known yet.`,
    ];
  }
  if (isNothingKnown(window))
    return [`${nameOf(window.field, speech.document)}: what fits is not known yet.`];
  return [
    fitsSentence(window, speech),
    ...(window.fits.length > 0 ? endSentences(window, speech) : closedSentences(window, speech)),
    ...provenSentences(window, speech.format),
  ];
}

/** Which values fit, and how now stands to them. */
export function fitsSentence(window: FieldWindow, { format, document }: WindowSpeech): string {
  const { kind, now, fits, from, to } = window;
  const name = nameOf(window.field, document);
  const text = (value: number) => valueText(value, kind, format);
  if (fits.length === 0) {
    const open = window.cutShort ? " is known to fit so far" : " fits";
    return `${name}: no value from ${text(from)} to ${text(to)}${open}; yours is ${text(now)}.`;
  }
  const ranges = fits.map((fit) => endTexts(fit, kind, format).join(" to "));
  const least = fits.some(({ fromSetBy, toSetBy }) => isOpen(fromSetBy) || isOpen(toSetBy))
    ? " at least"
    : "";
  return `${name} fits${least} from ${ranges.join(", and from ")}; ${nowWords(window, format)}.`;
}

/** `yours, 6 5/16 in, is 3/4 in too much`. */
function nowWords(window: FieldWindow, format: LengthFormat): string {
  const { kind, now, fits } = window;
  const own = valueText(now, kind, format);
  if (isInside(window, now)) return `yours, ${own}, is inside`;
  const [first, last] = [fits[0]!, fits.at(-1)!];
  const amount = (value: number) =>
    kind === "length"
      ? amountWords(safeLength(value, "up", format), format)
      : angleText(radFromDeg(onSafeSide(degFromRad(value), ANGLE_STEP, "up")));
  if (now < first.from) return `yours, ${own}, is ${amount(first.from - now)} too little`;
  if (now > last.to) return `yours, ${own}, is ${amount(now - last.to)} too much`;
  return `yours, ${own}, is between them, where nothing fits`;
}

/** What sets each end, and each side of every hole. */
function endSentences({ field, fits, kind }: FieldWindow, speech: WindowSpeech): readonly string[] {
  return fits.flatMap((fit: Fit) => {
    const [from, to] = endTexts(fit, kind, speech.format);
    return [
      endSentence("less", from, fit.fromSetBy, keeping(field, fit.from, speech)),
      endSentence("more", to, fit.toSetBy, keeping(field, fit.to, speech)),
    ];
  });
}

/** Speech of a truck at a value of a field: of the gap to keep it keeps that gap, no longer the setup's. @param value mm */
function keeping(field: string, value: number, speech: WindowSpeech): WindowSpeech {
  if (field !== "allowance") return speech;
  const { model } = speech;
  const allowance = safeLength(value, "down", speech.format);
  return { ...speech, model: { ...model, setup: { ...model.setup, allowance } } };
}

function endSentence(way: "less" | "more", end: string, by: SetBy, speech: WindowSpeech): string {
  if (by.kind === "range") return `Looked at no farther than ${end}: ${way} may fit too.`;
  if (by.kind === "unfinished")
    return `Proven no farther than ${end} in the time allowed: ${way} may fit too.`;
  if (by.kind === "setup") return `Not ${way} than ${end}: the setup allows no ${way}.`;
  return `Not ${way} than ${end}: ${setByWords(by, speech)}.`;
}

/** Whether an end is no limit of the truck, but where the search ended. */
function isOpen({ kind }: SetBy): boolean {
  return kind === "range" || kind === "unfinished";
}

/** mm or radians. */
const ROUNDING = 1e-9;

/** Both ends on the safe side; of what is narrower than a tape reads, finer. */
function endTexts(
  { from, to }: Fit,
  kind: FieldWindow["kind"],
  format: LengthFormat,
): readonly [from: string, to: string] {
  if (safeValue(from, kind, format, "up") <= safeValue(to, kind, format, "down"))
    return [valueText(from, kind, format, "up"), valueText(to, kind, format, "down")];
  const fine: LengthFormat = { units: format.units, fraction: "decimal", decimals: 4 };
  const step = kind === "length" ? finestLength(fine) : radFromDeg(0.001);
  const low = onSafeSide(from, step, "up", ROUNDING);
  const high = onSafeSide(to, step, "down", ROUNDING);
  const text = (value: number) => (kind === "length" ? lengthText(value, fine) : angleText(value, 3));
  return low <= high ? [text(low), text(high)] : [text(from), text(to)];
}

/** What is beyond an end, a clause. */
export function setByWords(by: SetBy, speech: WindowSpeech): string {
  switch (by.kind) {
    case "part":
      return tooNearWords(by, speech);
    case "limit":
      return limitWords(by);
    case "range":
      return "nothing past that was looked at";
    case "setup":
      return "the setup allows nothing past that";
    case "unfinished":
      return "the time allowed ended before more was proven";
  }
}

function limitWords({ name }: Extract<Closer, { readonly kind: "limit" }>): string {
  return name.includes(": ")
    ? `the truck does not go together (${name})`
    : `every pose is past a limit (${name})`;
}

function tooNearWords(by: TooNear, { model, format }: WindowSpeech): string {
  const pose = reportedPose(model, by.travel, by.steer);
  const surface = pose === null ? "wheel" : nearestSurface(model, pose, by.side, by.part);
  const part = partWords(model, by.side, by.part).replace(/^the /i, "");
  const one = isOnBoth(by, model) ? `the ${surface}` : `the ${by.side} ${surface}`;
  const when = by.together
    ? "at every pose"
    : `${heightWords(by.travel, model, format)}, ${inputWords(by.steer)}`;
  return `${one} comes nearer than ${formatLength(model.setup.allowance, format)} to the ${part} ${when}`;
}

function isOnBoth({ part }: TooNear, { mirrored, pairs }: Model): boolean {
  return mirrored && pairs.filter(({ name }) => name === part).length === 2;
}

/** What closes an empty window, and what opens it. */
function closedSentences(
  { field, from, closedBy, opens, kind, cutShort }: FieldWindow,
  spoken: WindowSpeech,
): readonly string[] {
  // The least there is to keep is too much.
  const speech = keeping(field, from, spoken);
  const { format, document } = speech;
  const name = nameOf(field, document).toLowerCase();
  const closers = closedBy.map(({ by, isUnmoved }: ClosedBy) => {
    const words = setByWords(by, speech);
    const gap = by.kind === "part" ? gapWords(by.gap, isUnmoved, format) : "";
    const told = `${words.charAt(0).toUpperCase()}${words.slice(1)}${gap}`;
    return isUnmoved ? `${told}; the ${name} does not change that, so no value fits.` : `${told}.`;
  });
  if (opens === null)
    return [
      ...closers,
      cutShort
        ? "Whether another single change would make room was not searched to the end."
        : "No single change of offset, tire width, steering, bump stop, travel or allowance that was tried makes room.",
    ];
  const value = (mm: number) => valueText(mm, opens.kind, format);
  const other = nameOf(opens.field, document).toLowerCase();
  return [
    ...closers,
    `The smallest single change found that makes room: ${other} from ${value(opens.from)} to ${changedText(opens.to, opens.from, opens.kind, format)}; then a ${name} of ${valueText(opens.at, kind, format)} fits.`,
  ];
}

/** Rounded away from where it is now, so that it is never told as less of a change than it takes. */
function changedText(to: number, from: number, kind: FieldWindow["kind"], format: LengthFormat): string {
  return valueText(to, kind, format, to > from ? "up" : "down");
}

/** The least there is at any value: of one that moves it less than the answer over the truck as it is tells. */
function gapWords(gap: number, isUnmoved: boolean, format: LengthFormat): string {
  const amount = amountWords(gap, format);
  if (gap >= 0) return ` (${amount} at the best value)`;
  return isUnmoved ? `, rubbing by ${amount}` : `, still rubbing by ${amount} at the best value`;
}

/** How far the answer holds. */
function provenSentences(
  { between, fits, kind, tolerance, cutShort }: FieldWindow,
  format: LengthFormat,
): readonly string[] {
  const digits = (value: number) =>
    kind === "length"
      ? `${Number(unitsFromMm(value, format.units).toPrecision(2))} ${format.units}`
      : `${Number(degFromRad(value).toPrecision(2))}°`;
  const ends = `each end is checked${beyondWords(fits, digits(tolerance))}`;
  const isProven = between.rank === "proven";
  // That not all of it was looked at is told beside it.
  if (fits.length === 0 && cutShort) return [];
  if (fits.length === 0)
    return [
      isProven ? "The whole range was looked at." : `Looked at every ${digits(between.step)}, not between.`,
    ];
  return [
    isProven
      ? `Proven at every value between the ends; ${ends}.`
      : `Looked at every ${digits(between.step)}, not proven between; ${ends}.`,
  ];
}

/** What is known beyond the ends: nothing of one where the range, the setup's own or the time ended first. */
function beyondWords(fits: readonly Fit[], tolerance: string): string {
  const kinds = fits.flatMap(({ fromSetBy, toSetBy }) => [fromSetBy.kind, toSetBy.kind]);
  const closed = kinds.filter((kind) => kind === "part" || kind === "limit");
  if (closed.length === 0) return "";
  const which =
    closed.length === kinds.length
      ? "each"
      : `an end that is set by ${kinds.includes("setup") ? "a part or a limit" : "something"}`;
  const what = closed.includes("limit") ? "the value does not fit" : "something is too near";
  return `; ${tolerance} beyond ${which}, ${what}`;
}
