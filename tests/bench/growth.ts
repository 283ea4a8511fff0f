import { readMesh } from "../../src/files/readMesh.ts";
import type { Vec3 } from "../../src/geometry/vec.ts";
import { readSetup } from "../../src/setup/readSetup.ts";
import type { MeshPart, PathPart } from "../../src/setup/types/truckTypes.ts";
import type { Setup } from "../../src/setup/types/types.ts";
import { mapOf } from "../../src/studies/map/clearanceMap.ts";
import type { Model } from "../../src/studies/model/model.ts";
import { checkClearance } from "../../src/studies/reports/check.ts";
import { gapsAt } from "../../src/studies/reports/gapsAt.ts";
import { type SolvedPose, solvePose } from "../../src/suspension/solvePose.ts";
import { brokenMeshes } from "../fuzz/brokenMeshes.ts";
import { brokenSetups } from "../fuzz/brokenSetups.ts";
import { assembledModel, demoSetup } from "../reference/demoModel.ts";
import type { Job } from "./job.ts";
import { measureInTurn, timesAsLong } from "./measure.ts";
import { printColumns } from "./printColumns.ts";

/**
 * How costs grow: each job at several sizes of one thing, all else alike, its time as a multiple of the first
 * size's. The same arch, cut finer, is the same arch: only the number of pieces changes.
 */

interface Growth {
  readonly what: string;
  /** What is counted. */
  readonly of: string;
  readonly sizes: readonly number[];
  readonly repeats: number;
  readonly jobAt: (size: number) => () => number;
}

const SEGMENTS = [10, 40, 160, 640];
const TRIANGLES = [2_000, 20_000, 200_000];
/** mm. How far inboard of its lip the sheet of triangles reaches. */
const DEEP = 400;

const setup = { ...demoSetup(), hardware: null };
const { droop, bump } = setup.travel;
const lip = setup.truck.body.find((part): part is PathPart => part.kind === "path");
if (!lip) throw new Error("growth: the demo truck has a lip given by points");

const whole = modelWith(setup.truck.body);

const growths: readonly Growth[] = [
  {
    what: "gaps at a pose, one path",
    of: "segments",
    sizes: SEGMENTS,
    repeats: 30,
    jobAt: (size) => gapsOver(modelWith([pathOf(lip, size)])),
  },
  {
    what: "check, one path",
    of: "segments",
    sizes: SEGMENTS,
    repeats: 7,
    jobAt: (size) => check(modelWith([pathOf(lip, size)])),
  },
  {
    what: "model with one mesh (its tree)",
    of: "triangles",
    sizes: TRIANGLES,
    repeats: 5,
    jobAt: (size) => {
      const sheet = sheetOf(lip, size);
      // A tree is kept with its corners: others each time.
      return () => modelWith([{ ...sheet, positions: sheet.positions.slice() }]).pairs.length;
    },
  },
  {
    what: "gaps at a pose, one mesh",
    of: "triangles",
    sizes: TRIANGLES,
    repeats: 30,
    jobAt: (size) => gapsOver(modelWith([sheetOf(lip, size)])),
  },
  {
    what: "check, one mesh",
    of: "triangles",
    sizes: TRIANGLES,
    repeats: 7,
    jobAt: (size) => check(modelWith([sheetOf(lip, size)])),
  },
  {
    what: "check of its body parts",
    of: "tolerance, 1 mm / …",
    sizes: [10, 100, 1000, 10_000],
    repeats: 7,
    jobAt: (size) => check(whole, 1 / size),
  },
  {
    what: "map of its body parts",
    of: "rows and columns",
    sizes: [31, 61, 121],
    repeats: 10,
    jobAt: (size) => () => {
      const map = mapOf(whole, { rows: size, cols: size });
      if (map === null) throw new Error("mapOf: stopped without being asked to");
      return map.left.gap.reduce((sum, gap) => sum + (Number.isFinite(gap) ? gap : 0), 0);
    },
  },
  {
    what: "reading what is no setup, all sorts",
    of: "kilobytes each",
    sizes: [256, 1024, 4096],
    repeats: 2,
    jobAt: (size) => {
      const texts = Object.values(brokenSetups).map((textOf) => textOf(1024 * size));
      return () => texts.filter((text) => readSetup(text, "broken.json").ok).length;
    },
  },
  {
    what: "reading what is no mesh, all sorts",
    of: "kilobytes each",
    sizes: [256, 1024, 4096],
    repeats: 2,
    jobAt: (size) => {
      const files = Object.values(brokenMeshes).map((meshOf) => meshOf(1024 * size));
      return () => files.filter(({ bytes, name }) => readMesh(bytes, name).ok).length;
    },
  },
];

