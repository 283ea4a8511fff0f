import type { InnerEndSpread } from "./motionBound.ts";
import type { PoseStatus } from "./poseStatus.ts";
import { INNER_ENDS_ROW, type Steering } from "./steering.ts";

/** Steers kept; then all are forgotten. Searches halve ranges, so they come back to the same ones. */
const MOST_KEPT = 4096;

interface Ends {
  readonly row: Float64Array;
  readonly status: PoseStatus;
}

interface Spread extends InnerEndSpread {
  readonly half: number;
  readonly proven: boolean;
}

/** The same steering, which answers from memory where it was asked before: for one that is dear to solve. */
export function rememberSteers(steering: Steering): Steering {
  const ends = new Map<number, Ends>();
  const spreads = new Map<number, Spread>();
  const keep = <T>(known: Map<number, T>, steer: number, value: T): T => {
    if (known.size >= MOST_KEPT) known.clear();
    known.set(steer, value);
    return value;
  };
  const solveEnds = (steer: number): Ends => {
    const row = new Float64Array(INNER_ENDS_ROW);
    return keep(ends, steer, { row, status: steering.innerEndsTo(row, steer) });
  };
  const proveSpread = (steer: number, half: number): Spread => {
    const found: InnerEndSpread = { speedMost: 0, velocityOff: 0 };
    const proven = steering.innerEndSpreadTo(found, steer, half);
    return keep(spreads, steer, { ...found, half, proven });
  };
  return {
    ...steering,
    innerEndsTo(out, steer) {
      const { row, status } = ends.get(steer) ?? solveEnds(steer);
      for (let i = 0; i < INNER_ENDS_ROW; i++) out[i] = row[i]!;
      return status;
    },
    innerEndSpreadTo(out, steer, half) {
      const known = spreads.get(steer);
      const { speedMost, velocityOff, proven } = known?.half === half ? known : proveSpread(steer, half);
      out.speedMost = speedMost;
      out.velocityOff = velocityOff;
      return proven;
    },
  };
}
