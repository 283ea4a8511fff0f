import type { Model } from "../../src/studies/model/model.ts";
import { POSE, POSE_ROW } from "../../src/suspension/poseRow.ts";
import type { Comparison } from "./comparison.ts";
import type { ClockedJob, Job } from "./job.ts";
import { measureInTurn, type Timing, timesAsLong } from "./measure.ts";
import { gridOf, kernelInputs } from "./poseGrid.ts";
import { poseTable } from "./poseTable.ts";
import { type SettledPoses, settledPoses } from "./settledPoses.ts";

/** Travels and steers: droop, middle and bump by both locks and straight ahead. */
const GRID = 3;
const ROUNDS = 2000;
/**
 * mm. How near the closed form the engine has to bring both wheel centers. The closed form itself is tested to
 * 1e-9 mm; the coarser one is shown because a shop would not see the difference.
 */
const ACCURACIES = [1e-9, 1e-6];

/** The pose kernel against a general-purpose physics engine on the same truck at the same poses, both wheels. */
export async function poseAgainstEngine(model: Model): Promise<Comparison> {
  const poses = gridOf(model, GRID);
  const table = poseTable(kernelInputs(model, poses));
  const ours: ClockedJob = {
    name: "poseRowTo, poses of the engine",
    each: "pose (both wheels)",
    size: ROUNDS * poses.length,
    repeats: 30,
    clock: () => ({ ns: table.clock(ROUNDS), checksum: sumOfWheelCenters(table.rows) }),
  };
  const engines = await Promise.all(ACCURACIES.map((accuracy) => settledPoses(model, poses, accuracy)));
  try {
    const jobs = engines.map(
      ({ run }, i): Job => ({
        name: `physics engine to ${ACCURACIES[i]!.toExponential()} mm`,
        each: "pose (both wheels)",
        size: poses.length,
        repeats: 30,
        run,
      }),
    );
    const [mine, ...theirs] = measureInTurn([ours, ...jobs]) as [Timing, ...Timing[]];
    for (const [i, { job, checksum }] of theirs.entries()) {
      // Of each pose two wheel centers' three coordinates are summed.
      const apart = Math.abs(checksum - mine.checksum);
      if (!(apart <= 6 * poses.length * ACCURACIES[i]!))
        throw new Error(`${job.name}: ${apart} mm from ours in sum`);
    }
    return {
      timings: [mine, ...theirs],
      targets: theirs.map((timing) => ({
        what: `time of ${timing.job.name} / poseRowTo`,
        found: timesAsLong(timing, mine),
        limit: { atLeast: 20_000 },
        unit: "×",
      })),
      notes: engines.map((engine, i) => noteOn(engine, ACCURACIES[i]!)),
    };
  } finally {
    for (const engine of engines) engine.free();
  }
}

function noteOn({ stepsPerPose, worstError }: SettledPoses, accuracy: number): string {
  return `physics engine to ${accuracy.toExponential()} mm: ${stepsPerPose.toFixed(1)} time steps a pose; its worst wheel center is ${worstError().toExponential(1)} mm from ours`;
}

function sumOfWheelCenters(rows: Float64Array): number {
  let sum = 0;
  for (let at = POSE.wheelCenter; at < rows.length; at += POSE_ROW)
    sum += rows[at]! + rows[at + 1]! + rows[at + 2]!;
  return sum;
}
