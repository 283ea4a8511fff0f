import { GAP } from "../cells/cellSearch.ts";
import { probeRing, ringProbe } from "../ring/ringProbe.ts";
import type { RingShape } from "../ring/ringShape.ts";
import { searchEdges, seeCorners } from "./cornersAndEdges.ts";
import { settleSheet, settleSolid, unsettled } from "./faces.ts";
import { EDGE_TOLERANCE, PLACE, place, wheelSeen } from "./nearestPlace.ts";
import type { Skeleton } from "./skeleton.ts";

const probe = ringProbe();

/**
 * Gap between the ring and a part by its skeleton, exact, as far as convexity settles it: the distance to the
 * hull profile (the ring filled in, see `ring/hull profile.ts`) is convex, so along an edge one local minimum is the minimum, and
 * a solid's nearest place is one from which the distance falls toward none of its corners. The hull profile holds the ring, so no gap
 * is less; where the nearest place of the hull profile is a place of the ring, the gap is that distance.
 * Fills `out` as `GAP` says; cells left to search are in `unsettled`.
 *
 * @returns the gap (of what is settled), `beat` when none is below it, or NaN when nothing is settled: a part in
 * the hole of the barrel, or pressed deep. `out` is then left alone.
 */
export function skeletonGapTo(
  out: Float64Array,
  at: number,
  shape: RingShape,
  wheel: Float64Array,
  wheelAt: number,
  part: Skeleton,
  beat: number,
): number {
  for (let i = 0; i < 6; i++) wheelSeen[i] = wheel[wheelAt + i]!;
  const limit = beat + part.radius;
  place[PLACE.best] = Number.POSITIVE_INFINITY;
  place[PLACE.limit] = limit;
  unsettled.count = 0;
  seeCorners(shape, part);
  searchEdges(shape, part);
  if (part.solid) {
    if (!settleSolid(shape, part)) return Number.NaN;
  } else if (part.faces.length > 0) settleSheet(shape, part);
  const best = place[PLACE.best]!;
  if (!(best < limit)) return beat;
  if (!isRealPlace(shape)) return Number.NaN;
  for (let i = 0; i < 3; i++) {
    out[at + GAP.point + i] = place[i]! - part.radius * place[3 + i]!;
    out[at + GAP.onRing + i] = place[i]! - best * place[3 + i]!;
  }
  out[at] = best - part.radius;
  return best - part.radius;
}

/** Whether the place found is nearest to a place of the ring itself, not to what the hull profile fills in. */
function isRealPlace(shape: RingShape): boolean {
  const edge = place[PLACE.edge]!;
  const best = place[PLACE.best]!;
  if (best > 0) return edge < 0 || shape.hullProfile.real[edge] === 1;
  probeRing(probe, shape, place[PLACE.x]!, place[PLACE.r]!);
  return Math.abs(probe.distance - best) <= EDGE_TOLERANCE;
}
