import { type PartShape, partShapeOf } from "../../gaps/partShape.ts";
import type { RingShape } from "../../gaps/ring/ringShape.ts";
import { type TireRing, tireRing } from "../../gaps/tire/tireOf.ts";
import { type KeyPath, keyText } from "../../setup/types/keyPath.ts";
import type { BodyPart } from "../../setup/types/truckTypes.ts";
import type { Result, Setup, SetupIssue } from "../../setup/types/types.ts";
import { assembleFrontEnd, type FrontEnd, type Side } from "../../suspension/frontEnd.ts";
import { placedStances } from "../stances/placedStances.ts";
import { assemblyIssue } from "./assemblyIssue.ts";
import { hardwarePairs } from "./hardwarePairs.ts";
import type { Pair } from "./pairs.ts";
import { shapeOfRing } from "./solids.ts";
import { springOrShockPairs } from "./springOrShockPairs.ts";

const known = new WeakMap<BodyPart, Map<boolean, PartShape>>();

/**
 * The part cut into cells, as `partShapeOf`, once for each part and hand: the parts of a setup are never changed in place,
 * and a scanned fender takes a while to cut up.
 */
function shapeOfPart(part: BodyPart, mirrored: boolean): PartShape {
  const shapes = known.get(part) ?? new Map<boolean, PartShape>();
  known.set(part, shapes);
  const shape = shapes.get(mirrored) ?? partShapeOf(part, mirrored);
  shapes.set(mirrored, shape);
  return shape;
}

/** A part as one side's wheel sees it: in that side's left-hand frame (the right side mirrored). */
export interface SidedPart {
  readonly side: Side;
  readonly shape: PartShape;
}

/** A setup assembled: everything the studies need, computed once. Immutable. */
export interface Model {
  readonly setup: Setup;
  readonly frontEnd: FrontEnd;
  readonly tire: TireRing;
  readonly ring: RingShape;
  /** Left side's parts first, each side in the setup's order. */
  readonly parts: readonly SidedPart[];
  /** Everything whose gap is measured: the ring against each of `parts`, then what moves, left side first too. */
  readonly pairs: readonly Pair[];
  /** Both sides are exact mirror images, so that one tells of the other with the steering reversed. */
  readonly mirrored: boolean;
}

export type ModelResult = Result<Model>;

/**
 * Assembles a setup, or says which keys do not go together, hold a number that is not finite, or ask for a stance that
 * a wheel cannot stand at.
 * @param file the file's name for the issues
 * @param like a model of the same knuckle, wheel, tire and hardware on other arms: what rides on its knuckle is the same
 */
export function modelOf(setup: Setup, file: string, like?: Model): ModelResult {
  const nonFinite = nonFiniteIssue(setup, file);
  if (nonFinite !== null) return { ok: false, issues: [nonFinite] };
  const issues: SetupIssue[] = [];
  const tire = tireRing(setup.tire, setup.wheel);
  if (!tire.ok) issues.push({ file, key: tire.key, value: tireValue(setup), mend: tire.mend });
  const assembled = assembleFrontEnd({
    upperArm: setup.truck.upperArm,
    lowerArm: setup.truck.lowerArm,
    steering: setup.truck.steering,
    knuckle: setup.knuckle,
    wheelOffset: setup.wheel.offset,
    loadedRadius: tire.ok ? tire.loadedRadius : 0,
    toe: setup.alignment.toe,
  });
  if (!assembled.ok) issues.push(assemblyIssue(assembled.issue, setup, file));
  if (!tire.ok || !assembled.ok) return { ok: false, issues };
  const { frontEnd } = assembled;
  const { stances, issues: unplaced } = placedStances({ setup, frontEnd }, file);
  if (unplaced.length > 0) return { ok: false, issues: unplaced };
  const parts: SidedPart[] = [];
  for (const side of ["left", "right"] as const) {
    for (const part of setup.truck.body) {
      if (part.side !== "both" && part.side !== side) continue;
      parts.push({ side, shape: shapeOfPart(part, isMirrored(part, side)) });
    }
  }
  const mirrored = setup.truck.steering.type === "rack";
  const ring = shapeOfRing(tire.profile, tire.barrelRadius);
  const bodyPairs = parts.map(
    ({ side, shape }): Pair => ({
      kind: "body",
      name: shape.name,
      partName: shape.name,
      solid: "ring",
      side,
      ring,
      part: shape,
    }),
  );
  const pairs = [
    ...bodyPairs,
    ...hardwarePairs(setup, assembled.frontEnd, ring, like?.pairs),
    ...springOrShockPairs(setup, assembled.frontEnd, ring),
  ];
  const placed = stances === setup.stances ? setup : { ...setup, stances };
  return { ok: true, value: { setup: placed, frontEnd, tire, ring, parts, pairs, mirrored } };
}

function tireValue(setup: Setup): string {
  return setup.tire.kind === "size" ? setup.tire.size : setup.tire.kind;
}

/**
 * Points are given for the left side, so a part of the right side is their mirror image, and in the right
 * wheel's mirrored frame it stands as typed. Only a part named `right` and typed at y < 0, where it stands
 * on the truck, has to be mirrored.
 */
function isMirrored(part: BodyPart, side: Side): boolean {
  if (side === "left" || part.side !== "right") return false;
  if (part.kind === "mesh") return part.positions.reduce((sum, y, i) => (i % 3 === 1 ? sum + y : sum), 0) < 0;
  const points = part.kind === "path" ? part.points : [part.min, part.max];
  return points.reduce((sum, p) => sum + p[1], 0) < 0;
}

/**
 * The first number of a setup that is not finite, as an issue; null = all are. A setup that was read has none: this is
 * for setups put together by other means, since nothing worked out from NaN or infinity is an answer.
 */
function nonFiniteIssue(setup: Setup, file: string): SetupIssue | null {
  const path = nonFiniteIn(setup, []);
  if (path === null) return null;
  return { file, key: keyText(path.at), value: String(path.value), mend: "must be a finite number" };
}

function nonFiniteIn(value: unknown, at: KeyPath): { readonly at: KeyPath; readonly value: number } | null {
  if (typeof value === "number") return Number.isFinite(value) ? null : { at, value };
  if (typeof value !== "object" || value === null) return null;
  if (value instanceof Float64Array) {
    for (let i = 0; i < value.length; i++)
      if (!Number.isFinite(value[i])) return { at: [...at, i], value: value[i]! };
    return null;
  }
  if (ArrayBuffer.isView(value)) return null; // whole numbers
  for (const [key, inner] of Object.entries(value)) {
    const found = nonFiniteIn(inner, [...at, Array.isArray(value) ? Number(key) : key]);
    if (found !== null) return found;
  }
  return null;
}

/**
 * The left side of one model beside the right side of another of the same truck: arms or knuckles that differ from side to
 * side. `setup` and `frontEnd.input` tell of the left one.
 */
export function joinedModel(left: Model, right: Model): Model {
  const { frontEnd, pairs } = left;
  return {
    ...left,
    frontEnd: { ...frontEnd, right: right.frontEnd.right },
    // Both lists have the same pairs in the same order.
    pairs: pairs.map((pair, i) => (pair.side === "left" ? pair : right.pairs[i]!)),
    mirrored: false,
  };
}
