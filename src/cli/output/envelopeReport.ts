import type { Envelope } from "../../studies/envelope/envelopeOf.ts";
import type { EnvelopeRange } from "../../studies/envelope/envelopeRange.ts";
import type { ReachLimit } from "../../studies/reports/reachLimits.ts";
import type { EnvelopeSection } from "../../studies/section/envelopeSection.ts";
import type { OutFormat } from "../asked/askedEnvelope.ts";

/** A file that was written. */
export interface WrittenFile {
  readonly file: string;
  readonly format: OutFormat;
  readonly units: "mm" | "m" | "in";
  readonly bytes: number;
  /** Of a surface, triangles; of a drawing, straight pieces. */
  readonly pieces: number;
}

/** What an `envelope` run did. */
export interface EnvelopeReport {
  readonly range: EnvelopeRange;
  readonly envelopes: readonly Envelope[];
  readonly section: EnvelopeSection | null;
  readonly files: readonly WrittenFile[];
  /** Joints that cannot follow somewhere in the range: the swept space ends there. */
  readonly limits: readonly ReachLimit[];
}
