import type { LengthFormat } from "../../units/formatLength.ts";
import type { StageSettings } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import type { WorkbenchState } from "../state/workbenchState.ts";
import type { ScreenPoint } from "./overlay/gapMark.ts";
import type { Projection } from "./overlay/layOutDimension.ts";

/** A label that stands on the picture already: its middle and width, pixels. */
export type PlacedLabel = ScreenPoint & { readonly width: number };

/** What a layer writes from, each time a frame is drawn. */
export interface OverlayView extends Projection {
  readonly truck: Truck;
  readonly state: WorkbenchState;
  readonly settings: StageSettings;
  readonly format: LengthFormat;
  /** Of the picture, pixels. */
  readonly width: number;
  readonly height: number;
  /** Labels of the layers written before. */
  readonly taken: PlacedLabel[];
  /** Lines of the dimensions written before, each of two or more points. */
  readonly lines: (readonly ScreenPoint[])[];
}

/** One sort of thing that is written over the picture. It owns its elements. */
export interface OverlayLayer {
  write(view: OverlayView): void;
}
