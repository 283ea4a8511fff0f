import { checkClearance } from "../../src/studies/check.ts";
import { gapsAt } from "../../src/studies/gapsAt.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { assembledModel, demoSetup } from "../reference/demoModel.ts";
import type { Job } from "./job.ts";
import { measure } from "./measure.ts";
import { gridOf, kernelInputs, sumWheelCenters } from "./poseGrid.ts";
import { printTimings } from "./printTimings.ts";
import { settledPoses } from "./settledPoses.ts";

/**
 * Times whole jobs on the demo truck, and the pose kernel against a general-purpose physics engine on the
 * same truck at the same poses. Nothing is drawn at random: every input is a grid or a file.
 */

/** mm. The engine's and the kernel's wheel centers summed over the shared poses must agree this well. */
const SUM_TOLERANCE = 1e-4;
/** Runs of the few shared poses in one repeat, so that a repeat is long enough for the clock. */
const ROUNDS = 2000;

const model = assembledModel(demoSetup());
const grid = gridOf(model, 101);
const gridInputs = kernelInputs(model, grid);
const shared = gridOf(model, 3);
const sharedInputs = kernelInputs(model, shared);
const engine = await settledPoses(model, shared);
const pose = solvePose(model.frontEnd, model.setup.travel.bump, 1);
if (!pose.ok) throw new Error(`the demo truck is out of reach: ${pose.along} ${pose.startsAt}`);

const kernelOnGrid: Job = {
  name: "poseRowTo over a grid",
  each: "pose row (one wheel)",
  size: 2 * grid.length,
  repeats: 50,
  run: () => sumWheelCenters(gridInputs),
};
const kernelOnShared: Job = {
  name: "poseRowTo, shared poses",
  each: "pose (both wheels)",
  size: ROUNDS * shared.length,
  repeats: 50,
  run() {
    let sum = 0;
    for (let round = 0; round < ROUNDS; round++) sum += sumWheelCenters(sharedInputs);
    return sum / ROUNDS;
  },
};
const engineOnShared: Job = {
  name: "physics engine, shared poses",
  each: "settled pose (both wheels)",
  size: shared.length,
  repeats: 12,
  run: engine.run,
};
const allGaps: Job = {
  name: "gapsAt, full bump and left lock",
  each: `pose (${model.parts.length} parts)`,
  size: 1,
  repeats: 200,
  run: () => gapsAt(model, pose).reduce((sum, { gap }) => sum + gap, 0),
};
const fullCheck: Job = {
  name: "checkClearance of the demo truck",
  each: `check (${model.parts.length} parts)`,
  size: 1,
  repeats: 12,
  run() {
    const report = checkClearance(model);
    if (report === null) throw new Error("checkClearance: stopped without being asked to");
    return report.parts.reduce((sum, { gap }) => sum + gap, 0);
  },
};

const [onGrid, ours, theirs, ...studies] = [
  measure(kernelOnGrid),
  measure(kernelOnShared),
  measure(engineOnShared),
  measure(allGaps),
  measure(fullCheck),
] as const;
const apart = Math.abs(ours.checksum - theirs.checksum);
if (!(apart <= SUM_TOLERANCE)) throw new Error(`the engine's wheel centers are ${apart} mm from ours in sum`);

printTimings([onGrid, ours, theirs, ...studies]);
console.log(`poseRowTo: ${onGrid.median.toFixed(1)} ns per pose row`);
console.log(
  `physics engine / poseRowTo, per pose of both wheels, medians: ${Math.round(theirs.median / ours.median)}`,
);
console.log(
  `  the engine took ${Math.round(engine.steps() / shared.length)} time steps a pose; sums of wheel centers agree to ${apart.toExponential(1)} mm`,
);
engine.free();
