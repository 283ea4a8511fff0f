import type { Vec3 } from "../../geometry/vec.ts";
import { ASSUMED_SIZES } from "./assumedTruck.ts";

/** Numbers of the assumed truck that no reading of a truck gives, mm and degrees, by their place in the setup. */
export const ASSUMED_VALUES: readonly (readonly [readonly string[], number | Vec3, "length" | "angle"])[] = [
  [["truck", "steering", "stroke"], 70, "length"],
  [["truck", "steering", "swing"], 35, "angle"],
  [["knuckle", "span"], 265, "length"],
  [["knuckle", "pinHeight"], 135, "length"],
  [["knuckle", "pinAngle"], 8.5, "angle"],
  [["knuckle", "hubFace"], 160, "length"],
  [["knuckle", "steeringArm"], [-150, -28, 36], "length"],
  [["wheel", "rimDiameter"], 381, "length"],
  [["wheel", "rimWidth"], ASSUMED_SIZES["wheel.lipToLip"] - 25.4, "length"],
  [["wheel", "backspacing"], ASSUMED_SIZES["wheel.backspacing"], "length"],
  [["tire", "diameter"], ASSUMED_SIZES["tire.diameter"], "length"],
  [["tire", "sectionWidth"], ASSUMED_SIZES["tire.sectionWidth"], "length"],
  [["travel", "droop"], -90, "length"],
  [["travel", "bump"], 80, "length"],
];
