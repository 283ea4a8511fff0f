import { choiceField, textField } from "../fields/fields.ts";
import { DEFAULT_SIDE } from "../types/defaults.ts";
import type { PartSide } from "../types/types.ts";

/** What every body part has. */
export const bodyPartFields = {
  name: textField("name of the part, unique in the setup"),
  side: choiceField("which side of the truck has it; default both: as given and mirrored", [
    "both",
    "left",
    "right",
  ]).optional(),
};

/** Name and side of a body part. */
export function resolvePartNaming(typed: { readonly name: string; readonly side?: PartSide | undefined }): {
  readonly name: string;
  readonly side: PartSide;
} {
  return { name: typed.name, side: typed.side ?? DEFAULT_SIDE };
}
