import { BufferGeometry, Float32BufferAttribute } from "three";
import { profilePoints, treadOf } from "./lineGeometry.ts";

/** Grooves round the tire, as shares of the tread's width: the middle of each, and how wide they are. */
const GROOVES = [0.2, 0.41, 0.59, 0.8] as const;
const GROOVE = 0.055;

/** Cuts across each shoulder: how many round the tire, how far in as a share of the tread, how wide, mm. */
const CUTS = 54;
const CUT_DEPTH = 0.115;
const CUT_WIDTH = 7;

const SEGMENTS = 72;

/** mm off the rubber, so that they are seen on it. */
const OFF = 0.8;

/**
 * What is cut into a tire's tread, laid on it: grooves round it and cuts across its shoulders. A likeness; gaps are measured
 * to the profile, as if nothing were cut. About y, as the wheel turns.
 */
export function treadGeometry(profile: ArrayLike<number>): BufferGeometry {
  const tread = treadOf(profilePoints(profile));
  const positions: number[] = [];
  const [from, to] = [tread[0]?.[0] ?? 0, tread.at(-1)?.[0] ?? 0];
  const width = to - from;
  if (width > 0) {
    const radiusAt = (x: number) => OFF + heightAt(tread, x);
    const strip = (xs: readonly number[], turns: readonly number[]) => {
      for (let i = 0; i + 1 < xs.length; i++)
        for (let k = 0; k + 1 < turns.length; k++) {
          const corner = (x: number, turn: number) => {
            const r = radiusAt(x);
            return [r * Math.cos(turn), x, r * Math.sin(turn)];
          };
          const [a, b] = [xs[i]!, xs[i + 1]!];
          const [s, t] = [turns[k]!, turns[k + 1]!];
          positions.push(...corner(a, s), ...corner(b, s), ...corner(b, t));
          positions.push(...corner(a, s), ...corner(b, t), ...corner(a, t));
        }
    };
    const round = Array.from({ length: SEGMENTS + 1 }, (_, k) => (2 * Math.PI * k) / SEGMENTS);
    for (const at of GROOVES)
      strip([from + (at - GROOVE / 2) * width, from + (at + GROOVE / 2) * width], round);
    const half = CUT_WIDTH / 2 / radiusAt(0.5 * (from + to));
    for (let k = 0; k < CUTS; k++) {
      const turn = (2 * Math.PI * k) / CUTS;
      // Those of the two shoulders stand between each other.
      const other = turn + Math.PI / CUTS;
      strip([from, from + CUT_DEPTH * width], [turn - half, turn + half]);
      strip([to - CUT_DEPTH * width, to], [other - half, other + half]);
    }
  }
  return new BufferGeometry().setAttribute("position", new Float32BufferAttribute(positions, 3));
}

/** Radius of a tread at a place across it, straight between its points. */
function heightAt(tread: readonly (readonly [x: number, r: number])[], x: number): number {
  for (let i = 0; i + 1 < tread.length; i++) {
    const [x0, r0] = tread[i]!;
    const [x1, r1] = tread[i + 1]!;
    if (x <= x1 || i + 2 === tread.length) return x1 === x0 ? r1 : r0 + ((x - x0) / (x1 - x0)) * (r1 - r0);
  }
  return tread[0]?.[1] ?? 0;
}
