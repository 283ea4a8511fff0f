import { airStateAt } from "../../../studies/air/airState.ts";
import { shockAt } from "../../../studies/curves/shockAt.ts";
import { ackermannAt } from "../../../studies/geometry/ackermannAt.ts";
import type { Side } from "../../../suspension/frontEnd.ts";
import {
  type FrontViewPlace,
  instantCenter,
  type RollCenter,
  rollCenter,
} from "../../../suspension/rollCenter.ts";
import { type SidePose, solvePose } from "../../../suspension/solvePose.ts";
import { wheelMotion } from "../../../suspension/wheelMotion.ts";
import type { Measure } from "../../parts/plotNumbers.ts";
import type { Truck } from "../../state/truck.ts";
import { STRAIGHT_AHEAD } from "./placeText.ts";

/** One curve of a plot over travel or steering: at an x (mm, or steer) of a truck, exactly. */
export interface CurveKind {
  readonly name: string;
  readonly read: (truck: Truck, x: number) => number | null;
}

/** What can be plotted of a truck. */
export interface PlotKind {
  readonly id: string;
  readonly title: string;
  /** What + means. */
  readonly note: string;
  /** Where else of the pose it stands, which the slides do not move; null = there it is the same anywhere. */
  readonly stands: string | null;
  readonly over: "travel" | "steer";
  readonly measure: Measure;
  /** Its name among the definitions. */
  readonly of: string;
  /** What its slope is called; default the title's own word with “change”. */
  readonly slope?: string;
  readonly isWild?: boolean;
  /** One curve or two: of the left wheel, and of the right where it differs. */
  readonly curves: readonly CurveKind[];
  /** Whether the truck says what it takes. Default always. */
  readonly isOf?: (truck: Truck) => boolean;
}

/** A number of one wheel's pose over travel, straight ahead. */
function alongTravel(read: (pose: SidePose) => number): readonly CurveKind[] {
  return [{ name: "left", read: (truck, travel) => wheelAt(truck, travel, 0, "left", read) }];
}

/** The same of both wheels over steering, at the height as measured. */
function alongSteer(read: (pose: SidePose) => number): readonly CurveKind[] {
  return (["left", "right"] as const).map((side) => ({
    name: side,
    read: (truck, steer) => wheelAt(truck, 0, steer, side, read),
  }));
}

function wheelAt(
  { model }: Truck,
  travel: number,
  steer: number,
  side: Side,
  read: (pose: SidePose) => number,
): number | null {
  const pose = solvePose(model.frontEnd, travel, steer);
  return pose.ok ? read(pose[side]) : null;
}

/** mm. An instant center farther off than this is as good as at infinity. */
const FAR = 20_000;

function instantCenterAt({ model }: Truck, travel: number): FrontViewPlace | null {
  const motion = wheelMotion(model.frontEnd, "left", travel, 0);
  const center = motion && instantCenter(motion);
  return center !== null && Math.hypot(center.y, center.z) < FAR ? center : null;
}

/** Both wheels alike. Null where their force lines do not cross. */
function rollCenterAt({ model }: Truck, travel: number): RollCenter | null {
  return rollCenter(model.frontEnd, { left: travel, right: travel }, 0);
}

const hasSpring = ({ setup }: Truck) => setup.airSpring !== null;
const hasShock = ({ setup }: Truck) => (setup.limits?.shock ?? null) !== null;
const hasRate = (truck: Truck) => (airStateAt(truck.model, "left", 0)?.wheelRate ?? null) !== null;

/** A kind in one of the two lists, which say the rest. */
type Listed = Omit<PlotKind, "over" | "stands"> & {
  /** Steering changes nothing of it. */
  readonly isOfTravelAlone?: boolean;
};

