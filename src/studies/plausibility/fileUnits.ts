import type { Setup } from "../../setup/types/types.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import { isUsual, type Unusual, type UsualRange } from "./unusual.ts";

/** Center plane to lower ball joint, mm: 15 to 40 in. Common practice, no source. */
const HALF_WIDTH: UsualRange = { least: 15 * MM_PER_INCH, most: 40 * MM_PER_INCH };

/** Ball joint to ball joint of the arms in height, mm: 5 to 22 in. Common practice, no source. */
const APART: UsualRange = { least: 5 * MM_PER_INCH, most: 22 * MM_PER_INCH };

/** Inches in a file that says mm, or the other way: the whole front end is 25 times too small or too large. */
export function mixedFileUnits(setup: Setup): readonly Unusual[] {
  const { upperArm, lowerArm } = setup.truck;
  const halfWidth = Math.abs(lowerArm.ballJoint[1]);
  const apart = Math.abs(upperArm.ballJoint[2] - lowerArm.ballJoint[2]);
  const factor = setup.units === "mm" ? MM_PER_INCH : 1 / MM_PER_INCH;
  const isOff = !isUsual(halfWidth, HALF_WIDTH) && !isUsual(apart, APART);
  if (!isOff || !isUsual(halfWidth * factor, HALF_WIDTH) || !isUsual(apart * factor, APART)) return [];
  return [
    {
      ...{ check: "fileUnits", kind: "length", value: halfWidth, ...HALF_WIDTH, beside: null },
      paths: [["units"], ["truck", "lowerArm", "ballJoint", 1]],
      meant: [{ slip: "unit", value: halfWidth * factor }],
    },
  ];
}