const rows = growths.map(({ what, of, sizes, repeats, jobAt }) => {
  const jobs: Job[] = sizes.map((size) => ({
    name: `${what}, ${size}`,
    each: what,
    size: 1,
    repeats,
    run: jobAt(size),
  }));
  const timings = measureInTurn(jobs);
  const first = timings[0]!;
  const grown = timings.map((timing, i) => `${sizes[i]}: ${timesAsLong(timing, first).toPrecision(2)} ×`);
  return [what, of, grown.join("   ")];
});
printColumns([["job", "grows with", "time as a multiple of the first"], ...rows]);

/** The demo truck with these body parts alone: nothing of what moves, whose cost would hide theirs. */
function modelWith(body: Setup["truck"]["body"]): Model {
  return assembledModel({ ...setup, truck: { ...setup.truck, body } });
}

/** The lip with the same shape in so many segments. */
function pathOf(part: PathPart, segments: number): PathPart {
  return { ...part, points: finer(part.points, segments) };
}

/** The lip drawn inboard, as a sheet of about so many triangles. */
function sheetOf(part: PathPart, triangles: number): MeshPart {
  const across = Math.max(1, Math.round(Math.sqrt(triangles / 20)));
  const along = finer(part.points, 10 * across);
  const positions = new Float64Array(3 * along.length * (across + 1));
  along.forEach(([x, y, z], i) => {
    for (let j = 0; j <= across; j++) {
      positions.set([x, y - (DEEP * j) / across, z], 3 * (i * (across + 1) + j));
    }
  });
  const corners: number[] = [];
  for (let i = 0; i + 1 < along.length; i++) {
    for (let j = 0; j < across; j++) {
      const at = i * (across + 1) + j;
      corners.push(at, at + 1, at + across + 1, at + 1, at + across + 2, at + across + 1);
    }
  }
  return { name: part.name, kind: "mesh", side: part.side, positions, triangles: Uint32Array.from(corners) };
}

/** Points of a polyline cut into a multiple of its segments, as near to `segments` as that comes. */
function finer(points: readonly Vec3[], segments: number): Vec3[] {
  const cuts = Math.max(1, Math.round(segments / (points.length - 1)));
  const made: Vec3[] = [points[0]!];
  for (let i = 0; i + 1 < points.length; i++) {
    const [from, to] = [points[i]!, points[i + 1]!];
    for (let cut = 1; cut <= cuts; cut++) {
      const share = cut / cuts;
      made.push([
        from[0] + share * (to[0] - from[0]),
        from[1] + share * (to[1] - from[1]),
        from[2] + share * (to[2] - from[2]),
      ]);
    }
  }
  return made;
}

/** Gaps of a truck at poses all over its range. */
function gapsOver(model: Model): () => number {
  const poses: SolvedPose[] = [];
  for (let i = 0; i <= 6; i++) {
    for (let j = 0; j <= 6; j++) {
      const pose = solvePose(model.frontEnd, droop + ((bump - droop) * i) / 6, -1 + j / 3);
      if (pose.ok) poses.push(pose);
    }
  }
  return () =>
    poses.reduce((sum, pose) => sum + gapsAt(model, pose).reduce((all, { gap }) => all + gap, 0), 0);
}

function check(model: Model, tolerance?: number): () => number {
  return () => {
    const report = checkClearance(model, tolerance === undefined ? {} : { tolerance });
    if (report === null) throw new Error("checkClearance: stopped without being asked to");
    return report.parts.reduce((sum, { gap }) => sum + gap, 0);
  };
}
