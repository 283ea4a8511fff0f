import type { KnuckleInput } from "../../suspension/inputs.ts";
import type { Unknown } from "./fitKnuckle.ts";

/** A knuckle with one dimension more by an amount, mm or rad. Toe built in is in the steering arm's place already: by itself it moves nothing on the truck. */
export function changedKnuckle<K extends KnuckleInput>(whole: K, unknown: Unknown, by: number): K {
  const [x, y, z] = whole.steeringArm;
  switch (unknown) {
    case "toe":
      return whole;
    case "armX":
      return { ...whole, steeringArm: [x + by, y, z] };
    case "armY":
      return { ...whole, steeringArm: [x, y + by, z] };
    case "armZ":
      return { ...whole, steeringArm: [x, y, z + by] };
    default:
      return { ...whole, [unknown]: whole[unknown] + by };
  }
}
