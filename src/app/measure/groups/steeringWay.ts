import type { SteeringSetup } from "../../../setup/types/types.ts";
import { degFromRad } from "../../../units/angle.ts";
import { type FileUnits, MM_PER_INCH, mmFromInches } from "../../../units/lengthUnits.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";

/** mm. A pitman arm about as long as most are (common practice, no source); to be measured. */
const PITMAN_LENGTH = mmFromInches(6);

/**
 * A steering of the other type to start from, as the file holds it: the same inner tie rod ends and about the same way to
 * lock. Pitman and idler arms reach forward from the inner ends to upright shafts; where they are has to be measured.
 */
export function steeringOfType(
  type: SteeringSetup["type"],
  steering: SteeringSetup,
  units: FileUnits,
): object {
  const text = (mm: number) => {
    const grid = units === "in" ? MM_PER_INCH / 16 : 1;
    return plainLengthText(Math.round(mm / grid) * grid, units);
  };
  const [x, y, z] = steering.innerEnd;
  const innerEnd = [text(x), text(y), text(z)];
  if (steering.type === type) return { ...steering, innerEnd };
  if (steering.type === "pitman") {
    return { type: "rack", innerEnd, stroke: text(PITMAN_LENGTH * Math.sin(steering.swing)) };
  }
  const arm = (side: 1 | -1) => ({
    pivot: [text(x + PITMAN_LENGTH), text(side * y), text(z)],
    end: [text(x), text(side * y), text(z)],
  });
  const swing = degFromRad(Math.asin(Math.min(0.9, steering.stroke / PITMAN_LENGTH)));
  return { type: "pitman", innerEnd, swing: Number(swing.toFixed(1)), pitman: arm(1), idler: arm(-1) };
}
