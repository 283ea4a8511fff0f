import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import { bodyDistances } from "../../studies/envelope/bodyDistances.ts";
import { envelopeOf } from "../../studies/envelope/envelopeOf.ts";
import {
  type EnvelopeRange,
  stanceRange,
  straightRange,
  wholeRange,
} from "../../studies/envelope/envelopeRange.ts";
import { ENVELOPE_PRESETS } from "../../studies/envelope/presets.ts";
import type { Model } from "../../studies/model/model.ts";
import type { Budget } from "../../studies/numeric/budget.ts";
import { mirroredMesh } from "../../studies/section/placedBody.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { EnvelopeChoice } from "../state/stageSettings.ts";

/** Which poses are swept, and how the surface is told. */
export interface EnvelopeAsk {
  readonly choice: EnvelopeChoice;
  /** mm; the height of `stance`. */
  readonly travel: number;
  /** Where bands of distance end, mm, rising. */
  readonly edges: readonly number[];
}

/** One side's envelope ready to be drawn; vehicle axes, mm. */
export interface DrawnSide {
  readonly side: Side;
  readonly positions: Float32Array;
  readonly triangles: Uint32Array;
  /** The least of the triangles about each vertex to the nearest body part. */
  readonly distances: Float32Array;
  /** Where the distance is an edge of a band: segments for each edge. */
  readonly lines: readonly Float32Array[];
}

export interface DrawnEnvelope extends EnvelopeAsk {
  readonly sides: readonly DrawnSide[];
}

/**
 * Both sides' envelopes to look at, with their distances to the body; null where the budget was spent first.
 * @param onProgress the share done, 0 … 1
 * @throws Error where no pose of the range can be reached
 */
export function drawnEnvelopeOf(
  model: Model,
  ask: EnvelopeAsk,
  budget: Budget,
  onProgress: (share: number) => void,
): DrawnEnvelope | null {
  const range = envelopeRange(model, ask);
  const sweep = (side: Side, from: number, to: number): TriangleMesh | null => {
    const swept = envelopeOf(model, side, range, {
      preset: "preview",
      budget,
      onProgress: (share) => onProgress(from + share * (to - from)),
    });
    if (swept.ok) return swept.envelope.mesh;
    if (swept.reason === "outOfReach") throw new Error("no pose of this range can be reached");
    return null;
  };
  // Each range goes as far to one lock as to the other: where the sides are mirror images, so are their envelopes.
  const left = sweep("left", 0, model.mirrored ? 1 : 0.5);
  const right = left && (model.mirrored ? mirroredMesh(left) : sweep("right", 0.5, 1));
  if (left === null || right === null) return null;
  const sides = [drawnSide(model, "left", left, ask.edges), drawnSide(model, "right", right, ask.edges)];
  return { ...ask, sides };
}

/** The poses of a choice. */
export function envelopeRange(
  model: Model,
  { choice, travel }: Pick<EnvelopeAsk, "choice" | "travel">,
): EnvelopeRange {
  if (choice === "whole") return wholeRange(model);
  return choice === "stance" ? stanceRange(travel) : straightRange(model);
}

/** mm between places looked at on a triangle: with what the ring may stand out of a preview, less than `MAY_RUB` is missed. */
const LOOKED_AT = 8;

/** mm. A body part farther than this from all corners of a triangle is not over its middle. */
const NEAR = 2 * ENVELOPE_PRESETS.preview.most;

/**
 * From each vertex the least distance to the body of all the triangles that meet there: a narrow part may come through the middle of
 * one, far from its corners.
 */
export function leastDistances(model: Model, side: Side, mesh: TriangleMesh): Float32Array {
  const { positions, triangles } = mesh;
  const corners = bodyDistances(model, side, mesh);
  const places: number[] = [];
  const owners: number[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
    if (Math.min(corners[a]!, corners[b]!, corners[c]!) > NEAR) continue;
    const at = (v: number, axis: number) => positions[3 * v + axis]!;
    const edge = (v: number, w: number) =>
      Math.hypot(at(v, 0) - at(w, 0), at(v, 1) - at(w, 1), at(v, 2) - at(w, 2));
    const steps = Math.ceil(Math.max(edge(a, b), edge(b, c), edge(c, a)) / LOOKED_AT);
    for (let i = 0; i <= steps; i++)
      for (let j = 0; i + j <= steps; j++) {
        const [u, v] = [i / steps, j / steps];
        for (let axis = 0; axis < 3; axis++)
          places.push(u * at(a, axis) + v * at(b, axis) + (1 - u - v) * at(c, axis));
        owners.push(t);
      }
  }
  const looked = { positions: Float64Array.from(places), triangles: new Uint32Array(0) };
  const least = corners.slice();
  bodyDistances(model, side, looked).forEach((distance, i) => {
    for (const v of triangles.subarray(owners[i]!, owners[i]! + 3)) least[v] = Math.min(least[v]!, distance);
  });
  return least;
}

function drawnSide(model: Model, side: Side, mesh: TriangleMesh, edges: readonly number[]): DrawnSide {
  const distances = leastDistances(model, side, mesh);
  return {
    side,
    positions: Float32Array.from(mesh.positions),
    triangles: mesh.triangles,
    distances,
    lines: edges.map((edge) => bandLines(mesh, distances, edge)),
  };
}

/**
 * The lines on a surface along which a value given at its vertices is `level`, as separate segments: x, y, z of both
 * ends, one after another. Straight through each triangle; triangles with a value that is not finite are left out.
 */
export function bandLines(
  { positions, triangles }: TriangleMesh,
  values: Float32Array,
  level: number,
): Float32Array {
  const out: number[] = [];
  const push = (a: number, b: number) => {
    const share = (level - values[a]!) / (values[b]! - values[a]!);
    for (let axis = 0; axis < 3; axis++) {
      const from = positions[3 * a + axis]!;
      out.push(from + share * (positions[3 * b + axis]! - from));
    }
  };
  for (let t = 0; t < triangles.length; t += 3) {
    const corners = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!] as const;
    const above = corners.map((corner) => values[corner]! >= level);
    if (!corners.every((corner) => Number.isFinite(values[corner]!))) continue;
    // The corner alone on its side; none when all are on one.
    const lone = above[0] === above[1] ? (above[1] === above[2] ? -1 : 2) : above[0] === above[2] ? 1 : 0;
    if (lone < 0) continue;
    push(corners[lone as 0 | 1 | 2], corners[((lone + 1) % 3) as 0 | 1 | 2]);
    push(corners[lone as 0 | 1 | 2], corners[((lone + 2) % 3) as 0 | 1 | 2]);
  }
  return Float32Array.from(out);
}
