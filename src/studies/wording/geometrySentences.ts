import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { GeometryReport } from "../geometry/geometryReport.ts";
import { CURB_HEIGHT } from "../geometry/turningCircle.ts";
import type { Model } from "../model/model.ts";
import { bumpSteerFacts, bumpSteerText, circleText, flatText } from "./geometryTexts.ts";
import { angleText, formatOf } from "./lengths.ts";

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
  const sides = [bumpSteer.left, bumpSteer.right];
  const facts = bumpSteerFacts(sides);
  const rms = facts.kind === "most" ? `; ${angleText(facts.of.rms, 2)} root mean square over the range` : "";
  return `Bump steer: ${bumpSteerText(sides, format)}${rms}.`;
}

/** Both ends, left and right, are moved alike. */
function flatLines({ flatInner, flatOuter }: GeometryReport, format: LengthFormat): string[] {
  return [flatInner, flatOuter].flatMap((flat) => {
    if (flat === null) return [];
    const rms = `${angleText(flat.rmsBefore, 3)} root mean square becomes ${angleText(flat.rmsAfter, 3)}`;
    return [`Least bump steer, each side: ${flatText(flat, format)}; ${rms}.`];
  });
}

function turningLines({ turning }: GeometryReport, model: Model, format: LengthFormat): string[] {
  if (model.setup.truck.wheelbase === null)
    return ["Ackermann and turning circle: give truck.wheelbase to have them."];
  const [left, right] = (["left", "right"] as const).map((way) => turnWords(turning[way], format));
  if (left === right) return [`Turning either way${left}`];
  return [`Turning left${left}`, `Turning right${right}`];
}

function turnWords(circle: GeometryReport["turning"]["left"], format: LengthFormat): string {
  if (circle === null) return ": full lock is out of reach, or the outer wheel does not turn that way.";
  const curb = formatLength(CURB_HEIGHT, { units: format.units });
  return ` at full lock: ${circleText(circle.curbToCurb, format)} curb to curb (curbs up to ${curb}), at least ${circleText(circle.wallToWall, format)} wall to wall (${circle.wallBy}); bumper and corners that are not in the setup swing wider.`;
}
