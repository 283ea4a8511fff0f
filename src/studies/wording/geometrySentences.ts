import { formatAngle } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import type { FlatTieRod } from "../geometry/flatTieRod.ts";
import type { GeometryReport } from "../geometry/geometryReport.ts";
import { CURB_HEIGHT } from "../geometry/turningCircle.ts";
import type { Model } from "../model/model.ts";
import { amountWords, formatOf } from "./lengths.ts";
import { travelWords } from "./poseWords.ts";

/** What the tables come to, one sentence a line. */
export function geometrySentences(report: GeometryReport, model: Model): string {
  const format = formatOf(model.setup);
  return [
    bumpSteerLine(report, format),
    ...flatLines(report, format),
    ...turningLines(report, model, format),
  ].join("\n");
}

function bumpSteerLine({ bumpSteer }: GeometryReport, format: LengthFormat): string {
  const found = [bumpSteer.left, bumpSteer.right].flatMap((one) => one ?? []);
  const [first, ...rest] = found;
  if (!first) return "Bump steer: the wheels cannot follow the range.";
  const worst = rest.reduce(
    (most, next) => (Math.abs(next.most.toeChange) > Math.abs(most.most.toeChange) + 1e-12 ? next : most),
    first,
  );
  const { travel, toeChange } = worst.most;
  if (Math.abs(toeChange) < 1e-9) return "Bump steer: none.";
  return `Bump steer: a wheel toes ${toeChange > 0 ? "in" : "out"} by up to ${formatAngle(Math.abs(toeChange), 2)}, ${travel === 0 ? "at travel 0" : `at ${travelWords(travel, format)}`}; ${formatAngle(worst.rms, 2)} root mean square over the range.`;
}

function flatLines({ flatInner, flatOuter }: GeometryReport, format: LengthFormat): string[] {
  return [flatInner, flatOuter].flatMap((found) => (found === null ? [] : [flatLine(found, format)]));
}

/** Bump steer is cured in thirty-seconds, so they are shown. */
function flatLine(flat: FlatTieRod, { units }: LengthFormat): string {
  const { end, move, rmsBefore, rmsAfter, mostAfter, atEndOfSearch } = flat;
  const fine: LengthFormat = { units, fraction: 32 };
  const way = `${move > 0 ? "up" : "down"} ${amountWords(move, fine)}`;
  const axis = end === "outer" ? " along the steering axis" : "";
  const more = atEndOfSearch ? " (the end of the range looked through)" : "";
  const pair = end === "inner" ? "Both inner tie rod ends" : "Both outer tie rod ends";
  return `${pair} moved ${way}${axis}${more} are flattest: ${formatAngle(rmsBefore, 3)} becomes ${formatAngle(rmsAfter, 3)} root mean square, ${formatAngle(Math.abs(mostAfter), 3)} at most.`;
}

function turningLines({ turning }: GeometryReport, model: Model, format: LengthFormat): string[] {
  if (model.setup.truck.wheelbase === null)
    return ["Ackermann and turning circle: give truck.wheelbase to have them."];
  return (["left", "right"] as const).map((way) => {
    const circle = turning[way];
    if (circle === null)
      return `Turning ${way}: full lock is out of reach, or the outer wheel does not turn that way.`;
    const curb = formatLength(CURB_HEIGHT, { units: format.units });
    return `Turning ${way} at full lock: ${feet(circle.curbToCurb, format)} curb to curb (curbs up to ${curb}), at least ${feet(circle.wallToWall, format)} wall to wall (${circle.wallBy}); bumper and corners that are not in the setup swing wider.`;
  });
}

/** `38.2 ft`, or `11.64 m`. */
function feet(mm: number, { units }: LengthFormat): string {
  return units === "in" ? `${(mm / MM_PER_INCH / 12).toFixed(1)} ft` : `${(mm / 1000).toFixed(2)} m`;
}
