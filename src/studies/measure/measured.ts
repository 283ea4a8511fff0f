import type { Vec3 } from "../../geometry/vec.ts";
import type { PointName, Reading, ReadingSize } from "../../setup/types/readingTypes.ts";
import type { Ask } from "./ask.ts";
import type { Axis, Side } from "./unknowns.ts";

/**
 * Where a coordinate is from. `measured`: readings tell it. `partly`: readings tell it only together with something that is
 * assumed, or hardly better. `given`: as the setup has it already, no reading tells it. `assumed`: of the assumed layout.
 */
export type Standing = "measured" | "partly" | "given" | "assumed";

/** One point of one side, vehicle axes of that side's own hand: y outboard. mm. */
export interface MeasuredPoint {
  readonly point: PointName;
  /** `left` also stands for the right where the right has no readings of its own. */
  readonly side: Side;
  readonly at: Vec3;
  /** One standard deviation of x, y and z. */
  readonly within: Vec3;
  /** mm²; rows and columns x, y, z: its ellipse. */
  readonly covariance: readonly [Vec3, Vec3, Vec3];
  readonly standing: readonly [Standing, Standing, Standing];
}

/** mm. */
export interface MeasuredSize {
  readonly size: ReadingSize;
  readonly at: number;
  readonly within: number;
}

/** One reading beside what the points found give there. mm, radians of an angle. */
export interface ReadingResidual {
  readonly reading: Reading;
  /** What was read − what the points give; of a plumb bob or stations the one that is farthest off, by its size. */
  readonly off: number;
  /** `off` over its own standard deviation; null = no other reading checks it. */
  readonly inSigmas: number | null;
}

/** How one point would move. mm. */
export interface PointMove {
  readonly point: PointName;
  readonly side: Side;
  readonly by: Vec3;
}

/** The reading that is most likely wrong. */
export interface Suspect {
  readonly reading: Reading;
  readonly inSigmas: number;
  /** What it would be by all others; mm or radians; null of a plumb bob or stations. */
  readonly wouldBe: number | null;
  /** Readings that would explain it as well when left out in its place. */
  readonly alike: readonly Reading[];
  /** Without it: the largest residual that is left, in standard deviations, and the points that move, farthest first. */
  readonly without: { readonly mostSigmas: number; readonly moves: readonly PointMove[] };
}

/** One way that all readings leave open: points that may move together so that no reading changes. */
export interface OpenWay {
  /** The largest share is 1; small ones are left out. */
  readonly moves: readonly {
    readonly point: PointName;
    readonly side: Side;
    readonly axis: Axis;
    readonly by: number;
  }[];
}

/** The reading not yet taken that would help most. */
export interface NextReading {
  readonly ask: Ask;
  /** mm: root mean square uncertainty of the truck's points now, and with it. */
  readonly from: number;
  readonly to: number;
  /** The coordinate it tells most of: one standard deviation of it now, and with it, mm; null = none. */
  readonly tells: {
    readonly point: PointName;
    readonly axis: Axis;
    readonly from: number;
    readonly to: number;
  } | null;
}

/** What readings say of a truck. mm and radians. */
export interface Measured {
  readonly points: readonly MeasuredPoint[];
  readonly sizes: readonly MeasuredSize[];
  /** One for each reading, in their order. */
  readonly residuals: readonly ReadingResidual[];
  readonly suspect: Suspect | null;
  readonly free: readonly OpenWay[];
  readonly next: NextReading | null;
  /** Rows and columns of `covariance`, mm², in `coordinates`: all points and sizes together, as their draws are correlated. */
  readonly coordinates: readonly Coordinate[];
  readonly covariance: readonly (readonly number[])[];
  /** Solving ended at rounding; false = the points are as near as it came. */
  readonly isSettled: boolean;
  /** The budget ended it: the points are as near as they came, the reading to doubt and the next may be others. */
  readonly cutShort?: true;
}

/** The truck alone. */
export type MeasuredTruck = Pick<Measured, "points" | "sizes">;

/** One row of the covariance. */
export type Coordinate =
  | { readonly point: PointName; readonly side: Side; readonly axis: Axis }
  | { readonly size: ReadingSize };
