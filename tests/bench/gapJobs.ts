import { GAP_ROW } from "../../src/gaps/partGap.ts";
import type { Model } from "../../src/studies/model.ts";
import { type BodyPair, pairGapTo } from "../../src/studies/pairs.ts";
import { POSE } from "../../src/suspension/poseRow.ts";
import { type SolvedPose, solvePose } from "../../src/suspension/solvePose.ts";
import { type Vec3, vecAt } from "../../src/geometry/vec.ts";
import type { Job } from "./job.ts";
import { type PartStrata, partStrata } from "./partStrata.ts";
import type { GridPose } from "./poseGrid.ts";
import { SEARCH_TOLERANCE, type TessellatedTire, tessellatedTire } from "./tessellatedTire.ts";

/** mm. The library's tree keeps its boxes in 32 bits: coordinates under 2 m round by 1e-4 at most. */
const ROUNDING = 2e-4;
/** Runs of the kernel in one repeat, so that a repeat is long enough for the clock. */
const ROUNDS = 20;

/** The gaps to all body parts at a few poses, by the gap kernel and by a mesh library. */
export interface GapJobs {
  readonly kernel: Job;
  readonly library: Job;
  /** What the library was given, to be printed. */
  readonly triangles: number;
  readonly poses: number;
  /** mm. Largest difference between the two answers, and what the library's tolerances allow. */
  readonly apart: number;
  readonly allowed: number;
}

/**
 * Both jobs at those of the poses where nothing touches (the library knows no depth). Everything that does not
 * depend on the pose is prepared beforehand for both, and so is the pose.
 * @throws Error when the answers differ by more than the tessellation and the search allow.
 */
export function gapJobs(model: Model, at: readonly GridPose[]): GapJobs {
  const bodies = model.pairs.filter((pair) => pair.kind === "body");
  const tire = tessellatedTire(ringCaseOf(model));
  const strata = bodies.map((pair) => strataOf(model, pair));
  const row = new Float64Array(GAP_ROW);
  const kernelGap = (pair: BodyPair, pose: SolvedPose) => pairGapTo(row, 0, pair, pose[pair.side].row, 0);

  const poses = at
    .map(({ travel, steer }) => solvePose(model.frontEnd, travel, steer))
    .filter((pose) => pose.ok)
    .filter((pose) => bodies.every((pair) => kernelGap(pair, pose) > 1));
  if (poses.length === 0) throw new Error("gapJobs: something touches at every pose");
  const queries = poses.flatMap((pose) =>
    bodies.map((pair, i) => ({ pair, pose, strata: strata[i]!, frame: frameOf(tire, pair, pose) })),
  );
  const allowed = tire.error + SEARCH_TOLERANCE + ROUNDING;
  const apart = Math.max(
    ...queries.map((q) => Math.abs(tire.gapTo(q.strata, q.frame) - kernelGap(q.pair, q.pose))),
  );
  if (!(apart <= allowed)) throw new Error(`gapJobs: the gaps differ by ${apart} mm, allowed is ${allowed} mm`);

  const each = `pose (${bodies.length} body parts)`;
  return {
    kernel: {
      name: "pairGapTo, clear poses",
      each,
      size: ROUNDS * poses.length,
      repeats: 60,
      run() {
        let sum = 0;
        for (let round = 0; round < ROUNDS; round++) {
          for (const { pair, pose } of queries) sum += kernelGap(pair, pose);
        }
        return sum / ROUNDS;
      },
    },
    library: {
      name: "three-mesh-bvh, clear poses",
      each,
      size: poses.length,
      repeats: 9,
      run: () => queries.reduce((sum, q) => sum + tire.gapTo(q.strata, q.frame), 0),
    },
    triangles: tire.triangles,
    poses: poses.length,
    apart,
    allowed,
  };
}

function ringCaseOf({ setup, tire }: Model): Parameters<typeof tessellatedTire>[0] {
  const { profile, barrelRadius } = tire;
  const points = Array.from({ length: profile.length / 2 }, (_, i) => [profile[2 * i]!, profile[2 * i + 1]!] as const);
  return { name: setup.name, profile: points, barrelRadius };
}

/** The part in the left-hand frame of its side: the demo's parts are given for both sides, so as they are. */
function strataOf({ setup }: Model, { name }: BodyPair): PartStrata {
  const part = setup.truck.body.find((given) => given.name === name && given.side === "both");
  if (part === undefined) throw new Error(`strataOf: ${name} is not a part of both sides`);
  return partStrata(part);
}

function frameOf(tire: TessellatedTire, pair: BodyPair, pose: SolvedPose): ReturnType<TessellatedTire["frameAt"]> {
  const { row } = pose[pair.side];
  const center: Vec3 = vecAt(row, POSE.wheelCenter);
  return tire.frameAt({ center, axis: vecAt(row, POSE.wheelAxis) });
}
