import type { PointName } from "../../setup/types/readingTypes.ts";
import { radFromDeg } from "../../units/angle.ts";
import { mmFromInches } from "../../units/lengthUnits.ts";
import type { Unknowns } from "./unknowns.ts";

/**
 * What is assumed of points together, not of each by itself: how far off it is, over its own standard deviation. It leads a
 * point that no reading tells to where the others put it, and has no say where readings tell.
 */
export interface Tie {
  /** Positions of the unknowns it takes. */
  readonly of: readonly number[];
  readonly off: (at: readonly number[]) => number;
}

/**
 * How far a knuckle's shape differs from the assumed one, one standard deviation; rad and mm. A knuckle is one forging, drawn
 * to design numbers that differ little from truck to truck, while frames, hub faces and fenders differ by inches. Common
 * practice, no source.
 */
const SHAPE_WITHIN = {
  /** Kingpin inclination is a design number: most lie within a degree and a half of each other. */
  inclination: radFromDeg(1.5),
  /** Caster is set on the truck, with shims or cams, over a few degrees. */
  caster: radFromDeg(2),
  /** Joint to joint: knuckles of one size of truck differ by an inch or so. */
  span: mmFromInches(1),
  /** The steering arm's end about the lower joint: arms are short and stand close behind or ahead of it. */
  steeringArm: mmFromInches(1),
  /** Hub faces, spacers and wheels stand inches farther in or out. */
  wheelOut: mmFromInches(2),
} as const;

type Step = readonly [x: number, y: number, z: number];

const spanOf = (step: Step) => Math.hypot(...step);

/** Ties of the points that one knuckle holds, left side. A point that the setup has already leads the others and is not led. */
export function knuckleTies(unknowns: Unknowns): readonly Tie[] {
  const { layout, list, start } = unknowns;
  const points = unknowns.points();
  const between = (
    names: readonly [PointName, PointName],
    measures: readonly (readonly [(step: Step) => number, within: number])[],
  ): readonly Tie[] => {
    const [from, to] = names.map((name) => points.get(name));
    if (from === undefined || to === undefined) return [];
    const isLed = (first: number) => list[first]!.origin !== "given";
    const of = [from, to].filter(isLed).flatMap((first) => [first, first + 1, first + 2]);
    if (of.length === 0) return [];
    const stepAt = (a: readonly number[], b: readonly number[]): Step => [
      b[to]! - a[from]!,
      b[to + 1]! - a[from + 1]!,
      b[to + 2]! - a[from + 2]!,
    ];
    return measures.map(([measure, within]) => {
      const assumed = measure(stepAt(layout, layout));
      const off = (at: readonly number[]) =>
        (measure(stepAt(isLed(from) ? at : start, isLed(to) ? at : start)) - assumed) / within;
      return { of, off };
    });
  };
  const [lower, upper] = ["lowerArm.ballJoint", "upperArm.ballJoint"] as const;
  const { inclination, caster, span, steeringArm, wheelOut } = SHAPE_WITHIN;
  return [
    // Small angles are their sines, and these are smooth also where a slip of the tape has the joints upside down.
    ...between(
      [lower, upper],
      [
        [([, y, z]) => -y / (Math.hypot(y, z) || 1), inclination],
        [([x, , z]) => -x / (Math.hypot(x, z) || 1), caster],
        [spanOf, span],
      ],
    ),
    ...between(
      [lower, "tieRodOuter"],
      [0, 1, 2].map((axis) => [(step: Step) => step[axis]!, steeringArm] as const),
    ),
    ...between([lower, "wheelCenter"], [[([, y]) => y, wheelOut]]),
  ];
}
