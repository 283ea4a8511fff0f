import type { PartInput } from "../../src/gaps/partShape.ts";
import { type Vec3, vecAt } from "../../src/geometry/vec.ts";
import { partGeometry } from "../reference/mesh/surfaceDistance.ts";

/** A corner, edge or face of a part: the hull of one, two or three points. */
export type Stratum = readonly [Vec3] | readonly [Vec3, Vec3] | readonly [Vec3, Vec3, Vec3];

/** A part's surface (of a path its center line) as corners, edges and faces, and what lies around them. */
export interface PartStrata {
  readonly strata: readonly Stratum[];
  /** mm. */
  readonly radius: number;
}

/** Every corner and every edge once, every triangle; the part's own frame, mm. */
export function partStrata(part: PartInput): PartStrata {
  if (part.kind === "path") {
    const legs = part.points.slice(1).map((to, i): Stratum => [part.points[i]!, to]);
    return { strata: [...part.points.map((point): Stratum => [point]), ...legs], radius: part.radius };
  }
  const geometry = partGeometry(part);
  const positions = geometry.getAttribute("position").array;
  const index = geometry.getIndex()!.array;
  const corners = new Map<string, Stratum>();
  const edges = new Map<string, Stratum>();
  const faces: Stratum[] = [];
  for (let t = 0; t < index.length; t += 3) {
    const ids = [index[t]!, index[t + 1]!, index[t + 2]!] as const;
    const [a, b, c] = ids.map((id) => vecAt(positions, 3 * id)) as [Vec3, Vec3, Vec3];
    faces.push([a, b, c]);
    for (const [i, from, j, to] of [
      [ids[0], a, ids[1], b],
      [ids[1], b, ids[2], c],
      [ids[2], c, ids[0], a],
    ] as const) {
      corners.set(String(i), [from]);
      edges.set(i < j ? `${i} ${j}` : `${j} ${i}`, [from, to]);
    }
  }
  return { strata: [...corners.values(), ...edges.values(), ...faces], radius: 0 };
}
