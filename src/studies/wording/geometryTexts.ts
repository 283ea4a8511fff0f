import type { LengthUnit } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import type { BumpSteer } from "../geometry/bumpSteer.ts";
import type { FlatTieRod } from "../geometry/flatTieRod.ts";
import type { SteeringRatio } from "../geometry/steeringRatio.ts";
import { amountText, angleText, lengthText } from "./lengths.ts";
import { travelText } from "./poseWords.ts";

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

/** What both wheels' bump steer comes to over the travel. */
export type BumpSteerFacts =
  | { readonly kind: "none" }
  | { readonly kind: "short" }
  /** The wheel that toes more. */
  | { readonly kind: "most"; readonly of: BumpSteer };

/** @param sides null = that wheel cannot follow the whole travel */
export function bumpSteerFacts(sides: readonly (BumpSteer | null)[]): BumpSteerFacts {
  const [first, ...rest] = sides.flatMap((one) => one ?? []);
  if (first === undefined || rest.length + 1 < sides.length) return { kind: "short" };
  const of = rest.reduce(
    (most, next) => (Math.abs(next.most.toeChange) > Math.abs(most.most.toeChange) + 1e-12 ? next : most),
    first,
  );
  return Math.abs(of.most.toeChange) < 1e-9 ? { kind: "none" } : { kind: "most", of };
}

/** Both wheels' bump steer by the one that toes more. */
export function bumpSteerText(sides: readonly (BumpSteer | null)[], format: LengthFormat): string {
  const facts = bumpSteerFacts(sides);
  switch (facts.kind) {
    case "short":
      return "the wheels cannot follow the whole travel";
    case "none":
      return "none";
    case "most": {
      const { travel, toeChange } = facts.of.most;
      return `toes ${toeChange > 0 ? "in" : "out"} by up to ${angleText(Math.abs(toeChange), 2)}, at ${travelText(travel, format)}`;
    }
  }
}

/** Where a tie rod end has the least bump steer, and what remains: `lower it 1/4 in (0.14° remains)`. Ends are moved in thirty-seconds. */
export function flatText(flat: FlatTieRod | null, { units }: LengthFormat): string {
  if (flat === null) return "–";
  const { end, move, mostAfter, atEndOfSearch } = flat;
  const fine: LengthFormat = units === "in" ? { units, fraction: 32 } : { units };
  const axis = end === "outer" ? " along the steering axis" : "";
  const far = atEndOfSearch ? "nothing past that was looked at; " : "";
  return `${move > 0 ? "raise" : "lower"} the ${end} tie rod end ${amountText(move, fine)}${axis} (${far}${angleText(Math.abs(mostAfter), 2)} remains)`;
}
