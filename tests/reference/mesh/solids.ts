import Module, { type Manifold, type ManifoldToplevel } from "manifold-3d";
import type { PartInput } from "../../../src/gaps/partShape.ts";
import type { RingCase, WheelCase } from "../referenceRing.ts";
import { closedOutline } from "../sectionDistance.ts";
import { revolvedToWheel } from "./tessellatedRing.ts";

let loaded: Promise<ManifoldToplevel> | undefined;

/** The solid modeler manifold-3d, loaded once. */
export function solidModeler(): Promise<ManifoldToplevel> {
  loaded ??= Module().then((top) => {
    top.setup();
    return top;
  });
  return loaded;
}

/** The ring revolved in `sides` flat sides, placed at the wheel. The caller deletes it. */
export function ringSolid(top: ManifoldToplevel, ring: RingCase, wheel: WheelCase, sides: number): Manifold {
  // The modeler revolves [distance from the axis, along it] counterclockwise.
  const outline = closedOutline(ring.profile, ring.barrelRadius).map(([x, r]): [number, number] => [r, x]);
  const raw = top.Manifold.revolve([outline], sides);
  const placed = raw.transform(revolvedToWheel(wheel).elements as never);
  raw.delete();
  return placed;
}

export interface PartSolid {
  readonly solid: Manifold;
  /** How far its surface can be from the part's, mm. */
  readonly error: number;
}

/** A box as it is, a path as hulls of faceted balls. The caller deletes it. */
export function partSolid(top: ManifoldToplevel, part: Exclude<PartInput, { kind: "mesh" }>): PartSolid {
  const { Manifold } = top;
  if (part.kind === "box") {
    const size = part.max.map((high, i) => high - part.min[i]!) as [number, number, number];
    const cube = Manifold.cube(size);
    const solid = cube.translate([...part.min] as [number, number, number]);
    cube.delete();
    return { solid, error: 0 };
  }
  const ball = Manifold.sphere(part.radius, 48);
  const error = facetError(ball, part.radius);
  const balls = part.points.map((p) => ball.translate([...p] as [number, number, number]));
  const legs = balls.map((from, i) => Manifold.hull([from, balls[i + 1] ?? from]));
  const solid = Manifold.union(legs);
  for (const done of [ball, ...balls, ...legs]) done.delete();
  return { solid, error };
}

/** A faceted ball has its corners on the round one; its facets' planes tell how far inside it the rest lies. */
function facetError(ball: Manifold, radius: number): number {
  const mesh = ball.getMesh();
  const corner = (i: number) => [0, 1, 2].map((axis) => mesh.vertProperties[i * mesh.numProp + axis]!);
  let nearest = radius;
  for (let t = 0; t < mesh.triVerts.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => corner(mesh.triVerts[t + k]!)) as [number[], number[], number[]];
    const u = b.map((x, i) => x - a[i]!);
    const v = c.map((x, i) => x - a[i]!);
    const n = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
    nearest = Math.min(nearest, Math.abs(n[0]! * a[0]! + n[1]! * a[1]! + n[2]! * a[2]!) / Math.hypot(...n));
  }
  return radius - nearest;
}
