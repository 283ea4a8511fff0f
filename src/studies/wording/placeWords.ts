import type { Vec3 } from "../../geometry/vec.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { amountText } from "./amountText.ts";

/** mm. Nearer to the axle line than this is at the axle line. */
const AT_AXLE = 25.4 / 16;

/** Where a point is, the way someone under the truck would find it. @param floor height of the floor now, mm */
export function placeWords(point: Vec3, floor: number, format: LengthFormat): string {
  const [x, , z] = point;
  const along =
    Math.abs(x) < AT_AXLE
      ? "at the axle line"
      : `${amountText(x, format)} ${x > 0 ? "ahead of" : "behind"} the axle line`;
  return `${along}, ${amountText(z - floor, format)} above the floor`;
}
