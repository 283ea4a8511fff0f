import type { KeyPath } from "../types/keyPath.ts";
import type { ReadingSize } from "../types/readingTypes.ts";

/** What a line asks for, as the setup file's `readings` name it, without what was read. */
export type ReadingAsk = (
  | { readonly height: string }
  | { readonly offset: string; readonly from?: "centerline" | "frame" }
  | { readonly ahead: string }
  | { readonly between: readonly [string, string] }
  | { readonly angle: "lowerArm" | "upperArm" }
  | { readonly size: ReadingSize }
) & { readonly side?: "left" | "right" | "across" };

/** Where somebody is when a line is read; in the order of going round and under a truck. */
export const WORKSHEET_PLACES = ["outside", "wheel", "hub", "under", "moved"] as const;
export type WorksheetPlace = (typeof WORKSHEET_PLACES)[number];

/** The body part that the worksheet reads: the lip of the left front fender. */
export const LIP = "fender lip";

/** A line of the worksheet: one number to be read, into `readings` or straight into a field of the setup. */
export interface WorksheetLine {
  /** Names it in the page and in tests. */
  readonly key: string;
  readonly place: WorksheetPlace;
  readonly asks: { readonly reading: ReadingAsk } | { readonly field: KeyPath };
  /** Is on the shortest list that gives a first verdict. */
  readonly isShort: boolean;
  /** Without it a first verdict would be about another truck, however many others there are. */
  readonly isMust: boolean;
  /** Sizes that tell the same where somebody reads those instead. */
  readonly insteadBy: readonly ReadingSize[];
}

const lip = (at: number) => `body[${JSON.stringify(LIP)}].points[${at}]`;

type Rank = "must" | "short" | "full";

function line(
  place: WorksheetPlace,
  rank: Rank,
  key: string,
  asks: WorksheetLine["asks"],
  ...insteadBy: readonly ReadingSize[]
): WorksheetLine {
  return { key, place, asks, isShort: rank !== "full", isMust: rank === "must", insteadBy };
}

const reads = (reading: ReadingAsk) => ({ reading });
const fills = (...field: KeyPath) => ({ field });

/** Points of the assumed lip at which it is read: over the axle, and ahead of and behind it. */
export const LIP_STATIONS = { ahead: 1, axle: 3, behind: 5 } as const;

/**
 * What a person can reach with a tape, a plumb bob and a straightedge, in the order of going round a truck: outside with the
 * wheels on, the wheel off on the floor, the hub, under the frame, and last what has to be moved. The one list that the
 * screen, the printed form and the next reading asked for are made of.
 */
export const WORKSHEET_LINES: readonly WorksheetLine[] = [
  line("outside", "must", "tireSize", fills("tire", "size"), "tire.diameter"),
  line("outside", "short", "wheelCenterHeight", reads({ height: "wheelCenter" })),
  line("outside", "must", "lipHeight", reads({ height: lip(LIP_STATIONS.axle) })),
  line("outside", "must", "lipOffset", reads({ offset: lip(LIP_STATIONS.axle) })),
  line("outside", "full", "lipFrontHeight", reads({ height: lip(LIP_STATIONS.ahead) })),
  line("outside", "full", "lipFrontOffset", reads({ offset: lip(LIP_STATIONS.ahead) })),
  line("outside", "full", "lipRearHeight", reads({ height: lip(LIP_STATIONS.behind) })),
  line("outside", "full", "lipRearOffset", reads({ offset: lip(LIP_STATIONS.behind) })),
  line("outside", "full", "rimToLip", reads({ between: ["rimTop", lip(LIP_STATIONS.axle)] })),
  line("outside", "full", "track", reads({ size: "track" })),
  line("wheel", "must", "rimWidth", fills("wheel", "rimWidth"), "wheel.lipToLip"),
  line("wheel", "must", "backspacing", fills("wheel", "backspacing"), "wheel.backspacing"),
  line("hub", "must", "hubFace", fills("knuckle", "hubFace"), "track"),
  line("hub", "full", "pinAngle", fills("knuckle", "pinAngle")),
  line("hub", "short", "span", reads({ between: ["lowerArm.ballJoint", "upperArm.ballJoint"] })),
  line("hub", "full", "rodToLower", reads({ between: ["tieRodOuter", "lowerArm.ballJoint"] })),
  line("hub", "full", "rodToUpper", reads({ between: ["tieRodOuter", "upperArm.ballJoint"] })),
  line("under", "short", "lowerJointHeight", reads({ height: "lowerArm.ballJoint" })),
  line("under", "short", "lowerJointOffset", reads({ offset: "lowerArm.ballJoint" })),
  line("under", "short", "lowerFrontHeight", reads({ height: "lowerArm.frontPivot" })),
  line("under", "short", "lowerFrontOffset", reads({ offset: "lowerArm.frontPivot" })),
  line("under", "full", "lowerRearHeight", reads({ height: "lowerArm.rearPivot" })),
  line("under", "full", "upperJointOffset", reads({ offset: "upperArm.ballJoint" })),
  line("under", "full", "upperFrontHeight", reads({ height: "upperArm.frontPivot" })),
  line("under", "full", "upperFrontOffset", reads({ offset: "upperArm.frontPivot" })),
  line("under", "full", "upperRearHeight", reads({ height: "upperArm.rearPivot" })),
  line("under", "full", "rodInnerHeight", reads({ height: "steering.innerEnd" })),
  line("under", "full", "rodInnerOffset", reads({ offset: "steering.innerEnd" })),
  line("under", "full", "rodInnerAhead", reads({ ahead: "steering.innerEnd" })),
  line("moved", "full", "bump", fills("travel", "bump")),
];

/** Lines of the shortest list that gives a first verdict. */
export const SHORT_LINES: readonly WorksheetLine[] = WORKSHEET_LINES.filter(({ isShort }) => isShort);
