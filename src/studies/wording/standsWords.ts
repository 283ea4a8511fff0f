import type { LengthFormat } from "../../units/formatLength.ts";
import { floorAt } from "../floor/floorAt.ts";
import type { LowestTravels } from "../map/lowestTravels.ts";
import type { Model } from "../model/model.ts";
import { belowWords, clearanceText } from "./floorWords.ts";
import { heightAgainst, inputWords, lipName } from "./poseWords.ts";
import { safeLength } from "./safeSide.ts";

/**
 * How a truck stands at a pose, by what a shop measures: `wheel 3 3/16 in over driving, straight ahead; off the floor: fender
 * lip over the axle 26 1/2 in, frame 11 3/4 in, engine crossmember (lowest) 2 1/2 in`. Steered, the floor tilts under the wheels, so
 * these differ a little. The lip and the frame where the setup says where they are measured, no higher than they are, and the
 * lowest of the points that may drag, called the lowest where it is below lip and frame too; of two sides the lower one.
 * @param travel mm @param steer −1 … +1 @param told mm, the travel as it is told beside this, where that is rounded to one side
 */
export function standsText(
  travel: number,
  steer: number,
  model: Model,
  format: LengthFormat,
  told = travel,
): string {
  const height = `${heightAgainst(told, model.setup, format)}, ${inputWords(steer)}`;
  const floor = floorAt(model, { left: travel, right: travel }, steer);
  if (floor === null) return height;
  const { lip, frame, clearances } = floor;
  const [lowest] = [...clearances].sort((a, b) => a.clearance - b.clearance);
  const measured = [
    ...(lip ? [[lipName(model.setup), Math.min(lip.left, lip.right)] as const] : []),
    ...(frame ? [["frame", Math.min(frame.left, frame.right)] as const] : []),
  ];
  const isLowest = lowest !== undefined && measured.every(([, over]) => lowest.clearance < over);
  const over = [
    ...measured,
    ...(lowest ? [[isLowest ? `${lowest.name} (lowest)` : lowest.name, lowest.clearance] as const] : []),
  ].map(([name, by]) =>
    by < 0 ? `${name} in the floor by ${belowWords(by, format)}` : `${name} ${clearanceText(by, format)}`,
  );
  return over.length === 0 ? height : `${height}; off the floor: ${over.join(", ")}`;
}

/**
 * The same where a way down ends, its travel told as the way tells it: where the allowance ends, as far down as a shop would set it;
 * where it ends nothing before something touches, there. "" where it is not known where that is. @param isKept the first of the two
 */
export function lowestStandsText(
  { touch, allowance, steer }: LowestTravels,
  isKept: boolean,
  model: Model,
  format: LengthFormat,
): string {
  const { either } = isKept ? allowance : touch;
  return either.stop === "unproven"
    ? ""
    : standsText(either.at, steer, model, format, safeLength(either.at, "down", format));
}
