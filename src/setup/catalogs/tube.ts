import type { FileUnits } from "../../units/lengthUnits.ts";
import { parseLength } from "../../units/parseLength.ts";
import { plainLengthText } from "../../units/plainLengthText.ts";
import { resolveTubeSize, type TubeSizeAsTyped, tubeSizeShape } from "../blocks/build.ts";
import { textField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { setAt } from "../reading/setAt.ts";
import { bareTyped } from "../reading/typedPair.ts";
import { valueAt } from "../types/keyPath.ts";

/** A round tube that a member may be made of. mm. */
export interface CatalogTube {
  readonly diameter: number;
  readonly wall: number;
  /** Name of a material; null = not told. */
  readonly material: string | null;
}

/** What a tube is in a catalog. */
export const tubeShape = {
  ...tubeSizeShape,
  material: textField(
    "name of its material, of the catalog of materials or of build.materials; left out: a member keeps its own",
  ).optional(),
};

/** mm. */
export function resolveTube(
  typed: TubeSizeAsTyped & { readonly material?: string | undefined },
  reading: BlockReading,
): CatalogTube {
  return { ...resolveTubeSize(typed, reading), material: typed.material ?? null };
}

/** A copy of a member as typed with a tube's diameter and wall, and its material where that is told. @param units the document's */
export function withTube(
  member: unknown,
  { diameter, wall, material }: CatalogTube,
  units: FileUnits,
): unknown {
  const sized = setAt(
    setAt(member, ["diameter"], plainLengthText(diameter, units)),
    ["wall"],
    plainLengthText(wall, units),
  );
  return material === null ? sized : setAt(sized, ["material"], material);
}

/** mm. Sizes are alike this closely: far finer than any tube is drawn. */
const ALIKE = 1e-6;

/**
 * Whether a member has a tube's diameter, wall and, where that is told, material.
 * @param member as typed, with the build's material where it has none of its own
 * @param units the document's
 */
export function isOfTube(member: unknown, tube: CatalogTube, units: FileUnits): boolean {
  const isAlike = (key: "diameter" | "wall") => {
    const typed = bareTyped(valueAt(member, [key]));
    const read = typeof typed === "number" || typeof typed === "string" ? parseLength(typed, units) : null;
    return read?.ok === true && Math.abs(read.mm - tube[key]) < ALIKE;
  };
  const isOfMaterial = tube.material === null || valueAt(member, ["material"]) === tube.material;
  return isAlike("diameter") && isAlike("wall") && isOfMaterial;
}
