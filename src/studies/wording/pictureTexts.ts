import type { Side } from "../../suspension/frontEnd.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { Model } from "../model/model.ts";
import type { GapEntry } from "../reports/gapsAt.ts";
import { type GapWord, gapWord } from "./gapTexts.ts";
import { amountText, finestLength, lengthText } from "./lengths.ts";
import type { PictureFacts, TellingPose } from "./pictureFacts.ts";
import { heightWords, isStraight, turnedWords, wayOf } from "./poseWords.ts";
import { farText } from "./stopTexts.ts";

/** mm. A gap this small, or as deep, is where two things just touch. */
const JUST = 0.05;

/** A gap as a drawing tells it. */
export interface GapLabel {
  readonly word: GapWord;
  /** The word that is written. */
  readonly said: string;
  /** How much; "" where they just touch. */
  readonly amount: string;
}

/** A truck on a picture, with what it is told by. mm. */
export interface PicturedTruck extends PictureFacts {
  readonly letter: string;
  readonly name: string;
  readonly hubFace: number;
  readonly allowance: number;
}

/** A gap on a drawing: what it means, and the few words beside it. @param gap, allowance mm */
export function gapLabel(gap: number, allowance: number, format: LengthFormat): GapLabel {
  if (Math.abs(gap) < JUST) return { word: "rubs", said: "touches", amount: "" };
  const word = gapWord(gap, allowance);
  return { word, said: word, amount: amountText(gap, format, true) };
}

/** Whether a gap is as deep as two things overlap, and do not just touch. @param gap mm */
export function isOverlap(gap: number): boolean {
  return gap < -JUST;
}

/** Share of a gap that is height, from which on a tire seen from above goes under what it clears. */
const UNDER = 0.5;

/** What stands after a gap's amount on the picture from above, where the tire goes under the part: there they lie over each other. */
export function underWords({ gap, point, onRing }: Pick<GapEntry, "gap" | "point" | "onRing">): string {
  return gap >= JUST && point[2] - onRing[2] > UNDER * gap ? "below it" : "";
}

/** What the first picture shows. @param model any of the trucks; null = none goes together. @param travel mm */
export function frontTitle(travel: number, model: Model | null, format: LengthFormat): string {
  const height = model ? `, ${heightWords(travel, model, format)}` : "";
  return `From the front, wheels straight ahead${height}.`;
}

/** What the second picture shows: which wheel, how far steered, and why there. */
export function aboveTitle(
  { side, steer, touches }: TellingPose,
  travel: number,
  model: Model | null,
): string {
  const pose = model && solvePose(model.frontEnd, travel, steer);
  const steered = isStraight(steer)
    ? "wheels straight ahead"
    : touches !== null
      ? `steered ${farText(touches)} to the ${wayOf(steer)}`
      : turnedWords(steer, pose?.ok ? pose : null, side);
  const why =
    touches === null
      ? ""
      : touches.isNowhere
        ? ", where something touches already"
        : ", where something first touches";
  return `From above, ${wheelWords(side)}, ${steered}${why}.`;
}

/** What stands on the pictures, by name. */
export const PICTURE_NAMES = {
  tire: "tire",
  wheel: "wheel",
  hubFace: "hub face",
  ballJointLine: "ball joint line",
  floor: "floor",
  front: "front of the truck",
} as const;

/** Where a picture is cut. @param isBoth B is on it beside A; @param at mm: from the front at this x, from above so high over the floor; null = nowhere */
export function cutSentence(
  view: "front" | "above",
  at: number | null,
  format: LengthFormat,
  isBoth: boolean,
): string {
  if (at === null) return "";
  if (view === "above") return `Cut ${amountText(at, format)} above the floor; dash-dotted: above the cut.`;
  const where =
    Math.abs(at) < finestLength(format)
      ? "at the axle line"
      : `${amountText(at, format)} ${at > 0 ? "ahead of" : "behind"} the axle line`;
  return `Cut ${where}; thin: behind it.${isBoth ? " A solid, B dashed." : ""}`;
}

/** What the second picture shows while both are steered on it, and what touches there. @param steer −1 … +1 */
export function steeredTitle(
  steer: number,
  side: Side,
  travel: number,
  model: Model | null,
  pictured: readonly PicturedTruck[],
): string {
  const pose = model && solvePose(model.frontEnd, travel, steer);
  const steered = isStraight(steer)
    ? "wheels straight ahead"
    : turnedWords(steer, pose?.ok ? pose : null, side);
  const rubs = pictured
    .filter(({ mark }) => mark !== null && mark.entry.gap < JUST)
    .map(({ letter }) => letter);
  const told =
    rubs.length === 0
      ? "nothing drawn touches"
      : rubs.length === 1
        ? `${rubs[0]} touches`
        : `${rubs.join(" and ")} touch`;
  return `From above, ${wheelWords(side)}, ${steered}: ${told}.`;
}

function wheelWords(side: Side): string {
  return side === "left" ? "left wheel" : "right wheel, drawn mirrored";
}

/** One of the trucks on a picture, for who does not see it. */
export function pictureWords(one: PicturedTruck, format: LengthFormat): string {
  const { letter, name, mark, hubFace, allowance, stands } = one;
  const label = mark && gapLabel(mark.entry.gap, allowance, format);
  const nearest = label ? `; ${mark.part}: ${label.said} ${label.amount}`.trimEnd() : "";
  const at = stands ? nearest : "; cannot come to this pose, so nothing is marked";
  return `${letter}, ${name}: hub face ${lengthText(hubFace, format)}${at}.`;
}

/** What the gaps of a picture are to, and what nothing is marked on; "" = it shows none. */
export function gapNote(pictured: readonly Pick<PicturedTruck, "letter" | "stands" | "mark">[]): string {
  return [gapText(pictured), barredNote(pictured)].filter((text) => text !== "").join(" ");
}

/** Which of a picture's trucks cannot come to its pose; "" = none. */
export function barredNote(pictured: readonly Pick<PicturedTruck, "letter" | "stands">[]): string {
  const barred = pictured.filter(({ stands }) => !stands).map(({ letter }) => letter);
  return barred.length === 0
    ? ""
    : `${barred.join(" and ")} cannot come to this pose: nothing is marked on it.`;
}

function gapText(pictured: readonly PictureFacts[]): string {
  const parts = [...new Set(pictured.flatMap(({ mark }) => (mark ? [mark.part] : [])))];
  if (parts.length === 0) return "";
  return `The gap is to the ${parts.join(" and the ")}.`;
}
