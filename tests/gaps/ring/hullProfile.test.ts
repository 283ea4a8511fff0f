import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { EDGE_ROW } from "../../../src/gaps/ring/convexPieces.ts";
import { hullProfileView, hullReach, lookAtHullProfile } from "../../../src/gaps/ring/hullProfile.ts";
import { countedReads } from "../../reference/countedReads.ts";
import { between } from "../../reference/gapCases.ts";
import { shapeOf } from "../../reference/kernelGap.ts";
import { ringCases } from "../../reference/rings.ts";

const RUN = { seed: 1955, numRuns: 600 } as const;

interface Seen {
  readonly d: number;
  readonly ux: number;
  readonly ur: number;
}

/** By every edge: outside the nearest place of all segments, inside the line that is nearest. */
function seenByAll(edges: Float64Array, x: number, r: number): Seen {
  let out: Seen = { d: Number.POSITIVE_INFINITY, ux: 0, ur: 0 };
  let inside: Seen = { d: Number.NEGATIVE_INFINITY, ux: 0, ur: 0 };
  for (let at = 0; at < edges.length; at += EDGE_ROW) {
    const [ax, ar, ex, er, length] = edges.subarray(at, at + EDGE_ROW) as unknown as readonly number[];
    const along = Math.max(0, Math.min(length!, (x - ax!) * ex! + (r - ar!) * er!));
    const q = [x - ax! - along * ex!, r - ar! - along * er!] as const;
    const d = Math.hypot(...q);
    if (d < out.d) out = { d, ux: q[0] / d, ur: q[1] / d };
    const off = (x - ax!) * er! - (r - ar!) * ex!;
    if (off > inside.d) inside = { d: off, ux: er!, ur: -ex! };
  }
  return inside.d > 0 ? out : inside;
}

describe(`the ring with its middle filled in (seed ${RUN.seed})`, () => {
  it("is as far from any point as all of its edges say, whatever edge the walk begins with", () => {
    const spot = new Float64Array(2);
    const seen = { corner: 0, edge: 0, inside: 0 };
    fc.assert(
      fc.property(
        fc.constantFrom(...ringCases),
        between(-400, 400),
        between(0, 600),
        between(0, 1),
        (ring, x, r, share) => {
          const { hullProfile } = shapeOf(ring);
          spot.set([x, r]);
          lookAtHullProfile(hullProfile, spot, Math.floor(share * (hullProfile.count - 1e-9)));
          const [ux, ur, edge, start, d] = hullProfileView as unknown as readonly number[];
          const told = seenByAll(hullProfile.edges, x, r);
          expect(Math.abs(d! - told.d)).toBeLessThan(1e-9);
          if (d! <= 0) seen.inside++;
          else {
            expect(Math.hypot(ux! - told.ux, ur! - told.ur)).toBeLessThan(1e-6);
            seen[edge! < 0 ? "corner" : "edge"]++;
          }
          // The edge is one that the nearest place stands on; another look from the one told is the same.
          expect(start).toBeGreaterThanOrEqual(0);
          expect(start).toBeLessThan(hullProfile.count);
          if (edge! >= 0) {
            const [ax, ar, ex, er] = hullProfile.edges.subarray(
              edge! * EDGE_ROW,
            ) as unknown as readonly number[];
            expect(Math.abs((x - ax!) * er! - (r - ar!) * ex! - d!)).toBeLessThan(1e-9);
          }
          lookAtHullProfile(hullProfile, spot, start!);
          expect(Math.abs(hullProfileView[4]! - told.d)).toBeLessThan(1e-9);
        },
      ),
      RUN,
    );
    expect(Math.min(seen.corner, seen.edge, seen.inside)).toBeGreaterThan(60);
  });

  it("is walked from an edge near by in one step, and from any in as few as when these lines were written", () => {
    const spot = new Float64Array(2);
    const costs = ringCases.map((ring) => {
      const { hullProfile } = shapeOf(ring);
      const { row, reads } = countedReads(hullProfile.edges);
      const counted = { ...hullProfile, edges: row };
      let sum = 0;
      for (let i = 1; i < hullProfile.count - 1; i++) {
        const [ax, ar, ex, er, length] = hullProfile.edges.subarray(
          i * EDGE_ROW,
        ) as unknown as readonly number[];
        spot.set([ax! + 0.5 * length! * ex! + 30 * er!, ar! + 0.5 * length! * er! - 30 * ex!]);
        for (let start = 0; start < hullProfile.count; start++) {
          lookAtHullProfile(counted, spot, start);
          expect(hullProfileView[2]).toBe(i);
          const cost = reads();
          // The five numbers of the edge itself.
          if (start === i) expect(cost).toBe(5);
          sum += cost;
        }
      }
      return sum;
    });
    expect(costs).toEqual(READS);
  });

  it("reaches in every direction as far as its farthest corner, which it tells", () => {
    fc.assert(
      fc.property(fc.constantFrom(...ringCases), between(0, Math.PI), (ring, angle) => {
        const { hullProfile, outline } = shapeOf(ring);
        const [ux, ur] = [Math.cos(angle), Math.sin(angle)];
        const most = Math.max(...outline.map(([x, r]) => ux * x + ur * r));
        expect(hullReach(hullProfile, ux, ur)).toBeCloseTo(most, 9);
        expect(ux * hullProfileView[0]! + ur * hullProfileView[1]!).toBeCloseTo(most, 9);
      }),
      RUN,
    );
  });

  it("has edges of the section marked as such, and its ends and bridges not", () => {
    for (const ring of ringCases) {
      const { hullProfile, outline } = shapeOf(ring);
      const isOn = (x: number, r: number) => outline.some(([px, pr]) => px === x && pr === r);
      for (let i = 0; i < hullProfile.count; i++) {
        const [ax, ar, ex, er, length] = hullProfile.edges.subarray(
          i * EDGE_ROW,
        ) as unknown as readonly number[];
        expect(Math.hypot(ex!, er!)).toBeCloseTo(1, 12);
        const from = outline.findIndex(([px, pr]) => px === ax && pr === ar);
        const [bx, br] = outline[(from + 1) % outline.length]!;
        const follows = from >= 0 && Math.hypot(bx - ax! - length! * ex!, br - ar! - length! * er!) < 1e-9;
        expect(hullProfile.real[i]).toBe(follows ? 1 : 0);
        if (i > 0) expect(isOn(ax!, ar!)).toBe(true);
      }
      expect(hullProfile.real[0]).toBe(0);
      expect(hullProfile.real[hullProfile.count - 1]).toBe(0);
    }
  });
});

/** Numbers read of the edges, of each ring. */
const READS = [18_615, 2531, 476];
