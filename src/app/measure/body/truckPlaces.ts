import { bodyPointName } from "../../../setup/blocks/readings/readingPoint.ts";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { measuredPoints } from "../../../studies/plausibility/fileUnits.ts";
import { fieldName } from "../../../studies/wording/fieldName.ts";
import { PLACE_WORDS } from "../../../studies/wording/gaugeWords.ts";
import { pointWords } from "../../../studies/wording/measureNames.ts";
import { POSE } from "../../../suspension/poseRow.ts";
import { solvePose } from "../../../suspension/solvePose.ts";
import type { TruckPlace } from "../../state/scanPick.ts";
import type { Truck } from "../../state/truck.ts";

/** A place of the truck that a field of the setup holds. */
export interface HeldPlace extends TruckPlace {
  readonly path: KeyPath;
}

/** The points of a truck that its setup holds, named, as measured. A part on the right alone is seen there. */
export function heldPlaces({ setup }: Truck): readonly HeldPlace[] {
  return measuredPoints(setup).map(({ path, at }) => {
    const [, block, index, key, i] = path;
    const part = block === "body" ? setup.truck.body[Number(index)] : undefined;
    const isPoint = part && key === "points" && typeof i === "number";
    return { name: isPoint ? pointWords(bodyPointName(part.name, i)) : fieldName(path, setup), at, path };
  });
}

/** Every place of a truck that is known by name: points of the setup, and of the wheel as it was measured. */
export function truckPlaces(truck: Truck): readonly TruckPlace[] {
  const pose = solvePose(truck.model.frontEnd, 0, 0);
  const ofWheel = pose.ok
    ? (["wheelCenter", "contactPatch", "tieRodOuter"] as const).map((key) => {
        const row = pose.left.row;
        const at = POSE[key];
        return { name: PLACE_WORDS[key], at: [row[at]!, row[at + 1]!, row[at + 2]!] as const };
      })
    : [];
  return [...heldPlaces(truck), ...ofWheel, { name: PLACE_WORDS.zero, at: [0, 0, 0] }];
}
