import * as z from "zod";
import { block, list } from "../fields/blockFields.ts";
import { choiceField, pointField, textField, tupleMend } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { MAX_LENGTH, MAX_MISTAKES, MAX_TRIANGLES } from "../reading/limits.ts";
import type { MeshPart } from "../types/truckTypes.ts";
import { bodyPartFields, resolvePartNaming } from "./bodyParts.ts";
import { MESH_UNITS, placedPositions, placeField } from "./meshPlace.ts";

const vertexNumber = z
  .int({ error: ({ input }) => (Number.isInteger(input) ? "is too large" : "must be a whole number") })
  .min(0, { error: "must be 0 or more" });

/** A mesh, as typed: inline, or in a file beside the setup. */
export const meshField = block(
  "a surface of triangles: vertices with triangles, or file",
  {
    ...bodyPartFields,
    kind: z.literal("mesh").meta({ description: "a surface of triangles" }),
    vertices: list("corners of the triangles", pointField("a vertex, vehicle axes"), {
      most: 3 * MAX_TRIANGLES,
    }).optional(),
    triangles: list(
      "triangles as three vertex numbers each, counted from 0",
      z
        .tuple([vertexNumber, vertexNumber, vertexNumber], {
          error: tupleMend("a triangle", "a triangle of three vertex numbers, [0, 1, 2]"),
        })
        .meta({ description: "a triangle" }),
      { least: 1, most: MAX_TRIANGLES },
    ).optional(),
    file: textField("mesh file beside the setup: STL, OBJ, PLY or GLB; a path from the setup").optional(),
    unit: choiceField(
      "unit of the numbers in the mesh file; default m for GLB, the setup's units for any other",
      MESH_UNITS,
    ).optional(),
    place: placeField.optional(),
  },
  {
    oneOf: [{ required: ["vertices", "triangles"] }, { required: ["file"] }],
    dependentRequired: { vertices: ["triangles"], triangles: ["vertices"], unit: ["file"], place: ["file"] },
  },
);

export type MeshAsTyped = z.infer<typeof meshField>;

/** The mesh in mm, vehicle axes; one from a file is scaled and put in its place. Null = an issue was added. */
export function resolveMesh(typed: MeshAsTyped, reading: BlockReading): MeshPart | null {
  if (typed.file !== undefined) return resolveMeshFile(typed, typed.file, reading);
  for (const key of ["unit", "place"] as const) {
    if (typed[key] !== undefined) reading.issue([key], typed[key], "goes with file, not with vertices");
  }
  if (!typed.vertices || !typed.triangles) {
    const [missing, present] = typed.vertices ? ["triangles", "vertices"] : ["vertices", "triangles"];
    const given = typed.vertices ?? typed.triangles;
    reading.issue(
      [missing!],
      undefined,
      given ? `required with ${present}` : "required: vertices and triangles, or file",
    );
    return null;
  }
  const positions = new Float64Array(3 * typed.vertices.length);
  typed.vertices.forEach((vertex, i) => {
    positions.set(reading.point(vertex, "vertices", i), 3 * i);
  });
  checkTriangles(typed.triangles, typed.vertices.length, reading);
  const triangles = Uint32Array.from(typed.triangles.flat());
  return { ...resolvePartNaming(typed), kind: "mesh", positions, triangles };
}

function checkTriangles(
  triangles: readonly (readonly [number, number, number])[],
  vertexCount: number,
  reading: BlockReading,
): void {
  if (triangles.length === 0) reading.issue(["triangles"], triangles, "must have at least one triangle");
  let wrong = 0;
  for (const [i, triangle] of triangles.entries()) {
    for (const corner of [0, 1, 2] as const) {
      if (triangle[corner] < vertexCount) continue;
      const mend = `there is no such vertex; numbers run from 0 to ${vertexCount - 1}`;
      reading.issue(["triangles", i, corner], triangle[corner], mend);
      wrong++;
    }
    if (wrong >= MAX_MISTAKES) return;
  }
}

function resolveMeshFile(typed: MeshAsTyped, file: string, reading: BlockReading): MeshPart | null {
  for (const key of ["vertices", "triangles"] as const) {
    if (typed[key] !== undefined)
      reading.issue([key], typed[key], "give file, or vertices and triangles, not both");
  }
  const refuse = (mend: string): null => {
    reading.issue(["file"], file, mend);
    return null;
  };
  const mesh = reading.mesh(file);
  if ("refused" in mesh) return refuse(mesh.refused);
  const positions = placedPositions(mesh, typed.unit, typed.place ?? {}, reading);
  if (!positions) return null;
  if (!positions.every((value) => Math.abs(value) <= MAX_LENGTH))
    return refuse("has a vertex more than 100 m away or not a number; check unit, place and the file");
  const { triangles } = mesh;
  if (triangles.length === 0 || triangles.length > 3 * MAX_TRIANGLES)
    return refuse(`must hold between 1 and ${MAX_TRIANGLES} triangles`);
  if (triangles.length % 3 !== 0 || !triangles.every((corner) => 3 * corner + 2 < positions.length))
    return refuse("has a triangle with a vertex that is not there; export it again");
  return { ...resolvePartNaming(typed), kind: "mesh", positions, triangles };
}
