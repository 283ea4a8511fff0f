import { createStore } from "zustand/vanilla";
import type { Result, SetupIssue } from "../../setup/types.ts";
import type { CheckReport } from "../../studies/check.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { type Truck, truckOf } from "./truck.ts";

/** From where the stage is looked at. */
export type ViewName = "three-quarter" | "front" | "side" | "top";

/** A body part on one side of the truck. */
export interface PartOnSide {
  readonly part: string;
  readonly side: Side;
}

/** The answer over the whole range of travel and steering, which takes a moment. */
export type CheckState =
  | { readonly status: "checking" }
  | { readonly status: "done"; readonly report: CheckReport }
  | { readonly status: "failed"; readonly message: string };

export interface WorkbenchState {
  /** The text last opened, as typed, and the name of its file. */
  readonly text: string;
  readonly file: string;
  /** The variant asked for; null = the setup as it stands. */
  readonly variant: string | null;
  /** mm, + = bump; within the truck's range. */
  readonly travel: number;
  /** −1 … +1 of full lock, + = left turn. */
  readonly steer: number;
  readonly view: ViewName;
  /** How often a view was asked for: asking for the same one again sets the camera straight again. */
  readonly viewsAsked: number;
  /** The part pointed out in the list and on the stage. */
  readonly selection: PartOnSide | null;

  /** What keeps the text and variant asked for from being shown; empty when they are. */
  readonly issues: readonly SetupIssue[];
  /** The last truck that went together: what is shown. null before there was one. */
  readonly truck: Truck | null;
  /** The answer for `truck`. */
  readonly check: CheckState;
}

export interface WorkbenchActions {
  /** Opens a setup. One that cannot be shown leaves the last good truck in place and says why in `issues`. */
  openText(text: string, file: string): void;
  /** Refuses a file that could not even be read as text; the truck stays. */
  refuse(issue: SetupIssue): void;
  dismissIssues(): void;
  chooseVariant(variant: string | null): void;
  setTravel(mm: number): void;
  setSteer(share: number): void;
  setPose(mm: number, share: number): void;
  setView(view: ViewName): void;
  /** Selecting what is already selected lets go of it. */
  select(part: PartOnSide | null): void;
  /** Only for whoever runs the check: the answer for `truck`; dropped when another truck is shown by now. */
  setCheck(truck: Truck, check: CheckState): void;
}

export type WorkbenchStore = ReturnType<typeof createWorkbenchStore>;

/** The workbench's store, without React: inputs, the truck made from them, and a handle to the check's answer. */
export function createWorkbenchStore(text: string, file: string) {
  return createStore<WorkbenchState & WorkbenchActions>()((set, get) => {
    /** Trucks of the text shown, by variant, so that switching back costs nothing and keeps identities. */
    let known = new Map<string | null, Truck>();

    const make = (fromText: string, fromFile: string, variant: string | null): Result<Truck> => {
      const before = known.get(variant);
      if (before) return { ok: true, value: before };
      const made = truckOf(fromText, fromFile, variant);
      if (made.ok) known.set(variant, made.value);
      return made;
    };
    /** What changes with the truck, whatever else does. */
    const showing = (truck: Truck, travel: number): Partial<WorkbenchState> =>
      truck === get().truck
        ? { issues: [] }
        : { truck, issues: [], travel: clampTravel(truck, travel), check: { status: "checking" } };

    const opening = make(text, file, null);
    return {
      text,
      file,
      variant: null,
      travel: 0,
      steer: 0,
      view: "three-quarter",
      viewsAsked: 0,
      selection: null,
      issues: opening.ok ? [] : opening.issues,
      truck: opening.ok ? opening.value : null,
      check: { status: "checking" },

      openText(nextText, nextFile) {
        const before = known;
        known = new Map();
        const made = make(nextText, nextFile, null);
        if (!made.ok) {
          known = before;
          set({ issues: made.issues });
          return;
        }
        set({
          ...{ text: nextText, file: nextFile, variant: null, steer: 0, selection: null },
          ...showing(made.value, 0),
        });
      },
      refuse: (issue) => set({ issues: [issue] }),
      dismissIssues: () => set({ issues: [] }),
      chooseVariant(variant) {
        const made = make(get().text, get().file, variant);
        if (!made.ok) {
          set({ issues: made.issues });
          return;
        }
        set({ variant, ...showing(made.value, get().travel) });
      },
      setTravel: (mm) => set((s) => ({ travel: s.truck ? clampTravel(s.truck, mm) : 0 })),
      setSteer: (share) => set({ steer: clampSteer(share) }),
      setPose: (mm, share) =>
        set((s) => ({ travel: s.truck ? clampTravel(s.truck, mm) : 0, steer: clampSteer(share) })),
      setView: (view) => set((s) => ({ view, viewsAsked: s.viewsAsked + 1 })),
      select: (part) =>
        set(({ selection }) => ({ selection: part && isSamePart(part, selection) ? null : part })),
      setCheck: (truck, check) => set((s) => (s.truck === truck ? { check } : s)),
    };
  });
}

/** Whether two name the same part on the same side. */
export function isSamePart(a: PartOnSide, b: PartOnSide | null): boolean {
  return b !== null && a.part === b.part && a.side === b.side;
}

function clampTravel(truck: Truck, mm: number): number {
  const { droop, bump } = truck.setup.travel;
  return Math.min(bump, Math.max(droop, mm));
}

function clampSteer(share: number): number {
  return Math.min(1, Math.max(-1, share));
}
