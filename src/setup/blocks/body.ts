import type * as z from "zod";
import { list, oneOfBlocks } from "../fields/blockFields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import type { BodyPart } from "../types/truckTypes.ts";
import { meshField, resolveMesh } from "./bodyMesh.ts";
import { boxField, pathField, resolveBox, resolvePath } from "./bodyParts.ts";
import { refuseRepeatedNames } from "./variants.ts";

const partField = oneOfBlocks(
  "a part of the body that the tire might touch",
  "kind",
  ["path", "box", "mesh"],
  [pathField, boxField, meshField],
);

/** The body, as typed. */
export const bodyField = list("parts of the body that the tire might touch; default none", partField);

export type BodyAsTyped = z.infer<typeof bodyField>;

/** The sound parts in mm; a part with something wrong is left out (its issue is in the list already). */
export function resolveBody(typed: BodyAsTyped, reading: BlockReading): readonly BodyPart[] {
  const parts = typed.flatMap((part, i) => {
    if (!reading.isSound(i)) return [];
    const mesh = part.kind === "mesh" && part.file !== undefined ? reading.mesh(part.file) : undefined;
    const known = reading.known.find(part, reading.units, mesh);
    if (known) return [known];
    const resolved = resolvePart(part, reading.inside(i));
    if (!resolved) return [];
    if (reading.isSound(i)) reading.known.keep(part, reading.units, mesh, resolved);
    return [resolved];
  });
  refuseRepeatedNames(typed, reading);
  return parts;
}

function resolvePart(part: BodyAsTyped[number], reading: BlockReading): BodyPart | null {
  switch (part.kind) {
    case "path":
      return resolvePath(part, reading);
    case "box":
      return resolveBox(part, reading);
    case "mesh":
      return resolveMesh(part, reading);
  }
}
