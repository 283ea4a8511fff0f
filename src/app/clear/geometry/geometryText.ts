import type { LengthUnit } from "../../../setup/types/types.ts";
import type { BumpSteer } from "../../../studies/geometry/bumpSteer.ts";
import type { FlatTieRod } from "../../../studies/geometry/flatTieRod.ts";
import type { SteeringRatio } from "../../../studies/geometry/steeringRatio.ts";
import { amountText, angleText, lengthText } from "../../../studies/wording/lengths.ts";
import { travelText } from "../../../studies/wording/poseWords.ts";
import { degFromRad } from "../../../units/angle.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { MM_PER_INCH } from "../../../units/lengthUnits.ts";

/** mm. Farther off than this a tape has no use for it. */
const FAR = 100_000;

/** A place of the front view that may lie far away. */
export function farText(mm: number | null | undefined, format: LengthFormat): string {
  if (mm === null || mm === undefined) return "–";
  return Math.abs(mm) > FAR ? "far" : lengthText(mm, format);
}

/** A circle: `38.2 ft`, `11.64 m`. */
export function circleText(mm: number, { units }: LengthFormat): string {
  return units === "in" ? `${(mm / MM_PER_INCH / 12).toFixed(1)} ft` : `${(mm / 1000).toFixed(2)} m`;
}

/** How far the wheels turn for the linkage's input: `1.02°/° of pitman arm`, `9.2°/in of rack`. */
export function ratioText({ type, mean }: SteeringRatio, units: LengthUnit): string {
  if (type === "pitman") return `${mean.toFixed(2)}° per ° of pitman arm`;
  const per = units === "in" ? MM_PER_INCH : 10;
  return `${degFromRad(mean * per).toFixed(1)}° per ${units === "in" ? "in" : "10 mm"} of rack`;
}

/** Both wheels' bump steer by the one that toes more. */
export function bumpSteerText(sides: readonly (BumpSteer | null)[], format: LengthFormat): string {
  const found = sides.filter((one) => one !== null);
  if (found.length < sides.length) return "the wheels cannot follow the whole travel";
  const worst = found.reduce((most, next) =>
    Math.abs(next.most.toeChange) > Math.abs(most.most.toeChange) + 1e-12 ? next : most,
  );
  const { travel, toeChange } = worst.most;
  if (Math.abs(toeChange) < 1e-9) return "none";
  return `toes ${toeChange > 0 ? "in" : "out"} by up to ${angleText(Math.abs(toeChange), 2)}, at ${travelText(travel, format)}`;
}

/** Where a tie rod end is flattest and what is left; ends are moved in thirty-seconds. */
export function flatText(flat: FlatTieRod | null, { units }: LengthFormat): string {
  if (flat === null) return "–";
  const fine: LengthFormat = units === "in" ? { units, fraction: 32 } : { units };
  const way = `${flat.move > 0 ? "up" : "down"} ${amountText(flat.move, fine)}`;
  const end = flat.atEndOfSearch ? " (as far as was looked)" : "";
  return `${way}${end}; ${angleText(Math.abs(flat.mostAfter), 2)} at most is left`;
}
