import type { Model } from "../../src/studies/model/model.ts";
import type { Comparison } from "./comparison.ts";
import type { ClockedJob } from "./job.ts";
import { measure, measureInTurn, type Timing, timesAsLong } from "./measure.ts";
import { type NativePose, nativePoses } from "./nativePose.ts";
import { gridOf, kernelInputs } from "./poseGrid.ts";
import { poseTable } from "./poseTable.ts";

/** Travels and steers; few enough that the rows stay in a core's own cache. */
const GRID = 17;
const ROUNDS = 20;
const REPEATS = 100;
/** Share by which the sums of all numbers of all rows may differ: the compiler may round otherwise. */
const SAME_SUM = 1e-9;

/**
 * The pose kernel against the same arithmetic in C++ -O3: the same inputs, each pose to a row of its own.
 * Both run in turn, the C++ in a process of its own that reads the clock around its loop.
 */
export function poseAgainstNative(model: Model): Comparison {
  const inputs = kernelInputs(model, gridOf(model, GRID));
  const table = poseTable(inputs);
  const size = ROUNDS * 2 * GRID * GRID;
  const each = "pose row (one wheel)";
  const ours: ClockedJob = {
    name: "poseRowTo",
    each,
    size,
    repeats: REPEATS,
    clock: () => ({ ns: table.clock(ROUNDS), checksum: table.rows.reduce((sum, x) => sum + x, 0) }),
  };
  const native = nativePoses(inputs, [["-O3"], ["-O3", "-march=native"]]);
  if (native === null) {
    return { timings: [measure(ours)], targets: [], notes: ["C++: skipped, no compiler (set CXX to one)"] };
  }
  try {
    const jobOf = ({ flags, clock }: NativePose): ClockedJob => ({
      name: `pose.cpp ${flags}`,
      each,
      size,
      repeats: REPEATS,
      clock: () => clock(ROUNDS),
    });
    const [mine, ...theirs] = measureInTurn([ours, ...native.builds.map(jobOf)]) as [Timing, ...Timing[]];
    for (const { job, checksum } of theirs) {
      const apart = Math.abs(checksum - mine.checksum) / Math.abs(mine.checksum);
      if (!(apart <= SAME_SUM))
        throw new Error(`${job.name}: its sum differs from ours by a share of ${apart}`);
    }
    const [plain, tuned] = theirs as [Timing, Timing];
    return {
      timings: [mine, ...theirs],
      targets: [
        {
          what: `time of poseRowTo / ${plain.job.name}`,
          found: timesAsLong(mine, plain),
          limit: { atMost: 1.5 },
          unit: "×",
        },
      ],
      notes: [
        `C++ by ${native.compiler}; poseRowTo / ${tuned.job.name}: ${timesAsLong(mine, tuned).toFixed(2)} ×`,
      ],
    };
  } finally {
    native.remove();
  }
}
