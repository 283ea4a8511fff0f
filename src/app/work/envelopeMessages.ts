import type { ModelAsk } from "../../studies/alignment/modelAsked.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { EnvelopeChoice } from "../state/stageSettings.ts";

/** Which poses are swept; `travel` is the height of `stance`, mm. */
export interface EnvelopeAsk {
  readonly choice: EnvelopeChoice;
  readonly travel: number;
}

export interface EnvelopeRequest extends EnvelopeAsk, ModelAsk {
  /** Where bands of distance end, mm, rising. */
  readonly edges: readonly number[];
}

/** One side's envelope ready to be drawn; vehicle axes, mm. */
export interface DrawnSide {
  readonly side: Side;
  readonly positions: Float32Array;
  readonly triangles: Uint32Array;
  /** From each vertex to the nearest body part. */
  readonly distances: Float32Array;
  /** Where the distance is an edge of a band: segments for each edge. */
  readonly lines: readonly Float32Array[];
}

export interface DrawnEnvelope extends EnvelopeAsk {
  readonly edges: readonly number[];
  readonly sides: readonly DrawnSide[];
}

export type EnvelopeAnswer =
  | { readonly kind: "progress"; readonly share: number }
  | { readonly kind: "done"; readonly drawn: DrawnEnvelope }
  | { readonly kind: "failed"; readonly message: string };
