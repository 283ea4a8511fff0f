import { ackermannAt } from "../../../studies/geometry/ackermannAt.ts";
import { rollCenter } from "../../../suspension/rollCenter.ts";
import { type SolvedPose, solvePose } from "../../../suspension/solvePose.ts";
import type { Measure, PlotSpec, Series } from "../../parts/plotNumbers.ts";
import type { Truck } from "../../state/truck.ts";

/** Points of a curve: enough that it looks drawn, few enough to be there at once. */
const POINTS = 49;

export interface NamedTruck {
  readonly name: string;
  readonly truck: Truck;
}

interface Poses {
  readonly byTravel: readonly (readonly [travel: number, pose: SolvedPose | null])[];
  readonly bySteer: readonly (readonly [steer: number, pose: SolvedPose | null])[];
}

const known = new WeakMap<Truck, Poses>();

/** The poses behind the alignment plots: over travel straight ahead, over steer at the height as measured. */
function posesOf(truck: Truck): Poses {
  const before = known.get(truck);
  if (before) return before;
  const { frontEnd, setup } = truck.model;
  const { droop, bump } = setup.travel;
  const at = (travel: number, steer: number) => {
    const pose = solvePose(frontEnd, travel, steer);
    return pose.ok ? pose : null;
  };
  const poses: Poses = {
    byTravel: spread(droop, bump).map((travel) => [travel, at(travel, 0)] as const),
    bySteer: spread(-1, 1).map((steer) => [steer, at(0, steer)] as const),
  };
  known.set(truck, poses);
  return poses;
}

export function spread(low: number, high: number, count = POINTS): number[] {
  return Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1));
}

type Read = (pose: SolvedPose, truck: Truck, x: number) => number | null;

interface Wanted {
  readonly id: string;
  readonly title: string;
  readonly note: string;
  readonly over: "travel" | "steer";
  readonly measure: Measure;
  /** One curve or two: of the left wheel, and of the right where it differs. */
  readonly curves: readonly { readonly name: string; readonly read: Read }[];
}

/** Null where the force lines of both wheels do not cross. */
function rollCenterHeight({ travel }: SolvedPose, { model }: Truck): number | null {
  return rollCenter(model.frontEnd, { left: travel, right: travel }, 0)?.height ?? null;
}

const WANTED: readonly Wanted[] = [
  {
    id: "camber",
    title: "Camber over travel",
    note: "+ = leans out at the top",
    over: "travel",
    measure: "angle",
    curves: [{ name: "left", read: (pose) => pose.left.camber }],
  },
  {
    id: "toe",
    title: "Toe over travel (bump steer)",
    note: "+ = toe-in, each wheel",
    over: "travel",
    measure: "angle",
    curves: [{ name: "left", read: (pose) => pose.left.toe }],
  },
  {
    id: "caster",
    title: "Caster over travel",
    note: "+ = axis leans back at the top",
    over: "travel",
    measure: "angle",
    curves: [{ name: "left", read: (pose) => pose.left.caster }],
  },
  {
    id: "scrub",
    title: "Scrub radius over travel",
    note: "+ = patch outboard of the axis",
    over: "travel",
    measure: "length",
    curves: [{ name: "left", read: (pose) => pose.left.scrubRadius }],
  },
  {
    id: "roll-center",
    title: "Roll center height over travel",
    note: "+ = above the floor; both wheels alike",
    over: "travel",
    measure: "length",
    curves: [{ name: "both wheels", read: rollCenterHeight }],
  },
  {
    id: "half-track",
    title: "Half track over travel",
    note: "centerline to contact patch",
    over: "travel",
    measure: "length",
    curves: [{ name: "left", read: (pose) => Math.abs(pose.left.contactPatch[1]) }],
  },
  {
    id: "camber-steer",
    title: "Camber over steering",
    note: "as measured height; L = left turn",
    over: "steer",
    measure: "angle",
    curves: [
      { name: "left", read: (pose) => pose.left.camber },
      { name: "right", read: (pose) => pose.right.camber },
    ],
  },
  {
    id: "ackermann",
    title: "Ackermann error over steering",
    note: "+ = outer wheel turns more than it needs to",
    over: "steer",
    measure: "angle",
    curves: [{ name: "outer wheel", read: (_, truck, steer) => ackermannError(truck, steer) }],
  },
];

/** @param others trucks laid over the first, each with its name; the first is then called `shown`. */
export function alignmentPlots(truck: Truck, others: readonly NamedTruck[]): PlotSpec[] {
  return WANTED.filter(({ id }) => id !== "ackermann" || truck.setup.truck.wheelbase !== null).map((wanted) =>
    plotOf(wanted, truck, others),
  );
}

function plotOf(wanted: Wanted, truck: Truck, others: readonly NamedTruck[]): PlotSpec {
  const { id, title, note, over, measure } = wanted;
  const series: Series[] = wanted.curves.map((curve, i) => ({
    name: others.length > 0 && wanted.curves.length === 1 ? "shown" : curve.name,
    points: pointsOf(truck, over, curve.read),
    line: i === 0 ? "solid" : "dashed",
    isMain: i === 0,
  }));
  // Over others only the first curve is laid, or the plot turns into wool.
  for (const other of others) {
    const points = pointsOf(other.truck, over, wanted.curves[0]!.read);
    series.push({ name: other.name, points, line: "dotted", isMain: false });
  }
  const x =
    over === "travel"
      ? { label: "travel, + bump", measure: "length" as const }
      : { label: "steering", measure: "lock" as const };
  return { id, title, note, x, y: { label: title, measure }, series };
}

function pointsOf(truck: Truck, over: Wanted["over"], read: Read): Series["points"] {
  const poses = over === "travel" ? posesOf(truck).byTravel : posesOf(truck).bySteer;
  return poses.map(([x, pose]) => ({ x, y: pose === null ? null : read(pose, truck, x) }));
}

/** At the height as measured. Straight ahead neither wheel turns: the limit from either side is 0. */
function ackermannError(truck: Truck, steer: number): number | null {
  if (Math.abs(steer) < 1e-9) return 0;
  return ackermannAt(truck.model, 0, steer)?.error ?? null;
}
