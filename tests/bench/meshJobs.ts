import { GAP_ROW } from "../../src/gaps/cells/cellSearch.ts";
import { meshGapTo, meshHint } from "../../src/gaps/mesh/meshGap.ts";
import { type TriangleTree, triangleTree } from "../../src/gaps/mesh/triangleTree.ts";
import type { Vec3 } from "../../src/geometry/vec.ts";
import type { MeshPart } from "../../src/setup/types/truckTypes.ts";
import type { Model } from "../../src/studies/model/model.ts";
import { checkClearance } from "../../src/studies/reports/check.ts";
import { POSE } from "../../src/suspension/poseRow.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { demoWith } from "../reference/demoModel.ts";
import type { Job } from "./job.ts";

/** Triangles of the scan-like fender, as nearly as its grid comes to it. */
const TRIANGLES = 500_000;
/** mm. Greatest error of a place of the scan along each axis. */
const ROUGH = 0.3;
/** mm. Least radius of the wheel house about the wheel of the demo truck at rest. */
const RADIUS = 480;
/** Heights and steers at which gaps are timed. */
const HEIGHTS = 10;
const STEERS = 20;

/** A repeatable stream of numbers in [−1, 1) (Park and Miller's minimal standard generator, 1988, from memory). */
function noise(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return (2 * state) / 2147483647 - 1;
  };
}

/** Half a wheel house with a lip turned in at its outboard edge, rough and with one cell in 33 missing. */
function scanLikeFender(center: Vec3): MeshPart {
  const across = Math.round(0.7 * Math.sqrt(TRIANGLES / 2));
  const around = Math.round((33 / 32) * (TRIANGLES / 2 / across));
  const random = noise(1955);
  const positions = new Float64Array(3 * (around + 1) * (across + 1));
  for (let i = 0; i <= around; i++) {
    const angle = (Math.PI * i) / around;
    for (let j = 0; j <= across; j++) {
      const share = j / across;
      const lip = share > 0.9 ? 300 * (share - 0.9) : 0;
      const radius = RADIUS + 40 * (1 + Math.cos(3 * angle)) - lip;
      positions.set(
        [
          center[0] + radius * Math.cos(angle) + ROUGH * random(),
          center[1] - 250 + 450 * share + ROUGH * random(),
          center[2] + 60 + radius * Math.sin(angle) + ROUGH * random(),
        ],
        3 * (i * (across + 1) + j),
      );
    }
  }
  const triangles: number[] = [];
  for (let i = 0; i < around; i++) {
    for (let j = 0; j < across; j++) {
      if (random() > 1 - 2 / 33) continue;
      const at = i * (across + 1) + j;
      triangles.push(at, at + 1, at + across + 1, at + 1, at + across + 2, at + across + 1);
    }
  }
  return { name: "scan", kind: "mesh", side: "left", positions, triangles: Uint32Array.from(triangles) };
}

/** Wheels of the demo truck over its travel and steer, each next to the last. */
function wheelsOf(model: Model): Float64Array[] {
  const { droop, bump } = model.setup.travel;
  const rows: Float64Array[] = [];
  for (let i = 0; i < HEIGHTS; i++) {
    for (let j = 0; j < STEERS; j++) {
      const along = i % 2 === 0 ? j : STEERS - 1 - j;
      const travel = droop + ((bump - droop) * i) / (HEIGHTS - 1);
      const pose = solvePose(model.frontEnd, travel, -1 + (2 * along) / (STEERS - 1));
      if (pose.ok) rows.push(pose.left.row);
    }
  }
  return rows;
}

/** What a scan of half a million triangles costs: its tree, a gap at one pose, and the whole certified check. */
export function meshJobs(): Job[] {
  const bare = demoWith([]);
  const rest = solvePose(bare.frontEnd, 0, 0);
  if (!rest.ok) throw new Error("the demo truck stands at rest");
  const scan = scanLikeFender(rest.left.wheelCenter);
  const count = scan.triangles.length / 3;
  const tree: TriangleTree = triangleTree(scan.positions, scan.triangles);
  const wheels = wheelsOf(bare);
  const row = new Float64Array(GAP_ROW);
  const gaps = (hinted: boolean) => () => {
    const hint = meshHint();
    let sum = 0;
    for (const wheel of wheels) {
      if (!hinted) hint[0] = -1;
      const beat = Number.POSITIVE_INFINITY;
      sum += meshGapTo(row, 0, bare.ring, wheel, POSE.wheelCenter, { tree }, beat, hint);
    }
    return sum;
  };
  const model = demoWith([scan]);
  return [
    {
      name: `triangleTree of ${count} triangles`,
      each: "tree",
      size: 1,
      repeats: 10,
      run: () => triangleTree(scan.positions, scan.triangles).boxes[0]!,
    },
    {
      name: `meshGapTo, ${count} triangles, cold`,
      each: "gap at one pose",
      size: wheels.length,
      repeats: 20,
      run: gaps(false),
    },
    {
      name: `meshGapTo, ${count} triangles, from the last pose's`,
      each: "gap at one pose",
      size: wheels.length,
      repeats: 20,
      run: gaps(true),
    },
    {
      name: `checkClearance of ${count} triangles`,
      each: "check (1 part)",
      size: 1,
      repeats: 10,
      run() {
        const report = checkClearance(model);
        if (report === null) throw new Error("checkClearance: stopped without being asked to");
        return report.parts.reduce((sum, { gap, bound }) => sum + gap + bound, 0);
      },
    },
  ];
}
