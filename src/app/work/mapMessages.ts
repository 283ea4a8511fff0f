import type { ModelAsk } from "../../studies/alignment/modelAsked.ts";
import type { ClearanceMap } from "../../studies/map/clearanceMap.ts";
import type { Contour } from "../../studies/map/contours.ts";
import type { LowestTravels } from "../../studies/map/lowestTravels.ts";
import type { NoLimits, SteerLimits } from "../../studies/map/steerLimits.ts";

/** Which wheel's gaps the map shows: the worse of the two, or one of them. */
export type MapSideName = "both" | "left" | "right";

/** Lines of one side choice: where it touches, and where the allowance begins. */
export interface MapLines {
  readonly touch: readonly Contour[];
  readonly allowance: readonly Contour[];
}

/** A map ready to be drawn. */
export interface DrawnMap {
  readonly map: ClearanceMap;
  /** Gap of each cell by side choice, of what moves against each other; NaN where the linkage cannot go. */
  readonly gap: Readonly<Record<MapSideName, Float64Array>>;
  readonly lines: Readonly<Record<MapSideName, MapLines>>;
  /** What sets the border of reach, in words without a full stop; each once. */
  readonly borders: readonly string[];
  /** Where a limit of either wheel begins to be passed. */
  readonly limitBorder: readonly Contour[];
}

/** How far it can be steered at one height, and how low it can go at one steer. */
export interface PoseLimits {
  readonly travel: number;
  readonly steer: number;
  readonly steering: SteerLimits | NoLimits;
  readonly lowering: LowestTravels | NoLimits;
}

/** A truck is handed over once and asked about by its number from then on. */
export type MapRequest =
  | ({ readonly kind: "map"; readonly truckId: number } & ModelAsk)
  | { readonly kind: "limits"; readonly truckId: number; readonly travel: number; readonly steer: number };

export type MapAnswer =
  | { readonly kind: "map"; readonly truckId: number; readonly drawn: DrawnMap }
  | { readonly kind: "limits"; readonly truckId: number; readonly limits: PoseLimits }
  | { readonly kind: "failed"; readonly truckId: number; readonly message: string };
