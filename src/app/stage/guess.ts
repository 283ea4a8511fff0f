import { isWithin, type KeyPath } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";
import { ASSUMED_LAYOUT } from "../../setup/worksheet/assumedLayout.ts";

/**
 * Whether something of a truck begun with the worksheet is the assumed layout's still, in part or whole: it is drawn dashed.
 * @param paths places of the setup that its shape is made of
 */
export function isGuess({ fromExample }: Pick<Setup, "fromExample">, ...paths: readonly KeyPath[]): boolean {
  if (fromExample?.of !== ASSUMED_LAYOUT) return false;
  return fromExample.fields.some((field) =>
    paths.some((path) => isWithin(field, path) || isWithin(path, field)),
  );
}

/** What makes up the parts of the front end. */
export const MADE_OF = {
  upperArm: [["truck", "upperArm"]],
  lowerArm: [["truck", "lowerArm"]],
  knuckle: [["knuckle"]],
  tieRod: [
    ["truck", "steering", "innerEnd"],
    ["knuckle", "steeringArm"],
  ],
} as const satisfies Readonly<Record<string, readonly KeyPath[]>>;
