import type { Side } from "../../suspension/frontEnd.ts";
import { POSE_ROW } from "../../suspension/poseRow.ts";
import { INNER_ENDS_ROW } from "../../suspension/steering.ts";
import { LimitStatus } from "../limits/limitStatus.ts";
import type { Model } from "../model/model.ts";

/** Which limit is passed where, of those of both wheels. */
export interface MapPastLimit {
  /** Those passed in some cell. */
  readonly limits: readonly { readonly side: Side; readonly name: string }[];
  /** Of each cell: its place in `limits`, the one passed by the greatest share of its range; −1 = none, or out of reach. */
  readonly passed: Int16Array;
  /** Least share in hand of all limits, below 0 where one is passed: what the border follows. NaN where out of reach. */
  readonly share: Float64Array;
}

/** Fills in, row by row, which limit is passed in each cell of a map; both wheels share it. */
export class LimitCells implements MapPastLimit {
  readonly limits: { readonly side: Side; readonly name: string }[] = [];
  readonly passed: Int16Array;
  readonly share: Float64Array;
  private readonly status: Readonly<Record<Side, LimitStatus>>;
  private readonly places = new Map<string, number>();
  /** Of the row swept last, each column of the left side: the limit passed, −1 = none, and the least share in hand. */
  private readonly onLeft: Int16Array;
  private readonly leftShare: Float64Array;

  constructor(model: Model, rows: number, cols: number) {
    const cells = rows * cols;
    this.onLeft = new Int16Array(cols);
    this.leftShare = new Float64Array(cols);
    this.passed = new Int16Array(cells).fill(-1);
    this.share = new Float64Array(cells).fill(Number.NaN);
    this.status = { left: new LimitStatus(model, "left"), right: new LimitStatus(model, "right") };
  }

  /**
   * One row of the map at the columns in reach.
   * @param ends a row of `innerEndsTo` a column. @param left, right a pose row a column; right null = of mirrored sides
   * the right wheel does at −steer what the left one does.
   */
  sweep(
    { travels, steers }: { readonly travels: Float64Array; readonly steers: Float64Array },
    row: number,
    can: Uint8Array,
    ends: Float64Array,
    left: Float64Array,
    right: Float64Array | null,
  ): void {
    const { leftShare, onLeft, status } = this;
    const cols = can.length;
    const travel = travels[row]!;
    for (let col = 0; col < cols; col++) {
      if (can[col] === 0) continue;
      onLeft[col] = status.left.limitStatusAt(
        left,
        col * POSE_ROW,
        ends,
        col * INNER_ENDS_ROW,
        travel,
        steers[col]!,
      );
      leftShare[col] = status.left.share;
    }
    for (let col = 0; col < cols; col++) {
      if (can[col] === 0) continue;
      let found = onLeft[col]!;
      let share = leftShare[col]!;
      let side: Side = "left";
      const twin = cols - 1 - col;
      const onRight =
        right === null
          ? onLeft[twin]!
          : status.right.limitStatusAt(
              right,
              col * POSE_ROW,
              ends,
              col * INNER_ENDS_ROW,
              travel,
              steers[col]!,
            );
      const rightShare = right === null ? leftShare[twin]! : status.right.share;
      if (onRight >= 0 && (found < 0 || rightShare < share)) {
        found = onRight;
        side = "right";
      }
      share = Math.min(share, rightShare);
      const cell = row * cols + col;
      this.share[cell] = share;
      if (found >= 0) this.passed[cell] = this.placeOf(side, status[side].limits[found]!.name);
    }
  }

  /** As plain data. */
  told(): MapPastLimit {
    const { limits, passed, share } = this;
    return { limits, passed, share };
  }

  private placeOf(side: Side, name: string): number {
    const key = `${side} ${name}`;
    let place = this.places.get(key);
    if (place === undefined) {
      place = this.limits.length;
      this.places.set(key, place);
      this.limits.push({ side, name });
    }
    return place;
  }
}
