import type * as z from "zod";
import { mmFromUnits } from "../../units/lengthUnits.ts";
import { block } from "../blockFields.ts";
import type { BlockReading } from "../blockReading.ts";
import { numbersField, pointField } from "../fields.ts";
import type { Point } from "../types.ts";

/** Units a mesh file may be in. */
export const MESH_UNITS = ["in", "mm", "cm", "m"] as const;

/** Where a mesh from a file stands on the truck, as typed. */
export const placeField = block("where the mesh stands: first turned about the file's origin, then moved", {
  turn: numbersField(
    "degrees about vehicle X, then Y, then Z, right-hand rule; [90, 0, 0] stands a Y-up file upright; default none",
    "three angles in degrees, [about x, about y, about z]",
  ).optional(),
  move: pointField("where the file's origin goes, vehicle axes; default [0, 0, 0]").optional(),
});

export type PlaceAsTyped = z.infer<typeof placeField>;

/** A mesh file's vertices in mm, vehicle axes. */
export function placedVertices(
  vertices: readonly Point[],
  unit: (typeof MESH_UNITS)[number] | undefined,
  place: PlaceAsTyped | undefined,
  reading: BlockReading,
): Point[] {
  const scale = unit === "m" ? 1000 : unit === "cm" ? 10 : mmFromUnits(1, unit ?? reading.units);
  const [aboutX, aboutY, aboutZ] = (place?.turn ?? [0, 0, 0]).map((deg) =>
    reading.angle(deg),
  ) as unknown as Point;
  const move = place?.move ? reading.point(place.move, "place", "move") : [0, 0, 0];
  const turnX = turnOf(aboutX);
  const turnY = turnOf(aboutY);
  const turnZ = turnOf(aboutZ);
  return vertices.map(([vx, vy, vz]) => {
    const [y1, z1] = turnX(vy * scale, vz * scale);
    const [z2, x2] = turnY(z1, vx * scale);
    const [x3, y3] = turnZ(x2, y1);
    return [x3 + move[0]!, y3 + move[1]!, z2 + move[2]!];
  });
}

/** A turn in the plane; quarter turns are exact. */
function turnOf(angle: number): (u: number, v: number) => readonly [number, number] {
  const quarters = angle / (Math.PI / 2);
  const exact = Number.isInteger(quarters);
  const cos = exact ? [1, 0, -1, 0][((quarters % 4) + 4) % 4]! : Math.cos(angle);
  const sin = exact ? [0, 1, 0, -1][((quarters % 4) + 4) % 4]! : Math.sin(angle);
  return (u, v) => [u * cos - v * sin, u * sin + v * cos];
}
