import type { Side } from "../../suspension/frontEnd.ts";
import { POSE_ROW } from "../../suspension/poseRow.ts";
import type { Model } from "../model/model.ts";
import { type FrontEndLimit, KEPT, type LimitPlace } from "./frontEndLimit.ts";
import { otherInnerTo } from "./limitCell.ts";
import { limitsOn } from "./limitsOn.ts";

/** The limits of one side against pose rows that somebody else solved, for a map of them. Allocates nothing a pose. */
export class LimitStatus {
  readonly limits: readonly FrontEndLimit[];
  /** At the pose of `limitStatusAt`: the least share in hand of all limits, below 0 where one is passed. */
  share = Number.POSITIVE_INFINITY;
  private readonly place: LimitPlace;
  private readonly innerAt: 0 | 3;
  /** Margins at the pose put last: those of the travel alone stay while it does. */
  private readonly margins: Float64Array;

  constructor(model: Model, side: Side) {
    this.limits = limitsOn(model, side);
    this.innerAt = side === "left" ? 0 : 3;
    this.margins = new Float64Array(this.limits.length);
    this.place = {
      side: model.frontEnd[side].row,
      pose: new Float64Array(POSE_ROW),
      poseAt: 0,
      otherInner: new Float64Array(3),
      travel: Number.NaN,
      steer: 0,
    };
  }

  /**
   * The limit passed at a pose: its place in `limits`, −1 when all are kept. Of several the one passed by the greatest
   * share of its range.
   * @param pose, poseAt a row filled by `poseRowTo` with this side. @param ends, endsAt a row filled by `innerEndsTo`.
   * @param travel mm. @param steer −1 … +1.
   */
  limitStatusAt(
    pose: Float64Array,
    poseAt: number,
    ends: Float64Array,
    endsAt: number,
    travel: number,
    steer: number,
  ): number {
    this.put(pose, poseAt, ends, endsAt, travel, steer);
    const { limits, margins } = this;
    let found = -1;
    let least = 0;
    this.share = Number.POSITIVE_INFINITY;
    for (let i = 0; i < limits.length; i++) {
      const { range } = limits[i]!;
      const margin = margins[i]!;
      const share = (margin + KEPT) / range;
      if (share < this.share) this.share = share;
      if (margin >= -KEPT || margin / range >= least) continue;
      least = margin / range;
      found = i;
    }
    return found;
  }

  /** Fills `out` with the margin of every limit at a pose, mm or radians; parameters as `limitStatusAt`. */
  marginsTo(
    out: Float64Array,
    pose: Float64Array,
    poseAt: number,
    ends: Float64Array,
    endsAt: number,
    travel: number,
    steer: number,
  ): void {
    this.put(pose, poseAt, ends, endsAt, travel, steer);
    out.set(this.margins);
  }

  private put(
    pose: Float64Array,
    poseAt: number,
    ends: Float64Array,
    endsAt: number,
    travel: number,
    steer: number,
  ): void {
    const { limits, margins, place } = this;
    const isSameTravel = travel === place.travel;
    place.pose = pose;
    place.poseAt = poseAt;
    place.travel = travel;
    place.steer = steer;
    otherInnerTo(place.otherInner, ends, endsAt, this.innerAt);
    for (let i = 0; i < limits.length; i++) {
      const limit = limits[i]!;
      if (!(isSameTravel && limit.isOfTravel)) margins[i] = limit.margin(place);
    }
  }
}
