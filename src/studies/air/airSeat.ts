import type { Side } from "../../suspension/frontEnd.ts";
import { KEPT } from "../limits/frontEndLimit.ts";
import { limitReader } from "../limits/limitsOf.ts";
import { limitTravel } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";

/** What can hold a truck up with nothing in its bags, by the names of these limits. */
const STOPS = ["bump stop", "air spring compression", "shock compression"] as const;
type SeatStop = (typeof STOPS)[number];

/** Where one side comes down to with nothing in its bag, straight ahead, and on what. */
export interface AirSeat {
  /** mm. */
  readonly travel: number;
  /**
   * The limit that holds it there; `travel end` where the setup's travel ends, `reach` where the linkage follows no
   * farther, before one is met: whether it comes lower is not known.
   */
  readonly on: SeatStop | "travel end" | "reach";
}

const HALVINGS = 40;

/** Where a side comes down to with its bag empty: onto the first that stops it, lengths told by the maker taken as stops. */
export function airSeat(model: Model, side: Side): AirSeat {
  const { low, high } = limitTravel(model);
  const read = limitReader(model);
  /** Of the stops met at a height the one passed farthest; null = none is met. @param over mm that it may be passed by */
  const met = (travel: number, over: number): SeatStop | null => {
    const pose = read(travel, 0);
    let stop: SeatStop | null = null;
    let least = -over;
    for (const one of pose.ok ? pose.margins : []) {
      if (one.side !== side || one.margin >= least) continue;
      const name = STOPS.find((known) => known === one.name);
      if (name === undefined) continue;
      stop = name;
      least = one.margin;
    }
    return stop;
  };
  const passed = met(high, KEPT);
  if (passed === null) {
    // Met at the very end is met.
    const on = met(high, -KEPT) ?? (high < model.setup.travel.bump ? "reach" : "travel end");
    return { travel: high, on };
  }
  let seat: AirSeat = { travel: high, on: passed };
  let kept = low;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = 0.5 * (kept + seat.travel);
    const on = met(middle, KEPT);
    if (on === null) kept = middle;
    else seat = { travel: middle, on };
  }
  return seat;
}
