import type { Vec3 } from "../../../src/geometry/vec.ts";
import type { PointName, Reading } from "../../../src/setup/types/readingTypes.ts";
import { type Ask, readingOf } from "../../../src/studies/measure/ask.ts";
import { EquationMaker, pointsReadRight } from "../../../src/studies/measure/equations.ts";
import type { MeasureAsk } from "../../../src/studies/measure/measureProblem.ts";
import { Unknowns } from "../../../src/studies/measure/unknowns.ts";

const RIM = { rimDiameter: 381, rimWidth: 203.2 };

/** Points of an invented truck, mm, unlike the assumed one. */
export const TRUE_POINTS: ReadonlyMap<PointName, Vec3> = new Map([
  ["upperArm.frontPivot", [141, 391, 428]],
  ["upperArm.rearPivot", [-148, 402, 417]],
  ["upperArm.ballJoint", [-22, 611, 462]],
  ["lowerArm.frontPivot", [214, 247, 221]],
  ["lowerArm.rearPivot", [-171, 239, 232]],
  ["lowerArm.ballJoint", [6, 648, 199]],
  ["steering.innerEnd", [-181, 322, 241]],
  ["wheelCenter", [4, 822, 341]],
  ["tieRodOuter", [-156, 629, 238]],
]);

/** Uniform numbers from a small generator of whole numbers (mulberry32). */
export function uniforms(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Normal numbers by Box and Muller. */
export function normals(seed: number): () => number {
  const uniform = uniforms(seed);
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** What is asked, as it reads on a truck with those points. @param right points of its right side where they differ */
export function readOn(
  asks: readonly Ask[],
  points: ReadonlyMap<PointName, Vec3>,
  right: ReadonlyMap<PointName, Vec3> = new Map(),
): readonly Reading[] {
  const unread = asks.map((ask, index): Reading => ({ ...readingOf(ask, 0), index }));
  const unknowns = new Unknowns(points);
  const maker = new EquationMaker(unknowns, pointsReadRight(unread), RIM);
  return unread.map((reading) => {
    const [equation] = maker.equationsOf(reading);
    const at = [...unknowns.start];
    for (const [point, place] of right) {
      if (!unknowns.hasRight(point)) continue;
      const [first, more] = [unknowns.left(point), unknowns.more(point)];
      place.forEach((value, axis) => {
        at[more + axis] = value - at[first + axis]!;
      });
    }
    return "is" in reading ? { ...reading, is: equation!.value(at) } : reading;
  });
}

/** The same readings with errors as large as theirs. */
export function noisy(readings: readonly Reading[], normal: () => number): readonly Reading[] {
  return readings.map((one) => ("is" in one ? { ...one, is: one.is + one.within * normal() } : one));
}

export function askFor(readings: readonly Reading[], more: Partial<MeasureAsk> = {}): MeasureAsk {
  return { readings, given: new Map(), steering: "rack", hasBody: true, rim: RIM, candidates: [], ...more };
}

const height = (point: PointName): Ask => ({ kind: "height", point, from: "centerline", side: "left" });
const offset = (point: PointName): Ask => ({ kind: "offset", point, from: "centerline", side: "left" });
const ahead = (point: PointName): Ask => ({ kind: "ahead", point, from: "centerline", side: "left" });
const tape = (a: PointName, b: PointName): Ask => ({ kind: "between", points: [a, b], side: "left" });

const ARMS = ["upperArm", "lowerArm"] as const;

/** Twenty-five readings of the arms' six points, as a person takes them: 7 more than tell them. */
export const TWENTY_FIVE: readonly Ask[] = [
  ...ARMS.flatMap((arm) => [
    height(`${arm}.frontPivot`),
    height(`${arm}.rearPivot`),
    height(`${arm}.ballJoint`),
    offset(`${arm}.frontPivot`),
    offset(`${arm}.rearPivot`),
    ahead(`${arm}.frontPivot`),
    ahead(`${arm}.rearPivot`),
    tape(`${arm}.frontPivot`, `${arm}.rearPivot`),
    tape(`${arm}.frontPivot`, `${arm}.ballJoint`),
    tape(`${arm}.rearPivot`, `${arm}.ballJoint`),
  ]),
  tape("upperArm.ballJoint", "lowerArm.ballJoint"),
  { kind: "between", points: ["upperArm.ballJoint", "upperArm.ballJoint"], side: "across" },
  { kind: "between", points: ["lowerArm.ballJoint", "lowerArm.ballJoint"], side: "across" },
  tape("upperArm.frontPivot", "lowerArm.frontPivot"),
  tape("upperArm.rearPivot", "lowerArm.rearPivot"),
];

const across = (a: PointName, b: PointName): Ask => ({ kind: "between", points: [a, b], side: "across" });

/**
 * Twenty-five readings of the same six points, spread so that each is checked by others that do not read the same way:
 * few heights, many tapes, most of them slantwise and over to the other side.
 */
export const SPREAD: readonly Ask[] = [
  height("upperArm.frontPivot"),
  height("upperArm.ballJoint"),
  height("lowerArm.rearPivot"),
  ahead("upperArm.ballJoint"),
  ahead("lowerArm.frontPivot"),
  ahead("lowerArm.ballJoint"),
  tape("upperArm.frontPivot", "upperArm.ballJoint"),
  tape("upperArm.frontPivot", "lowerArm.rearPivot"),
  tape("upperArm.frontPivot", "lowerArm.ballJoint"),
  tape("upperArm.rearPivot", "upperArm.ballJoint"),
  tape("upperArm.rearPivot", "lowerArm.frontPivot"),
  tape("upperArm.rearPivot", "lowerArm.ballJoint"),
  tape("upperArm.ballJoint", "lowerArm.rearPivot"),
  tape("upperArm.ballJoint", "lowerArm.ballJoint"),
  tape("lowerArm.frontPivot", "lowerArm.rearPivot"),
  across("upperArm.frontPivot", "upperArm.rearPivot"),
  across("upperArm.frontPivot", "lowerArm.frontPivot"),
  across("upperArm.frontPivot", "lowerArm.rearPivot"),
  across("upperArm.rearPivot", "lowerArm.frontPivot"),
  across("upperArm.rearPivot", "lowerArm.ballJoint"),
  across("upperArm.ballJoint", "lowerArm.ballJoint"),
  across("lowerArm.frontPivot", "lowerArm.rearPivot"),
  across("lowerArm.frontPivot", "lowerArm.ballJoint"),
  { kind: "angle", arm: "lowerArm", side: "left" },
  { kind: "angle", arm: "upperArm", side: "left" },
];

const JOINTS = [
  "lowerArm.frontPivot",
  "lowerArm.rearPivot",
  "lowerArm.ballJoint",
  "upperArm.ballJoint",
] as const;

/** Twenty-five readings of four points: the lower arm and the joint above it, each point from all around. */
export const ALL_AROUND: readonly Ask[] = [
  ...JOINTS.flatMap((point) => [height(point), offset(point), ahead(point), across(point, point)]),
  ...JOINTS.flatMap((a, i) => JOINTS.slice(i + 1).map((b) => tape(a, b))),
  across("lowerArm.frontPivot", "lowerArm.ballJoint"),
  across("lowerArm.rearPivot", "lowerArm.ballJoint"),
  { kind: "angle", arm: "lowerArm", side: "left" },
];
