import type { Side } from "../../suspension/frontEnd.ts";
import { limitTravel } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";
import { airLoad } from "./airCurve.ts";
import { type AirSeat, airSeat } from "./airSeat.ts";
import { motionOf, springLoad } from "./airState.ts";

/** A height at which the spring, held at one pressure, carries just its corner. mm. */
export interface AirBalance {
  readonly travel: number;
  readonly height: number;
  /** A push down is answered by more load. Unstable: it moves away to either side. */
  readonly stable: boolean;
}

/** Where one side stands at a pressure. */
export interface AirEquilibrium {
  readonly side: Side;
  /** MPa, gauge. */
  readonly pressure: number;
  /** From full bump up; see `SAMPLES`. */
  readonly balances: readonly AirBalance[];
  /**
   * Where it comes to rest raised from full bump: at a balance; or `bump` where it does not lift off its seat, `droop` where
   * it lifts to the end of travel; `unknown` where the curve ends on the way.
   */
  readonly rest: "balance" | "bump" | "droop" | "unknown";
  /** mm; null when unknown. */
  readonly travel: number | null;
  /** What it sits on until it is lifted. */
  readonly seat: AirSeat;
}

/**
 * Heights looked at over the range of travel; between two of them with opposite signs the balance is bisected. Two
 * balances closer than that, a few tenths of a millimeter, would both be missed.
 */
const SAMPLES = 513;

/** Where one side of the truck stands with its spring held at a gauge pressure; null without spring, curve or weights. */
export function airEquilibrium(model: Model, side: Side, pressure: number): AirEquilibrium | null {
  const { airSpring: spring, masses } = model.setup;
  if (spring === null || spring.curve === null || masses === null) return null;
  const seat = airSeat(model, side);
  const low = leastTravel(model);
  const high = seat.travel;
  /** Load the spring carries more than it must, N: more than 0 lifts the truck. NaN outside the curve. */
  const excess = (travel: number, held = pressure): number => {
    const motion = motionOf(model, spring, side, travel);
    if (motion === null) return Number.NaN;
    // An empty bag carries nothing, wherever its curve begins.
    if (held === 0) return -springLoad(masses, side, motion);
    return airLoad(spring, motion.height, held) - springLoad(masses, side, motion);
  };
  const balances: AirBalance[] = [];
  const add = (travel: number, stable: boolean) => {
    const motion = motionOf(model, spring, side, travel);
    if (motion !== null) balances.push({ travel, height: motion.height, stable });
  };
  const first = excess(high);
  // A bag carries less the less air is in it: what its chart's least pressure does not lift, no lower one does.
  const least = spring.curve.kind === "loads" ? spring.curve.pressures[0]! : 0;
  const most = Number.isNaN(first) && pressure < least ? excess(high, least) : first;
  let rest: AirEquilibrium["rest"] | null = Number.isNaN(most)
    ? "unknown"
    : most <= 0
      ? "bump"
      : Number.isNaN(first)
        ? "unknown"
        : null;
  let travel = rest === "bump" ? high : null;
  let before = high;
  let was = first;
  for (let i = 1; i < SAMPLES; i++) {
    const at = high + ((low - high) * i) / (SAMPLES - 1);
    const now = excess(at);
    if (Number.isNaN(now) && rest === null) rest = "unknown";
    if (was > 0 !== now > 0 && !Number.isNaN(was) && !Number.isNaN(now)) {
      const found = bisected(excess, before, at, was > 0);
      // Going up from bump: lifting until it carries no more than it must is stable.
      add(found, was > 0);
      if (rest === null && was > 0) {
        rest = "balance";
        travel = found;
      }
    }
    before = at;
    was = now;
  }
  return { side, pressure, balances, rest: rest ?? "droop", travel: rest === null ? low : travel, seat };
}

/** As far as the truck can be lifted: the setup's travel, as far as its strap and both wheels let it. */
function leastTravel(model: Model): number {
  const { low } = limitTravel(model);
  return Math.max(low, model.setup.limits?.droopStrap ?? low);
}

function bisected(excess: (travel: number) => number, from: number, to: number, positive: boolean): number {
  let [a, b] = [from, to];
  for (let i = 0; i < 60; i++) {
    const middle = 0.5 * (a + b);
    if (excess(middle) > 0 === positive) a = middle;
    else b = middle;
  }
  return 0.5 * (a + b);
}
