import { checkClearance } from "../../src/studies/reports/check.ts";
import { gapsAt } from "../../src/studies/reports/gapsAt.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { assembledModel, demoSetup, exampleSetup } from "../reference/demoModel.ts";
import { CHART_CELLS, chartJob, firstPictureJob } from "./chartJobs.ts";
import { curveJobs } from "./curveJobs.ts";
import { envelopeJobs } from "./envelopeJobs.ts";
import { gapJobs } from "./gapJobs.ts";
import type { Job } from "./job.ts";
import { mapJobs } from "./mapJobs.ts";
import { measure, measureInTurn, type Timing, timesAsLong } from "./measure.ts";
import { meshJobs } from "./meshJobs.ts";
import { oddsJobs } from "./oddsJobs.ts";
import { poseAgainstEngine } from "./poseAgainstEngine.ts";
import { poseAgainstNative } from "./poseAgainstNative.ts";
import { printTimings } from "./printTimings.ts";
import { printTargets, type Target } from "./targets.ts";
import { checksInALoop, windowJob } from "./windowJobs.ts";

/**
 * Times whole jobs on the demo truck, and the kernels against other ways to the same answers: the same
 * arithmetic in C++, a general-purpose physics engine, a mesh library. What is compared runs in turn, and all is
 * processor time, so that a busy machine slows both alike. Nothing is drawn at random: every input is a grid or a file.
 */

const MS = 1e-6;
const GAP_ROUNDS = 20;

const model = assembledModel(demoSetup());
/** The same truck with every block: limits, air springs and shocks, roll. */
const whole = assembledModel(exampleSetup("half-ton-limits.json"));
const timings: Timing[] = [];
const targets: Target[] = [];
const notes: string[] = [];

for (const compare of [poseAgainstNative, poseAgainstEngine]) {
  const found = await compare(model);
  timings.push(...found.timings);
  targets.push(...found.targets);
  notes.push(...found.notes);
}

const gaps = gapJobs(model, [
  { travel: model.setup.travel.droop, steer: 0 },
  { travel: 0, steer: 0 },
  { travel: 0, steer: 1 },
]);
for (const { kernel, library } of [gaps.all, gaps.paths]) {
  const [ours, theirs] = measureInTurn([kernel, library]) as [Timing, Timing];
  timings.push(ours, theirs);
  targets.push({
    what: `time of ${library.name} / ${kernel.name}`,
    found: timesAsLong(theirs, ours),
    limit: { atLeast: 300 },
    unit: "×",
  });
}
notes.push(
  `three-mesh-bvh: tire in ${gaps.triangles} triangles; its gaps are within ${gaps.all.apart.toFixed(4)} mm of ours, which are exact to 1e-6 mm`,
);

const pose = solvePose(model.frontEnd, model.setup.travel.bump, 1);
if (!pose.ok) throw new Error(`the demo truck is out of reach: ${pose.along} ${pose.startsAt}`);
const jobs: Job[] = [
  {
    name: "gapsAt, full bump and left lock",
    each: `pose (${model.pairs.length} pairs)`,
    size: GAP_ROUNDS,
    repeats: 50,
    run() {
      let sum = 0;
      for (let i = 0; i < GAP_ROUNDS; i++) for (const { gap } of gapsAt(model, pose)) sum += gap;
      return sum / GAP_ROUNDS;
    },
  },
  {
    name: "checkClearance of the demo truck",
    each: `check (${model.pairs.length} pairs)`,
    size: 1,
    repeats: 12,
    aimMs: 100,
    run() {
      const report = checkClearance(model);
      if (report === null) throw new Error("checkClearance: stopped without being asked to");
      return report.parts.reduce((sum, { gap }) => sum + gap, 0);
    },
  },
  ...mapJobs(model),
  ...curveJobs(),
  {
    name: "checkClearance with limits, air springs and shocks",
    each: `check (${whole.pairs.length} pairs)`,
    size: 1,
    repeats: 12,
    run() {
      const report = checkClearance(whole);
      if (report === null) throw new Error("checkClearance: stopped without being asked to");
      return report.parts.reduce((sum, { gap }) => sum + gap, 0);
    },
  },
  ...mapJobs(whole)
    .slice(0, 1)
    .map(({ aimMs: _, ...job }) => ({ ...job, name: `${job.name}, with limits` })),
  ...envelopeJobs(model),
  ...meshJobs(),
  windowJob(),
  chartJob(),
  firstPictureJob(),
  ...oddsJobs(),
];
for (const job of jobs) {
  const timing = measure(job);
  timings.push(timing);
  if (job.aimMs !== undefined) {
    targets.push({ what: job.name, found: timing.median * MS, limit: { atMost: job.aimMs }, unit: "ms" });
  }
}

const medianOf = (start: string) => timings.find(({ job }) => job.name.startsWith(start))!.median;
targets.push({
  what: "a loop of checks over the hub face / its window",
  found: (checksInALoop() * medianOf("checkClearance of the demo truck")) / medianOf("windowOf"),
  limit: { atLeast: 100 },
  unit: "×",
});
targets.push({
  what: "a plain loop of checks over a fit chart / the chart",
  found: (CHART_CELLS * medianOf("checkClearance of the demo truck")) / medianOf("a fit chart"),
  limit: { atLeast: 5 },
  unit: "×",
});

printTimings(timings);
console.log();
for (const note of notes) console.log(note);
console.log();
printTargets(targets);
