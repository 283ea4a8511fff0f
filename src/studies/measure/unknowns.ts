import { bodyPointOf } from "../../setup/blocks/readings/readingPoint.ts";
import type { PointName, ReadingSize } from "../../setup/types/readingTypes.ts";
import type { Point } from "../../setup/types/truckTypes.ts";
import {
  ASSUMED_LIP_POINTS,
  ASSUMED_POINTS,
  ASSUMED_SIZE_WITHIN,
  ASSUMED_SIZES,
  ASSUMED_WITHIN,
  GIVEN_WITHIN,
  MARK_WITHIN,
  SYMMETRY_WITHIN,
} from "./assumedTruck.ts";

export type Side = "left" | "right";

export type Axis = 0 | 1 | 2;

/** Where a point or size begins before any reading: typed into the setup, or of the assumed layout. */
export type Origin = "given" | "assumed" | "mark";

/**
 * One number that is solved for, mm: a coordinate of a left point; how much more the right one's is, seen in the mirror; or
 * a size.
 */
export type Unknown =
  | {
      readonly kind: "left" | "more";
      readonly point: PointName;
      readonly axis: Axis;
      readonly origin: Origin;
    }
  | { readonly kind: "size"; readonly size: ReadingSize; readonly origin: Origin };

/** All numbers that are solved for, where they begin and how far each may be from there (one standard deviation). */
export class Unknowns {
  readonly list: Unknown[] = [];
  readonly start: number[] = [];
  /** The same, of the assumed layout alone. */
  readonly layout: number[] = [];
  readonly within: number[] = [];
  readonly #left = new Map<PointName, number>();
  readonly #more = new Map<PointName, number>();
  readonly #sizes = new Map<ReadingSize, number>();
  readonly #given: ReadonlyMap<PointName, Point>;

  /** @param given points that the setup has already, mm */
  constructor(given: ReadonlyMap<PointName, Point>) {
    this.#given = given;
  }

  /** Position of the first of three coordinates of a left point; added if it is new. @param beside where a mark begins */
  left(point: PointName, beside?: PointName): number {
    const known = this.#left.get(point);
    if (known !== undefined) return known;
    const given = this.#given.get(point);
    const assumed = ASSUMED_POINTS.get(point) ?? ASSUMED_LIP_POINTS.get(point) ?? this.#nearLip(point);
    const origin: Origin = given ? "given" : assumed ? "assumed" : "mark";
    const layout = assumed ?? this.#besideOf(beside);
    const within = { given: GIVEN_WITHIN, assumed: ASSUMED_WITHIN, mark: MARK_WITHIN }[origin];
    this.layout.push(...layout);
    return this.#add(this.#left, point, "left", origin, given ?? layout, within);
  }

  /** Position of the first of the three numbers by which a right point differs from the left one; added if it is new. */
  more(point: PointName): number {
    const known = this.#more.get(point);
    if (known !== undefined) return known;
    this.layout.push(0, 0, 0);
    return this.#add(this.#more, point, "more", "assumed", [0, 0, 0], SYMMETRY_WITHIN);
  }

  hasRight(point: PointName): boolean {
    return this.#more.has(point);
  }

  /** Position of a size; added if it is new. */
  size(size: ReadingSize): number {
    const known = this.#sizes.get(size);
    if (known !== undefined) return known;
    const at = this.list.length;
    this.#sizes.set(size, at);
    this.list.push({ kind: "size", size, origin: "assumed" });
    this.layout.push(ASSUMED_SIZES[size]);
    this.start.push(ASSUMED_SIZES[size]);
    this.within.push(ASSUMED_SIZES[size] * ASSUMED_SIZE_WITHIN);
    return at;
  }

  /** Points in the order they came in, each with the position of its left coordinates. */
  points(): ReadonlyMap<PointName, number> {
    return this.#left;
  }

  sizes(): ReadonlyMap<ReadingSize, number> {
    return this.#sizes;
  }

  #add(
    places: Map<PointName, number>,
    point: PointName,
    kind: "left" | "more",
    origin: Origin,
    at: readonly number[],
    within: number,
  ): number {
    const first = this.list.length;
    places.set(point, first);
    for (const axis of [0, 1, 2] as const) {
      this.list.push({ kind, point, axis, origin });
      this.start.push(at[axis]!);
      this.within.push(within);
    }
    return first;
  }

  /** A point of a body part that is not assumed begins over the wheel, each at a place of its own. */
  #nearLip(point: PointName): Point | undefined {
    const part = bodyPointOf(point);
    return part === null ? undefined : [400 - 60 * (part.at ?? 0), 900, 600];
  }

  /** A mark begins on the floor beside what it was read with, no two at one place: a tape of no length has no direction. */
  #besideOf(point: PointName | undefined): Point {
    const turn = this.list.length;
    const out: Point = [80 * Math.cos(turn), 100 + 80 * Math.sin(turn), 0];
    if (point === undefined) return [out[0], 500 + out[1], 0];
    const first = this.left(point);
    return [this.start[first]! + out[0], this.start[first + 1]! + out[1], 0];
  }
}
