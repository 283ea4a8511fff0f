import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { SectionPlane } from "../../studies/section/outline.ts";
import type { Side } from "../../suspension/frontEnd.ts";

/** Which poses the envelope on the stage is swept over. */
export type EnvelopeChoice = "whole" | "stance" | "straight";

/** The truck drawn beside the one shown: one of its variants, or the setup below them (null). */
export interface GhostChoice {
  readonly variant: string | null;
}

/** What is being played: travel from end to end, or the steering from lock to lock. */
export type Play = "travel" | "steer";

/** What the stage shows beside the truck; no part of any setup, and gone with the page. */
export interface StageSettings {
  /** The wheel that the view from the wheel well looks at, and that dimensions are drawn on. */
  readonly side: Side;
  readonly hasLabels: boolean;
  readonly hasDimensions: boolean;
  /** Points of the setup can be moved in the picture. */
  readonly hasHandles: boolean;
  /** Instant centers, roll center and steering axes, where the truck is seen from the front. */
  readonly hasCenters: boolean;
  /** Cones of ball joints, where the setup limits them. */
  readonly hasJoints: boolean;
  /** Air springs and shocks, where the setup says where they are mounted. */
  readonly hasSprings: boolean;
  /** Body roll over the floor, radians, + = left side up; the stage alone shows it. */
  readonly roll: number;
  readonly ghost: GhostChoice | null;
  /** Share of the picture's width, from its left, in which the ghost stands instead of the truck; null = an outline over it. */
  readonly wipe: number | null;
  /** What is swept, and the height there was when it was asked for, mm. */
  readonly envelope: { readonly choice: EnvelopeChoice; readonly travel: number } | null;
  /** Cuts the truck; what stands before it, as seen by the eye, is left out. */
  readonly section: SectionPlane | null;
  /** The knuckle drawn alone is cut along its pin and steering axis. */
  readonly isCutOpen: boolean;
  readonly play: Play | null;
  /** An example that is seen for the first time moves by itself to its worst pose. */
  readonly isShownOnce: boolean;
  /** The picture and what moves it fill the window. */
  readonly isFilled: boolean;
}

export const stageSettings = createStore<StageSettings>()(() => ({
  side: "left",
  hasLabels: true,
  hasDimensions: false,
  hasHandles: false,
  hasCenters: false,
  hasJoints: true,
  hasSprings: true,
  roll: 0,
  ghost: null,
  wipe: null,
  envelope: null,
  section: null,
  isCutOpen: false,
  play: null,
  isShownOnce: false,
  isFilled: false,
}));

/** Changes some of them. */
export const setStage = stageSettings.setState;

/** Follows them. The selector must give a primitive or something that already existed. */
export function useStage<T>(selector: (settings: StageSettings) => T): T {
  return useStore(stageSettings, selector);
}
