import { isSamePart } from "../../studies/reports/gapsAt.ts";
import type { Truck } from "./truck.ts";
import type { ActionContext, ViewActions } from "./workbenchActions.ts";

export function viewActions({ set }: ActionContext): ViewActions {
  return {
    setTravel: (mm) => set((s) => ({ travel: s.truck ? clampTravel(s.truck, mm) : 0 })),
    setSteer: (share) => set({ steer: clampSteer(share) }),
    setPose: (mm, share) =>
      set((s) => ({ travel: s.truck ? clampTravel(s.truck, mm) : 0, steer: clampSteer(share) })),
    setView: (view) => set((s) => ({ view, viewsAsked: s.viewsAsked + 1 })),
    select: (part) =>
      set(({ selection }) => ({ selection: part && isSamePart(part, selection) ? null : part })),
    setHidden: (part, isHidden) =>
      set(({ hiddenParts }) => {
        const others = hiddenParts.filter((name) => name !== part);
        return { hiddenParts: isHidden ? [...others, part] : others };
      }),
    setAligned: (isAligned) => set({ isAligned }),
    setLengths: (lengths) => set((s) => ({ preferences: { ...s.preferences, lengths } })),
    setTheme: (theme) => set((s) => ({ preferences: { ...s.preferences, theme } })),
    setPicture: (picture) => set((s) => ({ preferences: { ...s.preferences, picture } })),
    setPreferences: (preferences) => set({ preferences }),
  };
}

/** The travel inside a truck's range, mm. */
export function clampTravel(truck: Truck, mm: number): number {
  const { droop, bump } = truck.setup.travel;
  return Math.min(bump, Math.max(droop, mm));
}

/** The steering input inside −1 … +1. */
function clampSteer(share: number): number {
  return Math.min(1, Math.max(-1, share));
}
