import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import type { BodyPart } from "../../setup/types/truckTypes.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { type Outline, outlineArea, type SectionPlane } from "./outline.ts";
import { outlineDistance } from "./outlineDistance.ts";
import { placedBody, ringMesh } from "./placedBody.ts";
import { sliceMesh } from "./sliceMesh.ts";
import { sliceBox, sliceTube } from "./slicePart.ts";

/** What the plane cuts of one thing. */
export interface SectionFigure {
  /** `envelope`: what the ring sweeps. `part`: of the body. `ring`: tire and rim at one pose. */
  readonly kind: "envelope" | "part" | "ring";
  readonly name: string;
  readonly side: Side;
  readonly outlines: readonly Outline[];
}

/** A body part cut by the plane, and how far from the envelope's outline. */
export interface SectionClearance {
  readonly part: string;
  readonly side: Side;
  /** mm, in the plane; 0 where the outlines meet. Never less than the distance in space: that may be nearer off the plane. */
  readonly distanceInPlane: number;
}

export interface EnvelopeSection {
  readonly plane: SectionPlane;
  readonly figures: readonly SectionFigure[];
  /** mm², of the envelopes together. */
  readonly envelopeArea: number;
  /** Nearest first; parts that the plane does not cut, or whose side's envelope it does not cut, are not in it. */
  readonly clearances: readonly SectionClearance[];
}

/**
 * Cuts envelopes, the body parts of their sides and, where `pose` is given, tire and rim there, by a plane. Arms and
 * brakes are not in it.
 * @param envelopes in vehicle axes. @param budget once it is spent, parts left are not cut
 */
export function envelopeSection(
  model: Model,
  envelopes: readonly { readonly side: Side; readonly mesh: TriangleMesh }[],
  plane: SectionPlane,
  pose: SolvedPose | null,
  budget: Budget = Budget.endless(),
): EnvelopeSection {
  const figures: SectionFigure[] = [];
  const clearances: SectionClearance[] = [];
  const add = (kind: SectionFigure["kind"], name: string, side: Side, outlines: readonly Outline[]) => {
    if (outlines.length > 0) figures.push({ kind, name, side, outlines });
  };
  let envelopeArea = 0;
  for (const { side, mesh } of envelopes) {
    const swept = sliceMesh(mesh, plane);
    add("envelope", `envelope ${side}`, side, swept);
    envelopeArea += swept.reduce((sum, outline) => sum + outlineArea(outline), 0);
    if (pose !== null) add("ring", `tire and rim ${side}`, side, slicedRing(model, pose, side, plane));
    const around = pointsOf(swept);
    for (const { part } of placedBody(model.setup.truck.body, side)) {
      if (budget.isSpent(0)) break;
      const outlines = slicedPart(part, plane);
      add("part", part.name, side, outlines);
      const distance = outlineDistance(swept, outlines);
      if (distance !== null) clearances.push({ part: part.name, side, distanceInPlane: distance });
      budget.isSpent(PIECE_WORK * (sizeOf(part) + around * pointsOf(outlines)));
    }
  }
  clearances.sort((a, b) => a.distanceInPlane - b.distanceInPlane);
  return { plane, figures, envelopeArea, clearances };
}

/** Microseconds, about, for a triangle of a part, or for two pieces of outlines held against each other. */
const PIECE_WORK = 0.02;

function sizeOf(part: BodyPart): number {
  return part.kind === "mesh" ? part.triangles.length / 3 : 0;
}

function pointsOf(outlines: readonly Outline[]): number {
  return outlines.reduce((sum, { points }) => sum + points.length / 2, 0);
}

/** A body part where the plane cuts it. */
function slicedPart(part: BodyPart, plane: SectionPlane): Outline[] {
  switch (part.kind) {
    case "path":
      return sliceTube(part.points, part.radius, plane);
    case "box":
      return sliceBox(part.min, part.max, plane);
    case "mesh":
      return sliceMesh(part, plane);
  }
}

function slicedRing(model: Model, pose: SolvedPose, side: Side, plane: SectionPlane): Outline[] {
  const { wheelCenter, wheelAxis } = pose[side];
  // The right ring is the mirror image: turned solid about its axis, it is the same shape along its own outboard axis.
  return sliceMesh(ringMesh(model.ring, wheelCenter, wheelAxis), plane);
}
