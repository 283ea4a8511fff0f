import fc from "fast-check";
import type { PartInput } from "../../src/gaps/partShape.ts";
import { addScaled, type Vec3 } from "../../src/geometry/vec.ts";
import { flatMesh } from "./flatMesh.ts";
import { aboutAxis, axisOf, type RingCase, type WheelCase } from "./referenceRing.ts";
import { ringCases } from "./rings.ts";

/** Evenly spread, ends included (fast-check's own doubles crowd around zero). */
export const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((step) => min + ((max - min) * step) / 1_000_000);

const DEG = Math.PI / 180;

export const offsets = (size: number): fc.Arbitrary<Vec3> =>
  fc.tuple(between(-size, size), between(-size, size), between(-size, size));

/** A left wheel of a truck in use: leaned, steered, moved. */
export function wheels(): fc.Arbitrary<WheelCase> {
  return fc
    .tuple(
      between(-60, 60),
      between(640, 900),
      between(250, 450),
      between(-42 * DEG, 42 * DEG),
      between(-9 * DEG, 9 * DEG),
    )
    .map(([x, y, z, steer, camber]) => ({ center: [x, y, z] as Vec3, axis: axisOf(steer, camber) }));
}

export interface GapCase {
  readonly ring: RingCase;
  readonly wheel: WheelCase;
  readonly part: PartInput;
}

/** Parts about a place: a path with a radius, a solid box, a few triangles. */
function partsAbout(place: Vec3, kinds: readonly PartInput["kind"][]): fc.Arbitrary<PartInput> {
  const near = (size: number) => offsets(size).map((o) => addScaled(place, o, 1));
  const name = fc.constant("part");
  const made = {
    path: fc.record({
      name,
      kind: fc.constant("path" as const),
      radius: fc.oneof(fc.constant(0), between(0, 25)),
      points: fc.array(near(250), { minLength: 1, maxLength: 6 }),
    }),
    box: fc
      .tuple(fc.constant(place), between(1, 160), between(1, 160), between(1, 160))
      .map(([[x, y, z], a, b, c]) => ({
        name: "part",
        kind: "box" as const,
        min: [x - a, y - b, z - c] as Vec3,
        max: [x + a, y + b, z + c] as Vec3,
      })),
    mesh: fc.integer({ min: 1, max: 5 }).chain((count) =>
      fc.array(near(220), { minLength: count + 2, maxLength: count + 2 }).map((vertices) => ({
        name: "part",
        kind: "mesh" as const,
        ...flatMesh(
          vertices,
          Array.from({ length: count }, (_, i) => [i, i + 1, i + 2] as const),
        ),
      })),
    ),
  };
  return fc.oneof(...kinds.map((kind) => made[kind] as fc.Arbitrary<PartInput>));
}

/** Rings, wheels and parts close by, from deep inside the ring to 200 mm off it, the barrel and the axis included. */
export function gapCases(
  kinds: readonly PartInput["kind"][] = ["path", "box", "mesh"],
): fc.Arbitrary<GapCase> {
  return fc
    .tuple(
      fc.constantFrom(...ringCases),
      wheels(),
      between(-330, 330),
      between(0, 620),
      between(0, 2 * Math.PI),
    )
    .chain(([ring, wheel, x, r, turn]) =>
      partsAbout(aboutAxis(wheel, x, r, turn), kinds).map((part) => ({ ring, wheel, part })),
    );
}

/** Moves a part as a whole. */
export function movedPart(part: PartInput, by: Vec3): PartInput {
  const move = (p: Vec3): Vec3 => addScaled(p, by, 1);
  if (part.kind === "path") return { ...part, points: part.points.map(move) };
  if (part.kind === "box") return { ...part, min: move(part.min), max: move(part.max) };
  return { ...part, positions: part.positions.map((value, i) => value + by[i % 3]!) };
}
