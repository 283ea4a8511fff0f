import { lengthInBoth, type TireIssue } from "./designDimensions.ts";

/** One point of a tire profile, mm: x from the center plane, + outboard; r from the axis. */
export type MeasuredPoint = readonly [x: number, r: number];

/** A tape or a template gives some tens of points; the crossing check costs the square of the count. */
const MAX_POINTS = 1000;

/** Twice the area of the triangle a, b, c; + = c left of the line from a to b. */
const turn = (a: MeasuredPoint, b: MeasuredPoint, c: MeasuredPoint): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

const inBounds = (a: MeasuredPoint, b: MeasuredPoint, p: MeasuredPoint): boolean =>
  p[0] >= Math.min(a[0], b[0]) &&
  p[0] <= Math.max(a[0], b[0]) &&
  p[1] >= Math.min(a[1], b[1]) &&
  p[1] <= Math.max(a[1], b[1]);

/** Whether two edges share any point, ends included. */
function edgesMeet(a: MeasuredPoint, b: MeasuredPoint, c: MeasuredPoint, d: MeasuredPoint): boolean {
  const cSide = turn(a, b, c);
  const dSide = turn(a, b, d);
  const aSide = turn(c, d, a);
  const bSide = turn(c, d, b);
  if (
    ((cSide > 0 && dSide < 0) || (cSide < 0 && dSide > 0)) &&
    ((aSide > 0 && bSide < 0) || (aSide < 0 && bSide > 0))
  ) {
    return true;
  }
  return (
    (cSide === 0 && inBounds(a, b, c)) ||
    (dSide === 0 && inBounds(a, b, d)) ||
    (aSide === 0 && inBounds(c, d, a)) ||
    (bSide === 0 && inBounds(c, d, b))
  );
}

/** Whether the edge b–c doubles back along the edge a–b. */
const foldsBack = (a: MeasuredPoint, b: MeasuredPoint, c: MeasuredPoint): boolean =>
  turn(a, b, c) === 0 && (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) < 0;

/** The two points whose edges meet on the closed loop, by their place in `loop`; null = it is simple. */
function crossing(loop: readonly MeasuredPoint[]): [number, number] | null {
  const count = loop.length;
  const at = (i: number): MeasuredPoint => loop[i % count]!;
  for (let i = 0; i < count; i++) {
    if (foldsBack(at(i), at(i + 1), at(i + 2))) return [i, i + 1];
    for (let j = i + 2; j < count; j++) {
      if (i === 0 && j === count - 1) continue;
      if (edgesMeet(at(i), at(i + 1), at(j), at(j + 1))) return [i, j];
    }
  }
  return null;
}

/**
 * Whether a measured profile encloses a ring when it is closed down to the barrel radius (mm) at both ends and
 * straight across: null = yes, else the first thing wrong. It need not be convex or symmetric; a point given twice
 * in a row does no harm. Costs the square of the number of points, at most 1000.
 */
export function measuredProfileIssue(
  profile: readonly MeasuredPoint[],
  barrelRadius: number,
): TireIssue | null {
  const key = "tire.profile";
  if (profile.length < 2)
    return { key, mend: "give at least two points [x, r], from the inboard bead to the outboard bead" };
  if (profile.length > MAX_POINTS)
    return { key, mend: `give at most ${MAX_POINTS} points; some tens describe a tire` };
  for (const [i, [x, r]] of profile.entries()) {
    const pointKey = `${key}[${i}]`;
    if (!Number.isFinite(x) || !Number.isFinite(r))
      return { key: pointKey, mend: "both x and r must be lengths" };
    if (r < barrelRadius) {
      const barrel = lengthInBoth(barrelRadius);
      return {
        key: pointKey,
        mend: `r is from the wheel axis and cannot be under the barrel radius, ${barrel}`,
      };
    }
  }
  const first = profile[0]!;
  const last = profile[profile.length - 1]!;
  if (!(first[0] < last[0])) {
    return {
      key,
      mend: "list the points from the inboard bead (smaller x) to the outboard bead; + x is outboard",
    };
  }
  const closed: { point: MeasuredPoint; place: number }[] = profile.map((point, place) => ({ point, place }));
  closed.push({ point: [last[0], barrelRadius], place: profile.length - 1 });
  closed.push({ point: [first[0], barrelRadius], place: 0 });
  const corners = closed.filter(({ point }, i) => {
    const next = closed[(i + 1) % closed.length]!.point;
    return point[0] !== next[0] || point[1] !== next[1];
  });
  const met = crossing(corners.map(({ point }) => point));
  if (!met) return null;
  const [one, other] = met.map((corner) => corners[corner]!.place);
  return {
    key,
    mend: `the outline crosses or touches itself near points ${one} and ${other} (the first is 0); list them in order around the tire`,
  };
}
