import type { EnvelopeChoice } from "../state/stageSettings.ts";

/** What an envelope can be swept over, as a person picks it. */
export const ENVELOPES: readonly { readonly choice: EnvelopeChoice; readonly label: string }[] = [
  { choice: "whole", label: "all heights, all steering" },
  { choice: "stance", label: "this height, all steering" },
  { choice: "straight", label: "all heights, straight ahead" },
];
