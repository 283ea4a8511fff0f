import type { ModelAsk } from "../../studies/alignment/modelAsked.ts";
import type { SectionClearance, SectionFigure } from "../../studies/section/envelopeSection.ts";
import type { SectionPlane } from "../../studies/section/sectionPlane.ts";
import type { DrawnSide } from "./envelopeMessages.ts";

export interface SectionCut {
  readonly plane: SectionPlane;
  readonly travel: number;
  readonly steer: number;
}

/** A truck and its envelope are handed over once and asked about from then on. */
export type SectionRequest =
  | ({ readonly kind: "truck" } & ModelAsk)
  | { readonly kind: "envelope"; readonly sides: readonly DrawnSide[] }
  | { readonly kind: "cut"; readonly id: number; readonly cut: SectionCut };

/** One thing cut, as SVG paths in sheet coordinates (see `sheetAxes`), mm. */
export interface DrawnFigure {
  readonly kind: SectionFigure["kind"];
  readonly name: string;
  readonly outline: string;
  readonly hatch: string;
}

export interface DrawnSection {
  readonly plane: SectionPlane;
  readonly figures: readonly DrawnFigure[];
  /** The part nearest to the envelope in the plane; null where there is none. */
  readonly nearest: SectionClearance | null;
}

export type SectionAnswer =
  | { readonly kind: "cut"; readonly id: number; readonly drawn: DrawnSection }
  | { readonly kind: "failed"; readonly id: number; readonly message: string };
