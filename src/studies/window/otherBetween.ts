import type { Side } from "../../suspension/frontEnd.ts";
import { KeptPoses, type PassedLimit } from "../limits/keptPoses.ts";
import type { Model } from "../model/model.ts";
import { OtherWheel } from "../search/otherWheel.ts";
import { otherArmAt } from "./fieldRanges.ts";

/**
 * The wheel opposite to one whose pose is looked at, over a stretch of a field that leaves the linkage as it is. At one pose of
 * this wheel the other's travel, the same as this one's, changes evenly with the field at either's arm angle; so with every value
 * of the stretch its arm stands somewhere between where it stands at the two ends: there it has to stand and to keep its limits.
 */
export class OtherBetween {
  private readonly wheel: OtherWheel;
  private readonly kept: KeptPoses | null;

  /** @param model at any value @param passed every limit that some pose passes at some value */
  constructor(
    model: Model,
    private readonly side: Side,
    passed: readonly PassedLimit[],
  ) {
    this.wheel = new OtherWheel(model.frontEnd, side, model.mirrored);
    const isLimited = passed.some((limit) => limit.side !== side);
    this.kept = isLimited ? new KeptPoses(model, side, passed, false) : null;
  }

  /** Whether it is proven to. @param low, high the truck at the ends of the stretch @param arm of this wheel, rad */
  keeps(low: Model, high: Model, arm: number, steer: number): boolean {
    const [from, to] = [low, high].map(({ frontEnd }) => otherArmAt(frontEnd, this.side, arm)) as [
      number,
      number,
    ];
    if (Number.isNaN(from + to)) return false;
    return (
      this.wheel.standsBetween(from, to, steer) && (this.kept?.otherKeepsBetween(from, to, steer) ?? true)
    );
  }
}
