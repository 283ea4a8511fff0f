import { solvePose } from "../../suspension/solvePose.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { Model } from "../model/model.ts";
import { type GapWord, gapWord } from "./gapTexts.ts";
import { amountText, lengthText } from "./lengths.ts";
import type { PictureFacts, TellingPose } from "./pictureFacts.ts";
import { heightWords, isStraight, steerWords, wayOf } from "./poseWords.ts";
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
      : steerWords(steer, pose?.ok ? pose : null, side);
  const wheel = side === "left" ? "left wheel" : "right wheel, drawn mirrored";
  const why =
    touches === null
      ? ""
      : touches.isNowhere
        ? ", where something touches already"
        : ", where something first touches";
  return `From above, ${wheel}, ${steered}${why}.`;
}

/** One of the trucks on a picture, for who does not see it. */
export function pictureWords(one: PicturedTruck, format: LengthFormat): string {
  const { letter, name, mark, hubFace, allowance, stands } = one;
  const label = mark && gapLabel(mark.entry.gap, allowance, format);
  const nearest = label ? `; ${mark.part}: ${label.said} ${label.amount}`.trimEnd() : "";
  const at = stands ? nearest : "; cannot come to this pose, so nothing is marked";
  return `${letter}, ${name}: hub face ${lengthText(hubFace, format)}${at}.`;
}

/** What the gaps of a picture are to; "" = it shows none. */
export function gapNote(pictured: readonly Pick<PicturedTruck, "letter" | "stands" | "mark">[]): string {
  const barred = pictured.filter(({ stands }) => !stands).map(({ letter }) => letter);
  const nothing =
    barred.length === 0 ? "" : `${barred.join(" and ")} cannot come to this pose: nothing is marked on it.`;
  return [gapText(pictured), nothing].filter((text) => text !== "").join(" ");
}

function gapText(pictured: readonly PictureFacts[]): string {
  const parts = [...new Set(pictured.flatMap(({ mark }) => (mark ? [mark.part] : [])))];
  if (parts.length === 0) return "";
  return `The gap is to the ${parts.join(" and the ")}.`;
}
