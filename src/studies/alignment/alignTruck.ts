import type { Model } from "../model/model.ts";
import { alignSide, type SideAlignment } from "./alignSide.ts";
import { type BothSides, type BothSidesResult, bothSides } from "./bothSides.ts";

/** A truck aligned at one stance, with what is read and left over. mm and radians. */
export type TruckAlignment = BothSides<SideAlignment>;

export type AlignmentResult = BothSidesResult<SideAlignment>;

/** Solves both wheels for the setup's `alignment.targets`; without targets the toe as bolted on is all that is asked. */
export function alignTruck(model: Model): AlignmentResult {
  return bothSides(model, alignSide);
}
