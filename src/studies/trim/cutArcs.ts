import type { Outline } from "../section/outline.ts";
import { type FlatSheet, pieceDistance } from "./flatSheet.ts";

type Place = readonly [u: number, v: number];

/** Where metal is cut: a line from the edge to the edge, rising along it. */
export interface CutArc {
  /** Where along the sheet's border it begins and ends, counted in the border's points. */
  readonly from: number;
  readonly to: number;
  /** The first and the last lie on the border. */
  readonly points: readonly Place[];
  /** mm. Farthest from the border. */
  readonly depth: number;
}

/** Halvings to the border between two points of a line. */
const HALVINGS = 40;

/** The pieces of a closed line that run through metal, and whether all of it does. */
export function cutArcs({ points }: Outline, sheet: FlatSheet): readonly CutArc[] | "hole" {
  const count = points.length / 2;
  const at = (i: number): Place => [points[2 * (i % count)]!, points[2 * (i % count) + 1]!];
  const isIn = Array.from({ length: count }, (_, i) => sheet.edgeDistance(...at(i)) < 0);
  if (isIn.every(Boolean)) return "hole";
  const start = isIn.findIndex((one, i) => !one && isIn[(i + 1) % count]);
  if (start < 0) return [];
  const arcs: CutArc[] = [];
  let open: Place[] | null = null;
  for (let i = start; i < start + count; i++) {
    const [now, next] = [isIn[i % count]!, isIn[(i + 1) % count]!];
    if (!now && next) open = [crossing(at(i), at(i + 1), sheet)];
    if (next) open?.push(at(i + 1));
    if (!now || next || open === null) continue;
    open.push(crossing(at(i + 1), at(i), sheet));
    arcs.push(arcOf(open, sheet));
    open = null;
  }
  return arcs;
}

/** Where the way from outside to inside of the metal meets its border. */
function crossing([u0, v0]: Place, [u1, v1]: Place, { edgeDistance }: FlatSheet): Place {
  let [outside, inside] = [0, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = 0.5 * (outside + inside);
    if (edgeDistance(u0 + middle * (u1 - u0), v0 + middle * (v1 - v0)) < 0) inside = middle;
    else outside = middle;
  }
  return [u0 + outside * (u1 - u0), v0 + outside * (v1 - v0)];
}

function arcOf(points: readonly Place[], sheet: FlatSheet): CutArc {
  const [a, b] = [alongOf(points[0]!, sheet), alongOf(points.at(-1)!, sheet)];
  return {
    from: Math.min(a, b),
    to: Math.max(a, b),
    points: a <= b ? points : points.toReversed(),
    depth: Math.max(...points.map(([u, v]) => -sheet.edgeDistance(u, v))),
  };
}

function alongOf([u, v]: Place, { border }: FlatSheet): number {
  let best = { distance: Number.POSITIVE_INFINITY, at: 0 };
  for (let i = 2; i < border.length; i += 2) {
    const { distance, share } = pieceDistance(
      u,
      v,
      border[i - 2]!,
      border[i - 1]!,
      border[i]!,
      border[i + 1]!,
    );
    if (distance < best.distance) best = { distance, at: i / 2 - 1 + share };
  }
  return best.at;
}

/** The closed line of what is cut away: the arc, and the border back. */
export function arcOutline({ from, to, points }: CutArc, { border }: FlatSheet): Outline {
  const back: number[] = [];
  for (let i = Math.ceil(to) - 1; i > from; i--) if (i < to) back.push(border[2 * i]!, border[2 * i + 1]!);
  return { points: Float64Array.from([...points.flat(), ...back]), closed: true };
}

/** In their order along the border; of two that overlap the longer one stands. */
export function apartArcs(arcs: readonly CutArc[]): readonly CutArc[] {
  const kept: CutArc[] = [];
  for (const arc of arcs.toSorted((a, b) => b.to - b.from - (a.to - a.from)))
    if (kept.every((one) => arc.to <= one.from || arc.from >= one.to)) kept.push(arc);
  return kept.sort((a, b) => a.from - b.from);
}
