import type { TreeSizes } from "./envelopeTree.ts";
import type { FitLimits } from "./fittedSurface.ts";

export type EnvelopePreset = "fine" | "preview";

/** How an envelope is worked out, and what it then keeps; mm. */
export interface PresetSizes extends TreeSizes {
  /** What triangles are held to where they are looked at; null: they are not. */
  readonly fit: FitLimits | null;
  /** Most that a point of the ring moves from one tabled pose to the next. */
  readonly spacing: number;
  /** About a pose that promises no less distance than this is not searched. */
  readonly worth: number;
  /** Step of the tabled section. */
  readonly sectionStep: number;
  /** Kept: the ring lies inside but for this; the surface is nowhere farther out than this. */
  readonly inside: number;
  readonly outside: number;
}

/** The surface stands off by `offset`, in the middle of what is allowed, so that chords may err either way. */
export const ENVELOPE_PRESETS: Readonly<Record<EnvelopePreset, PresetSizes>> = {
  fine: {
    least: 2,
    most: 16,
    bend: 0.3,
    offset: 0.6,
    fit: { low: 0.05, high: 1.15 },
    spacing: 20,
    worth: 0.1,
    sectionStep: 0.5,
    inside: 0.5,
    outside: 1.5,
  },
  preview: {
    least: 8,
    most: 32,
    bend: 1.5,
    offset: 1.5,
    fit: null,
    spacing: 40,
    worth: 1,
    sectionStep: 1,
    inside: 3,
    outside: 8,
  },
};
