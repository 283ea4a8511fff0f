import { describe, expect, test } from "vitest";
import type { TriangleMesh } from "../../../src/geometry/triangleMesh.ts";
import { cross, dot, length, sub, type Vec3 } from "../../../src/geometry/vec.ts";
import { type Envelope, envelopeOf } from "../../../src/studies/envelope/envelopeOf.ts";
import {
  type EnvelopeRange,
  stanceRange,
  straightRange,
  wholeRange,
} from "../../../src/studies/envelope/envelopeRange.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import type { Side } from "../../../src/suspension/frontEnd.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { surfaceQuery } from "../../reference/mesh/surfaceQuery.ts";
import { aboutAxis, type WheelCase } from "../../reference/referenceRing.ts";
import { type Outline, sectionDistance } from "../../reference/sectionDistance.ts";
import { stepBudget } from "../../reference/stepBudget.ts";
import { runs } from "../../runs.ts";
import { demoModel } from "../demoModel.ts";
import { openEdges } from "./closedEdges.ts";

const model = demoModel();
const outline: Outline = model.ring.outline;

/** A fixed sequence of numbers from 0 to 1 (Park and Miller, "Random number generators", 1988, from memory). */
function sequence(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

function wheelAt(truck: Model, side: Side, travel: number, steer: number): WheelCase {
  const pose = solvePose(truck.frontEnd, travel, steer);
  if (!pose.ok) throw new RangeError(`out of reach at travel ${travel}, steer ${steer}`);
  return { center: pose[side].wheelCenter, axis: pose[side].wheelAxis };
}

const within = (low: number, high: number, share: number) => low + (high - low) * share;

function toRing(wheel: WheelCase, point: Vec3): number {
  const d = sub(point, wheel.center);
  return sectionDistance(outline, dot(d, wheel.axis), length(cross(d, wheel.axis)));
}

/**
 * Distance from a point to what the ring sweeps, at most this: the least over a grid of exact poses, made finer
 * about the best ones until the step no longer matters.
 */
function toSwept(side: Side, range: EnvelopeRange, point: Vec3): number {
  const rows = range.travelLow < range.travelHigh ? 13 : 1;
  const columns = range.steerLow < range.steerHigh ? 41 : 1;
  const at = (t: number, s: number) =>
    toRing(
      wheelAt(
        model,
        side,
        within(range.travelLow, range.travelHigh, t),
        within(range.steerLow, range.steerHigh, s),
      ),
      point,
    );
  const grid: { t: number; s: number; d: number }[] = [];
  for (let i = 0; i < rows; i++) {
    for (let j = 0; j < columns; j++) {
      const t = rows === 1 ? 0 : i / (rows - 1);
      const s = columns === 1 ? 0 : j / (columns - 1);
      grid.push({ t, s, d: at(t, s) });
    }
  }
  grid.sort((a, b) => a.d - b.d);
  let least = grid[0]!.d;
  for (const start of grid.slice(0, 8)) {
    let { t, s, d } = start;
    let step = 1 / 12;
    while (step > 1e-4) {
      let moved = false;
      for (const [a, b] of [
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
        [1, 1],
        [-1, -1],
        [1, -1],
        [-1, 1],
      ] as const) {
        const nt = rows === 1 ? 0 : Math.min(1, Math.max(0, t + a * step));
        const ns = columns === 1 ? 0 : Math.min(1, Math.max(0, s + 0.3 * b * step));
        const nd = at(nt, ns);
        if (nd < d) {
          t = nt;
          s = ns;
          d = nd;
          moved = true;
        }
      }
      if (!moved) step /= 2;
    }
    least = Math.min(least, d);
  }
  return least;
}

function made(side: Side, range: EnvelopeRange, preset: "fine" | "preview" = "fine"): Envelope {
  const result = envelopeOf(model, side, range, { preset });
  if (!result.ok) throw new RangeError(result.reason);
  return result.envelope;
}

/** Most that a point of the ring's surface, at poses drawn from the range, lies outside the surface, mm. */
function mostOutside(
  side: Side,
  range: EnvelopeRange,
  mesh: TriangleMesh,
  poses: number,
  seed: number,
): number {
  const draw = sequence(seed);
  const surface = surfaceQuery(mesh);
  let most = 0;
  for (let i = 0; i < poses; i++) {
    // A third of the draws stand at an end of travel or at a lock: the surface is made by those.
    const end = (share: number) => (draw() < 1 / 3 ? Math.round(share) : share);
    const travel = within(range.travelLow, range.travelHigh, end(draw()));
    const steer = within(range.steerLow, range.steerHigh, end(draw()));
    const wheel = wheelAt(model, side, travel, steer);
    for (let k = 0; k < 24; k++) {
      const corner = Math.floor(draw() * outline.length);
      const [x0, r0] = outline[corner]!;
      const [x1, r1] = outline[(corner + 1) % outline.length]!;
      const share = draw() < 0.5 ? 0 : draw();
      const point = aboutAxis(wheel, within(x0, x1, share), within(r0, r1, share), 2 * Math.PI * draw());
      if (!surface.isInside(point)) most = Math.max(most, surface.distance(point));
    }
  }
  return most;
}

/** Most that middles of the surface's triangles, of all sizes alike, are away from what the ring sweeps, mm. */
function mostAway(
  side: Side,
  range: EnvelopeRange,
  { positions, triangles }: TriangleMesh,
  count: number,
): number {
  const draw = sequence(7);
  let most = 0;
  for (let i = 0; i < count; i++) {
    const t = 3 * Math.floor((draw() * triangles.length) / 3);
    const point = [0, 1, 2].map(
      (axis) => [0, 1, 2].reduce((sum, k) => sum + positions[3 * triangles[t + k]! + axis]!, 0) / 3,
    ) as unknown as Vec3;
    most = Math.max(most, toSwept(side, range, point));
  }
  return most;
}

const ranges: readonly (readonly [string, Side, EnvelopeRange])[] = [
  ["all travel, lock to lock", "left", wholeRange(model)],
  ["one stance, lock to lock", "right", stanceRange(82)],
  ["all travel, straight ahead", "left", straightRange(model)],
];

// Of all travel and all steering, which takes longest, on every change the preview alone, below.
describe.each(ranges.slice(runs(1, 0)))("envelope over %s, %s", (_, side, range) => {
  const { mesh } = made(side, range);

  test("is closed: every edge on two triangles that run along it opposite ways", () => {
    expect(openEdges(mesh)).toBe(0);
  });

  test("holds the ring at hundreds of poses drawn from the range, within 0.5 mm", () => {
    expect(mostOutside(side, range, mesh, runs(150, 300), 11)).toBeLessThanOrEqual(0.5);
  });

  test("is nowhere farther than 1.5 mm from what the ring sweeps, by exact poses searched anew", () => {
    expect(mostAway(side, range, mesh, runs(50, 100))).toBeLessThanOrEqual(1.5);
  });
});

test("the preview keeps its own coarser tolerance", () => {
  const range = wholeRange(model);
  const { mesh, inside, outside } = made("left", range, "preview");
  expect(openEdges(mesh)).toBe(0);
  expect(mostOutside("left", range, mesh, runs(100, 200), 3)).toBeLessThanOrEqual(inside);
  expect(mostAway("left", range, mesh, runs(30, 60))).toBeLessThanOrEqual(outside);
});

test("tells its progress, rising to 1, and stops when asked to", () => {
  const shares: number[] = [];
  const range = straightRange(model);
  const all = envelopeOf(model, "left", range, {
    preset: "preview",
    onProgress: (share) => void shares.push(share),
  });
  expect(all.ok).toBe(true);
  expect(shares.length).toBeGreaterThan(5);
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
  expect(shares.at(-1)).toBe(1);
  expect(envelopeOf(model, "left", range, { preset: "preview", budget: stepBudget(9) })).toEqual({
    ok: false,
    reason: "budgetSpent",
  });
});

test("a travel that no wheel reaches has no envelope", () => {
  expect(envelopeOf(model, "left", stanceRange(2000))).toEqual({ ok: false, reason: "outOfReach" });
});