const OVER_TRAVEL: readonly Listed[] = [
  {
    id: "camber",
    of: "camber",
    title: "Camber over travel",
    measure: "angle",
    slope: "camber gain",
    note: "+ = leans out at the top",
    curves: alongTravel((pose) => pose.camber),
  },
  {
    id: "toe",
    of: "bump steer",
    title: "Toe over travel (bump steer)",
    measure: "angle",
    slope: "bump steer",
    note: "each wheel; + = toe-in",
    curves: alongTravel((pose) => pose.toe),
  },
  {
    id: "caster",
    of: "caster",
    title: "Caster over travel",
    measure: "angle",
    note: "+ = axis leans back at the top",
    curves: alongTravel((pose) => pose.caster),
  },
  {
    id: "kingpin",
    of: "kingpin inclination",
    title: "Kingpin inclination over travel",
    measure: "angle",
    note: "+ = axis leans inboard at the top",
    curves: alongTravel((pose) => pose.kingpinInclination),
  },
  {
    id: "scrub",
    of: "scrub radius",
    title: "Scrub radius over travel",
    measure: "length",
    note: "+ = patch outboard of the axis",
    curves: alongTravel((pose) => pose.scrubRadius),
  },
  {
    id: "trail",
    of: "mechanical trail",
    title: "Mechanical trail over travel",
    measure: "length",
    note: "+ = patch behind the axis",
    curves: alongTravel((pose) => pose.mechanicalTrail),
  },
  {
    id: "half-track",
    of: "half track",
    title: "Half track over travel",
    measure: "length",
    note: "centerline to contact patch",
    curves: alongTravel((pose) => Math.abs(pose.contactPatch[1])),
  },
  {
    id: "roll-center",
    of: "roll center",
    title: "Roll center height over travel",
    measure: "length",
    note: "+ = above the floor; both wheels alike",
    curves: [{ name: "both wheels", read: (truck, travel) => rollCenterAt(truck, travel)?.height ?? null }],
  },
  {
    id: "instant-center",
    of: "instant center",
    title: "Instant center height over travel",
    measure: "length",
    isWild: true,
    note: "left wheel, above the floor as measured",
    curves: [{ name: "left", read: (truck, travel) => instantCenterAt(truck, travel)?.z ?? null }],
  },
  {
    id: "instant-center-y",
    of: "instant center",
    title: "Instant center sideways over travel",
    measure: "length",
    isWild: true,
    note: "left wheel; + = left of the centerline, − = beyond it",
    curves: [{ name: "left", read: (truck, travel) => instantCenterAt(truck, travel)?.y ?? null }],
  },
  {
    id: "motion-ratio",
    isOfTravelAlone: true,
    of: "motion ratio",
    title: "Motion ratio over travel",
    measure: "ratio",
    note: "how much it shortens per wheel travel",
    curves: [
      {
        name: "air spring",
        read: ({ model }, travel) => airStateAt(model, "left", travel)?.motionRatio ?? null,
      },
      { name: "shock", read: ({ model }, travel) => shockAt(model, "left", travel)?.motionRatio ?? null },
    ],
    isOf: (truck) => hasSpring(truck) || hasShock(truck),
  },
  {
    id: "wheel-rate",
    isOfTravelAlone: true,
    of: "wheel rate",
    title: "Wheel rate over travel",
    measure: "rate",
    note: "air spring closed in, carrying its corner; its steps are the load curve's",
    curves: [
      { name: "left", read: ({ model }, travel) => airStateAt(model, "left", travel)?.wheelRate ?? null },
    ],
    isOf: hasRate,
  },
  {
    id: "shock-travel",
    isOfTravelAlone: true,
    of: "shock travel",
    title: "Shock travel over wheel travel",
    measure: "length",
    note: "in from its extended length",
    curves: [{ name: "left", read: ({ model }, travel) => shockAt(model, "left", travel)?.travel ?? null }],
    isOf: hasShock,
  },
];

const OVER_STEER: readonly Listed[] = [
  {
    id: "camber-steer",
    of: "camber",
    title: "Camber over steering",
    measure: "angle",
    note: "L = left turn",
    curves: alongSteer((pose) => pose.camber),
  },
  {
    id: "trail-steer",
    of: "mechanical trail",
    title: "Mechanical trail over steering",
    measure: "length",
    note: "+ = patch behind the axis",
    curves: alongSteer((pose) => pose.mechanicalTrail),
  },
  {
    id: "ackermann",
    of: "Ackermann",
    title: "Ackermann error over steering",
    measure: "angle",
    note: "+ = outer wheel turns more than it needs to",
    curves: [{ name: "outer wheel", read: ackermannError }],
    isOf: ({ setup }) => setup.truck.wheelbase !== null,
  },
];

/** At the height as measured. Straight ahead neither wheel turns: the limit from either side is 0. */
function ackermannError({ model }: Truck, steer: number): number | null {
  if (Math.abs(steer) < 1e-9) return 0;
  return ackermannAt(model, 0, steer)?.error ?? null;
}

/** Everything that can be plotted over travel and steering, in the order it is offered. */
export const PLOT_KINDS: readonly PlotKind[] = [
  ...OVER_TRAVEL.map(({ isOfTravelAlone = false, ...kind }): PlotKind => {
    return { ...kind, over: "travel", stands: isOfTravelAlone ? null : STRAIGHT_AHEAD };
  }),
  ...OVER_STEER.map((kind): PlotKind => ({ ...kind, over: "steer", stands: "at the height as measured" })),
];
