import type { Quantity } from "../../units/quantity.ts";
import type { KeyPath } from "./keyPath.ts";

/**
 * How well one number of the setup is known, as typed beside it (`"5 5/8 ± 1/16"`): one standard deviation. Answers that
 * hold the numbers for exact pass it over.
 */
export interface NumberWithin {
  /** The number's place in the document with its variant. */
  readonly path: KeyPath;
  /** What the number is: mm, radians, the unit used inside of a quantity, or plain. */
  readonly kind: "length" | "angle" | "number" | Quantity;
  /** 0 or more, in the same unit. */
  readonly within: number;
}

/** How far off numbers may be that nobody told the uncertainty of; one standard deviation each, mm and radians. */
export interface OddsSetup {
  /** Each coordinate of a measured point. */
  readonly points: number;
  /** Of a tire by its size; null = from the tire standard's limits. */
  readonly tire: { readonly sectionWidth: number | null; readonly diameter: number | null };
  /** Of the knuckle as built; null = from the jig's tolerances. */
  readonly knuckle: {
    readonly span: number | null;
    readonly pinHeight: number | null;
    readonly pinLead: number | null;
    readonly pinAngle: number | null;
    readonly hubFace: number | null;
    readonly steeringArm: number | null;
  };
}
