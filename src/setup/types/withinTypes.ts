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
