import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import { bodyDistances } from "../../studies/envelope/bodyDistances.ts";
import { envelopeOf } from "../../studies/envelope/envelopeOf.ts";
import {
  type EnvelopeRange,
  stanceRange,
  straightRange,
  wholeRange,
} from "../../studies/envelope/envelopeRange.ts";
import type { Model } from "../../studies/model/model.ts";
import { mirroredMesh } from "../../studies/section/placedBody.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { bandLines } from "./bandLines.ts";
import type { DrawnEnvelope, DrawnSide, EnvelopeAsk } from "./envelopeMessages.ts";

/**
 * Both sides' envelopes to look at, with their distances to the body; null where no pose of the range can be reached.
 * @param edges where bands of distance end, mm; @param onProgress the share done, 0 … 1
 */
export function drawnEnvelopeOf(
  model: Model,
  ask: EnvelopeAsk,
  edges: readonly number[],
  onProgress: (share: number) => void,
): DrawnEnvelope | null {
  const range = rangeOf(model, ask);
  const sweep = (side: Side, from: number, to: number): TriangleMesh | null => {
    const swept = envelopeOf(model, side, range, {
      preset: "preview",
      onProgress: (share) => onProgress(from + share * (to - from)),
    });
    return swept.ok ? swept.envelope.mesh : null;
  };
  // Each range goes as far to one lock as to the other: where the sides are mirror images, so are their envelopes.
  const left = sweep("left", 0, model.mirrored ? 1 : 0.5);
  const right = model.mirrored ? left && mirroredMesh(left) : sweep("right", 0.5, 1);
  if (left === null || right === null) return null;
  return {
    ...ask,
    edges,
    sides: [drawnSide(model, "left", left, edges), drawnSide(model, "right", right, edges)],
  };
}

function rangeOf(model: Model, { choice, travel }: EnvelopeAsk): EnvelopeRange {
  if (choice === "whole") return wholeRange(model);
  return choice === "stance" ? stanceRange(travel) : straightRange(model);
}

function drawnSide(model: Model, side: Side, mesh: TriangleMesh, edges: readonly number[]): DrawnSide {
  const distances = bodyDistances(model, side, mesh);
  return {
    side,
    positions: Float32Array.from(mesh.positions),
    triangles: mesh.triangles,
    distances,
    lines: edges.map((edge) => bandLines(mesh, distances, edge)),
  };
}
