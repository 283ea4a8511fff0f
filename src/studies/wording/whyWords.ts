import { solvePose } from "../../suspension/solvePose.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { Model } from "../model/model.ts";
import type { FieldWindow, Fit } from "../window/windowTypes.ts";
import { halfTrack } from "./comparisonWords.ts";
import { finestLength, lengthText } from "./lengths.ts";
import { setByWords, valueText, type WindowSpeech } from "./windowWords.ts";

/** One of the two trucks a counter compares. */
export interface WhyTruck {
  readonly letter: string;
  readonly model: Model;
}

/** What a hub face is and what it does, in a sentence; what either way costs, a line each. */
export interface WhyWords {
  readonly why: string;
  /** Of the nearer hub face and of the farther one; none where both stand alike. */
  readonly downsides: readonly string[];
}

/**
 * Why the two differ: what a hub face is, how far it stands from the ball joint line on each, what nearer does and what sets how near
 * it may come.
 * @param trucks both; or one where they are the same
 * @param window of the hub face of the last of them; null = not known yet
 */
export function whyWords(
  trucks: readonly WhyTruck[],
  window: FieldWindow | null,
  speech: WindowSpeech,
): WhyWords {
  const { format } = speech;
  const [first, second = first] = trucks;
  if (!first || !second) return { why: "", downsides: [] };
  const [a, b] = [first, second].map(({ model }) => model.setup.knuckle.hubFace) as [number, number];
  const isAlike = Math.abs(a - b) < 0.5 * finestLength(format);
  const both = trucks.length < 2 ? "" : " on both A and B";
  const stands = isAlike
    ? `stands ${lengthText(a, format)} from the ball joint line${both}`
    : `stands ${lengthText(a, format)} from the ball joint line on ${first.letter} and ${lengthText(b, format)} on ${second.letter}`;
  const where = trucks.length < 2 ? "" : ` on ${second.letter}`;
  const why = `The hub face, which the wheel bolts to, ${stands}; nearer draws the whole wheel in under the fender, and ${nearestClause(window, where, speech)}.`;
  if (isAlike) return { why, downsides: [] };
  const [near, far] = a < b ? [first, second] : [second, first];
  return { why, downsides: [nearerLine(near, far, format), fartherLine(near, far, format)] };
}

/** What sets how near a hub face may come: a clause. @param where ` on B`, or nothing where one truck is told of */
function nearestClause(window: FieldWindow | null, where: string, speech: WindowSpeech): string {
  if (window === null) return `how near it may come${where} is being worked out`;
  const { fits, kind, from, to, now } = window;
  const text = (value: number, way: "up" | null) => valueText(value, kind, speech.format, way);
  if (fits.length === 0) {
    return window.cutShort
      ? `how near it may come${where} was not found in the time allowed`
      : `no distance from ${text(from, null)} to ${text(to, null)} fits${where}`;
  }
  const fit: Fit = fits.find((one) => one.from <= now && now <= one.to) ?? fits[0]!;
  switch (fit.fromSetBy.kind) {
    case "range":
      return `it may come as near as ${text(fit.from, "up")}${where}, the nearest that was looked at`;
    case "unfinished":
      return `it may come as near as ${text(fit.from, "up")}${where}; past that nothing was found in the time allowed`;
    case "part":
    case "limit":
      return `it may come no nearer than ${text(fit.from, "up")}${where}: past that ${setByWords(fit.fromSetBy, speech)}`;
  }
}

/** What the nearer hub face costs. Wider stands steadier: load transfer in a corner is height over track (common practice). */
function nearerLine(near: WhyTruck, far: WhyTruck, format: LengthFormat): string {
  const [narrow, wide] = [halfTrack(near.model), halfTrack(far.model)];
  const less = narrow === null || wide === null ? 0 : 2 * (wide - narrow);
  const track =
    less < 0.5 * finestLength(format)
      ? ""
      : `${formatLength(less, format)} less track, so it stands a little less steady in corners; `;
  return `Downside of ${near.letter}, nearer: ${track}less room inside the wheel for brake, ball joint and tie rod end.`;
}

/**
 * What the farther one costs. A longer scrub radius hands more of a bump or a brake's pull to the steering wheel (common
 * practice); where it is no longer, the pin's arm is.
 */
function fartherLine(near: WhyTruck, far: WhyTruck, format: LengthFormat): string {
  const [short, long] = [near, far].map(({ model }) => {
    const pose = solvePose(model.frontEnd, 0, 0);
    return pose.ok ? pose.left.scrubRadius : null;
  });
  const isTold =
    typeof short === "number" &&
    typeof long === "number" &&
    Math.abs(long) - Math.abs(short) > 0.5 * finestLength(format);
  const pull = isTold
    ? `a scrub radius of ${lengthText(long, format)} against ${lengthText(short, format)} lets bumps and brakes tug more at the steering wheel`
    : "the wheel's load bends the pin by a longer arm";
  return `Downside of ${far.letter}, farther: the tire stands out toward the fender, and ${pull}.`;
}

/** Said where both letters stand for one truck. */
export const SAME_TRUCK =
  "A and B are the same truck: nothing differs between them. Choose another variant, or try another hub face.";
