import type { PageLine } from "../../geometry/page.ts";
import type { ViewName } from "../views/viewAxes.ts";
import type { Dimension } from "./dimensions.ts";

/** Low and high corner of what is drawn: u0, v0, u1, v1, mm of the knuckle. */
export type Bounds = readonly [u0: number, v0: number, u1: number, v1: number];

/** A view, about the lower ball joint or, of the section, where pin and steering axis pass; mm of the knuckle. */
export interface DrawnView {
  readonly name: ViewName | "section";
  readonly title: string;
  readonly lines: readonly PageLine[];
  readonly dimensions: readonly Dimension[];
  /** Of all but axes. */
  readonly bounds: Bounds;
  /** Where the plane of the section stands in it, u; the section is seen toward +u. */
  readonly cutAt?: number;
}

/** @throws RangeError when nothing is drawn */
export function boundsOf(lines: readonly ArrayLike<number>[]): Bounds {
  const bounds = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (const points of lines) {
    for (let i = 0; i < points.length; i++) {
      const axis = i % 2;
      bounds[axis] = Math.min(bounds[axis]!, points[i]!);
      bounds[axis + 2] = Math.max(bounds[axis + 2]!, points[i]!);
    }
  }
  if (!(bounds[0]! <= bounds[2]!)) throw new RangeError("boundsOf: nothing is drawn");
  return bounds as unknown as Bounds;
}
