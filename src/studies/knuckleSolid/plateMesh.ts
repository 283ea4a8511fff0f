import earcut from "earcut";
import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import { addScaled, cross, type Vec3 } from "../../geometry/vec.ts";
import type { PlateSetup } from "../../setup/types/buildTypes.ts";
import { MeshRows } from "./roundMesh.ts";

/** A plate with its holes as a closed mesh; holes have `facets` flat sides. */
export function plateMesh(plate: PlateSetup, facets: number): TriangleMesh {
  const rows = new MeshRows();
  const holes = plate.holes.map(({ at: [u, v], diameter }) =>
    Array.from({ length: facets }, (_, i): readonly [number, number] => {
      const turn = (-2 * Math.PI * i) / facets; // clockwise: material on the left of the way
      return [u + (diameter / 2) * Math.cos(turn), v + (diameter / 2) * Math.sin(turn)];
    }),
  );
  const loops = [counterclockwise(plate.outline), ...holes];
  const flat = loops.flat();
  const starts: number[] = [];
  for (let i = 1, at = loops[0]!.length; i < loops.length; at += loops[i]!.length, i++) starts.push(at);
  const sheet = (off: number) => flat.map(([u, v]) => rows.vertex(onPlate(plate, u, v, off)));
  const top = sheet(plate.thickness / 2);
  const bottom = sheet(-plate.thickness / 2);
  const faces = earcut(flat.flat(), starts);
  for (let t = 0; t < faces.length; t += 3) {
    const [a, b, c] = [faces[t]!, faces[t + 1]!, faces[t + 2]!];
    const isLeft = turnOf(flat[a]!, flat[b]!, flat[c]!) > 0;
    const [first, last] = isLeft ? [b, c] : [c, b];
    rows.triangle(top[a]!, top[first]!, top[last]!);
    rows.triangle(bottom[a]!, bottom[last]!, bottom[first]!);
  }
  let at = 0;
  for (const loop of loops) {
    const own = loop.map((_, i) => at + i);
    rows.band(
      own.map((i) => bottom[i]!),
      own.map((i) => top[i]!),
    );
    at += loop.length;
  }
  return rows.mesh();
}

type Place = readonly [number, number];

function turnOf(a: Place, b: Place, c: Place): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

function counterclockwise(outline: readonly Place[]): readonly Place[] {
  let twice = 0;
  outline.forEach(([u, v], i) => {
    const [nu, nv] = outline[(i + 1) % outline.length]!;
    twice += u * nv - nu * v;
  });
  return twice < 0 ? [...outline].reverse() : outline;
}

/** The directions of a plate, of unit length, knuckle frame. */
export interface PlateAxes {
  readonly across: Vec3;
  readonly up: Vec3;
  /** across × up: the side that is seen on its drawing. */
  readonly normal: Vec3;
}

export function plateAxes({ across, up }: Pick<PlateSetup, "across" | "up">): PlateAxes {
  return { across, up, normal: cross(across, up) };
}

/** A place of a plate in the knuckle frame. @param off from its middle plane, + to the side that is seen */
function onPlate(plate: Pick<PlateSetup, "at" | "across" | "up">, u: number, v: number, off: number): Vec3 {
  const { across, up, normal } = plateAxes(plate);
  return addScaled(addScaled(addScaled(plate.at, across, u), up, v), normal, off);
}
