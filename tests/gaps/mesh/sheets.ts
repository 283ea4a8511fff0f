import fc from "fast-check";
import type { PartInput } from "../../../src/gaps/partShape.ts";
import { addScaled, cross, normalize, type Vec3 } from "../../../src/geometry/vec.ts";
import { between, wheels } from "../../reference/gapCases.ts";
import { aboutAxis, type RingCase, type WheelCase } from "../../reference/referenceRing.ts";
import { ringCases } from "../../reference/rings.ts";

export type MeshInput = Extract<PartInput, { kind: "mesh" }>;

export interface SheetCase {
  readonly ring: RingCase;
  readonly wheel: WheelCase;
  readonly mesh: MeshInput;
}

/** A repeatable stream of numbers in [−1, 1) (Park and Miller's minimal standard generator, 1988, from memory). */
export function noise(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return (2 * state) / 2147483647 - 1;
  };
}

/**
 * A sheet like a scan: a grid of points bent and shaken by up to `rough` mm, one cell in twelve missing, two
 * triangles a cell. @param center its middle; @param normal which way it faces.
 */
export function sheet(
  center: Vec3,
  normal: Vec3,
  size: number,
  bend: number,
  rough: number,
  side: number,
  seed: number,
): MeshInput {
  const random = noise(seed);
  const n = normalize(normal);
  const u = normalize(cross(n, Math.abs(n[0]) < 0.7 ? [1, 0, 0] : [0, 1, 0]));
  const v = cross(n, u);
  const positions: number[] = [];
  for (let i = 0; i <= side; i++) {
    for (let j = 0; j <= side; j++) {
      const a = (size * (2 * i - side)) / side + rough * random();
      const b = (size * (2 * j - side)) / side + rough * random();
      const height = bend * ((a * a + 0.5 * b * b) / (size * size)) + rough * random();
      positions.push(...addScaled(addScaled(addScaled(center, u, a), v, b), n, height));
    }
  }
  const triangles: number[] = [];
  for (let i = 0; i < side; i++) {
    for (let j = 0; j < side; j++) {
      if (random() > 5 / 6) continue;
      const at = i * (side + 1) + j;
      triangles.push(at, at + 1, at + side + 1, at + 1, at + side + 2, at + side + 1);
    }
  }
  return {
    name: "sheet",
    kind: "mesh",
    positions: Float64Array.from(positions),
    triangles: Uint32Array.from(triangles),
  };
}

/** Sheets about the ring: clear of it, through it, in the hole of the barrel, across the axis. */
export function sheetCases(side: number): fc.Arbitrary<SheetCase> {
  return fc
    .record({
      ring: fc.constantFrom(...ringCases),
      wheel: wheels(),
      place: fc.oneof(
        { weight: 5, arbitrary: fc.tuple(between(-140, 140), between(360, 560)) },
        { weight: 3, arbitrary: fc.tuple(between(-330, 330), between(0, 560)) },
        { weight: 2, arbitrary: fc.tuple(between(-100, 100), between(0, 120)) },
      ),
      turn: between(0, 2 * Math.PI),
      normal: fc.tuple(between(-1, 1), between(-1, 1), between(0.1, 1)),
      size: between(20, 300),
      bend: between(-80, 80),
      rough: fc.constantFrom(0, 0.3, 5),
      seed: fc.integer({ min: 1, max: 1e6 }),
    })
    .map(({ ring, wheel, place, turn, normal, size, bend, rough, seed }) => {
      const center = aboutAxis(wheel, place[0], place[1], turn);
      return { ring, wheel, mesh: sheet(center, normal, size, bend, rough, side, seed) };
    });
}
