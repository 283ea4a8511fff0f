import type { Matrix4 } from "three";
import { GAP_ROW } from "../../src/gaps/partGap.ts";
import { vecAt } from "../../src/geometry/vec.ts";
import type { Model } from "../../src/studies/model/model.ts";
import { type BodyPair, pairGapTo } from "../../src/studies/model/pairs.ts";
import { POSE } from "../../src/suspension/poseRow.ts";
import { type SolvedPose, solvePose } from "../../src/suspension/solvePose.ts";
import type { Job } from "./job.ts";
import type { GridPose } from "./poseGrid.ts";
import {
  type PartQuery,
  partQuery,
  SEARCH_TOLERANCE,
  type TessellatedTire,
  tessellatedTire,
} from "./tessellatedTire.ts";

/** mm. The library keeps its boxes in 32 bits: coordinates under 2 m round by 1e-4 at most. */
const ROUNDING = 2e-4;
/** Runs of the kernel in one repeat, so that a repeat is long enough for the clock. */
const ROUNDS = 100;

/** The same gaps by the gap kernel and by a mesh library. */
export interface GapComparison {
  readonly kernel: Job;
  readonly library: Job;
  /** mm. Largest difference between the two answers. */
  readonly apart: number;
}

export interface GapJobs {
  /** All body parts of both sides. */
  readonly all: GapComparison;
  /** Of them the paths: the library is only asked for the closest point to points. */
  readonly paths: GapComparison;
  /** Of the tire the library was given. */
  readonly triangles: number;
}

interface Query {
  readonly pair: BodyPair;
  readonly part: PartQuery;
  readonly pose: SolvedPose;
  readonly frame: Matrix4;
}

/**
 * Gaps at a few poses where nothing touches (the library knows no depth). For both, everything that does not
 * depend on the pose is prepared beforehand, and so is the pose.
 * @throws Error when a pose is out of reach or touches, or when the answers differ by more than the tessellation
 * and the search allow.
 */
export function gapJobs(model: Model, at: readonly GridPose[]): GapJobs {
  const bodies = model.pairs.filter((pair) => pair.kind === "body");
  const tire = tessellatedTire(ringCaseOf(model));
  const parts = bodies.map((pair) => queryOf(model, pair));
  const queries = at.flatMap(({ travel, steer }) => {
    const pose = solvePose(model.frontEnd, travel, steer);
    if (!pose.ok) throw new Error(`gapJobs: travel ${travel}, steer ${steer} is out of reach`);
    return bodies.map(
      (pair, i): Query => ({ pair, part: parts[i]!, pose, frame: frameOf(tire, pair, pose) }),
    );
  });
  const compare = (some: readonly Query[]) => comparison(tire, some, at.length);
  return {
    all: compare(queries),
    paths: compare(queries.filter(({ part }) => part.kind === "path")),
    triangles: tire.triangles,
  };
}

function comparison(tire: TessellatedTire, queries: readonly Query[], poses: number): GapComparison {
  const row = new Float64Array(GAP_ROW);
  const kernelGap = ({ pair, pose }: Query) => pairGapTo(row, 0, pair, pose[pair.side].row, 0);
  const libraryGap = ({ part, frame }: Query) => tire.gapTo(part, frame);
  for (const query of queries) {
    if (!(kernelGap(query) > 1))
      throw new Error(`gapJobs: ${query.pair.name} touches at travel ${query.pose.travel}`);
  }
  const apart = Math.max(...queries.map((query) => Math.abs(libraryGap(query) - kernelGap(query))));
  const allowed = tire.error + SEARCH_TOLERANCE + ROUNDING;
  if (!(apart <= allowed))
    throw new Error(`gapJobs: the gaps differ by ${apart} mm, allowed is ${allowed} mm`);

  const count = queries.length / poses;
  const kinds = queries.every(({ part }) => part.kind === "path") ? "paths" : "body parts";
  const each = `pose (${count} ${kinds})`;
  return {
    kernel: {
      name: `pairGapTo, ${kinds}`,
      each,
      size: ROUNDS * poses,
      repeats: 50,
      run() {
        let sum = 0;
        for (let round = 0; round < ROUNDS; round++) for (const query of queries) sum += kernelGap(query);
        return sum / ROUNDS;
      },
    },
    library: {
      name: `three-mesh-bvh, ${kinds}`,
      each,
      size: poses,
      repeats: 10,
      run: () => queries.reduce((sum, query) => sum + libraryGap(query), 0),
    },
    apart,
  };
}

function ringCaseOf({ setup, tire }: Model): Parameters<typeof tessellatedTire>[0] {
  const { profile, barrelRadius } = tire;
  const points = Array.from(
    { length: profile.length / 2 },
    (_, i) => [profile[2 * i]!, profile[2 * i + 1]!] as const,
  );
  return { name: setup.name, profile: points, barrelRadius };
}

/** A part given for both sides stands in each side's left-hand frame as typed. */
function queryOf({ setup }: Model, { name }: BodyPair): PartQuery {
  const part = setup.truck.body.find((given) => given.name === name && given.side === "both");
  if (part === undefined) throw new Error(`gapJobs: ${name} is not a part of both sides`);
  return partQuery(part);
}

function frameOf(tire: TessellatedTire, { side }: BodyPair, pose: SolvedPose): Matrix4 {
  const { row } = pose[side];
  return tire.frameAt({ center: vecAt(row, POSE.wheelCenter), axis: vecAt(row, POSE.wheelAxis) });
}
