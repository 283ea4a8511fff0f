import { solvePose } from "../../suspension/solvePose.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { FieldWindow, Fit } from "../window/windowTypes.ts";
import { halfTrack } from "./comparisonWords.ts";
import { finestLength, lengthText } from "./lengths.ts";
import { fartherIn, type WhyTruck, wheelSentence } from "./wheelWhyWords.ts";
import { setByWords, valueText, type WindowSpeech } from "./windowWords.ts";

/** What makes the two differ and what it does, in a sentence; what either way costs, a line each. */
export interface WhyWords {
  readonly why: string;
  /** Of the wheel that stands farther in and of the one farther out; none where both stand alike. */
  readonly downsides: readonly string[];
}

/** How far the hub face may go, as far as it is known. */
export interface HubFaceReach {
  /** null = nothing is known yet. */
  readonly window: FieldWindow | null;
  /** It is still being looked for. */
  readonly isLooking: boolean;
}

/**
 * Why the two differ: what a hub face is, how far it stands from the ball joint line on each, what nearer does and what sets how near
 * it may come. Where the hub face is the same and the wheel is not, in what the wheel differs.
 * @param trucks both; or one where they are the same
 * @param reach of the hub face of the last of them
 */
export function whyWords(trucks: readonly WhyTruck[], reach: HubFaceReach, speech: WindowSpeech): WhyWords {
  return why(
    trucks,
    speech.format,
    (where, second) => `, and ${nearestClause(reach, where, speech)}${brakeClause(reach, second)}`,
  );
}

/** The same in brief, for what is taken along: without what sets how near the hub face may come. */
export function whyInBrief(trucks: readonly WhyTruck[], format: LengthFormat): WhyWords {
  return why(trucks, format, () => "");
}

function why(
  trucks: readonly WhyTruck[],
  format: LengthFormat,
  reachClause: (where: string, second: WhyTruck) => string,
): WhyWords {
  const [first, second = first] = trucks;
  if (!first || !second) return { why: "", downsides: [] };
  const [a, b] = [first, second].map(({ model }) => model.setup.knuckle.hubFace) as [number, number];
  const isAlike = Math.abs(a - b) < 0.5 * finestLength(format);
  const wheel = isAlike ? wheelSentence(first, second, format) : "";
  if (wheel !== "") return { why: wheel, downsides: wheelDownsides(first, second, format) };
  const both = trucks.length < 2 ? "" : " on both A and B";
  const stands = isAlike
    ? `stands ${lengthText(a, format)} from the ball joint line${both}`
    : `stands ${lengthText(a, format)} from the ball joint line on ${first.letter} and ${lengthText(b, format)} on ${second.letter}`;
  const where = trucks.length < 2 ? "" : ` on ${second.letter}`;
  const told = `The hub face, which the wheel bolts to, ${stands}; nearer draws the whole wheel in under the fender${reachClause(where, second)}.`;
  if (isAlike) return { why: told, downsides: [] };
  const [near, far] = a < b ? [first, second] : [second, first];
  return {
    why: told,
    downsides: [nearerLine(near, far, HUB_FACE, format), fartherLine(near, far, HUB_FACE, format)],
  };
}

/** What is called nearer and farther, and what room the nearer one takes. */
interface Ways {
  readonly near: string;
  readonly far: string;
  readonly room: string;
}

const HUB_FACE: Ways = {
  near: "nearer",
  far: "farther",
  room: "less room inside the wheel for brake, ball joint and tie rod end",
};

const WHEEL: Ways = {
  near: "farther in",
  far: "farther out",
  room: "less room between wheel and arms, knuckle and frame",
};

/** What either wheel costs on the same hub face. */
function wheelDownsides(first: WhyTruck, second: WhyTruck, format: LengthFormat): readonly string[] {
  const inward = fartherIn(first, second, format);
  if (inward === 0) return [];
  const [near, far] = inward > 0 ? [second, first] : [first, second];
  return [nearerLine(near, far, WHEEL, format), fartherLine(near, far, WHEEL, format)];
}

/** What sets how near a hub face may come: a clause. @param where ` on B`, or nothing where one truck is told of */
function nearestClause({ window, isLooking }: HubFaceReach, where: string, speech: WindowSpeech): string {
  const open = `how near it may come${where} ${isLooking ? "is still being looked for" : "was not found in the time allowed"}`;
  if (window === null) return isLooking ? open : `how near it may come${where} is not known`;
  const { fits, kind, from, to, now } = window;
  const text = (value: number, way: "up" | null) => valueText(value, kind, speech.format, way);
  if (fits.length === 0) {
    if (window.cutShort) return open;
    // None is nearer than the ball joint line itself.
    const start = from < finestLength(speech.format) ? "" : `from ${text(from, null)} `;
    return `no distance that was looked at, ${start || "up "}to ${text(to, null)}, fits${where}`;
  }
  const fit: Fit = fits.find((one) => one.from <= now && now <= one.to) ?? fits[0]!;
  switch (fit.fromSetBy.kind) {
    case "range":
      return `it may come as near as ${text(fit.from, "up")}${where}, the nearest that was looked at`;
    case "setup":
      return `it may come as near as ${text(fit.from, "up")}${where}, the nearest that the setup allows`;
    case "unfinished":
      return `it may come as near as ${text(fit.from, "up")}${where}; past that ${isLooking ? "it is still being looked for" : "nothing was found in the time allowed"}`;
    case "part":
    case "limit":
      return `it may come no nearer than ${text(fit.from, "up")}${where}: past that ${setByWords(fit.fromSetBy, speech)}`;
  }
}

/** A brake that is not in the setup limits nothing: said beside a limit that was found without one; "" else. */
function brakeClause({ window }: HubFaceReach, { model }: WhyTruck): string {
  const { hardware } = model.setup;
  const isTold = window !== null && window.fits.length > 0;
  return isTold && (hardware === null || hardware.rotor === null)
    ? "; no brake is measured, and one may end it sooner"
    : "";
}

/** What the nearer one costs. Wider stands steadier: load transfer in a corner is height over track (common practice). */
function nearerLine(near: WhyTruck, far: WhyTruck, ways: Ways, format: LengthFormat): string {
  const [narrow, wide] = [halfTrack(near.model), halfTrack(far.model)];
  const less = narrow === null || wide === null ? 0 : 2 * (wide - narrow);
  const track =
    less < 0.5 * finestLength(format)
      ? ""
      : `${formatLength(less, format)} less track, so it stands a little less steady in corners; `;
  return `Downside of ${near.letter}, ${ways.near}: ${track}${ways.room}.`;
}

/**
 * What the farther one costs. A longer scrub radius hands more of a bump or a brake's pull to the steering wheel (common
 * practice); where it is no longer, the pin's arm is.
 */
function fartherLine(near: WhyTruck, far: WhyTruck, ways: Ways, format: LengthFormat): string {
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
  return `Downside of ${far.letter}, ${ways.far}: the tire stands out toward the fender, and ${pull}.`;
}

/** Said where both letters stand for one truck. */
export const SAME_TRUCK =
  "A and B are the same truck: nothing differs between them. Choose another variant, or try another hub face.";
