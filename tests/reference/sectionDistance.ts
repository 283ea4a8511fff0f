/** A closed outline in the meridian plane: [x along the wheel axis, r from it], mm. */
export type Outline = readonly (readonly [x: number, r: number])[];

/** Closes a profile as the setup file defines it: down to the barrel at both ends and straight across. */
export function closedOutline(profile: Outline, barrelRadius: number): Outline {
  return [...profile, [profile.at(-1)![0], barrelRadius], [profile[0]![0], barrelRadius]];
}

/**
 * Signed distance from (x, r) to a closed outline, negative inside; mm. The slow obvious way: inside or out
 * by winding number (Sunday, "Inclusion of a Point in a Polygon", 2001, from memory), size by the nearest
 * of all its segments. Knows nothing of convexity or of the order of the points.
 */
export function sectionDistance(outline: Outline, x: number, r: number): number {
  let winding = 0;
  let leastSq = Number.POSITIVE_INFINITY;
  for (let i = 0; i < outline.length; i++) {
    const [ax, ar] = outline[i]!;
    const [bx, br] = outline[(i + 1) % outline.length]!;
    const ex = bx - ax;
    const er = br - ar;
    const side = ex * (r - ar) - er * (x - ax);
    if (ar <= r && br > r && side > 0) winding++;
    else if (ar > r && br <= r && side < 0) winding--;
    const sq = ex * ex + er * er;
    const share = sq > 0 ? Math.min(1, Math.max(0, ((x - ax) * ex + (r - ar) * er) / sq)) : 0;
    const offX = x - ax - share * ex;
    const offR = r - ar - share * er;
    leastSq = Math.min(leastSq, offX * offX + offR * offR);
  }
  const size = Math.sqrt(leastSq);
  return winding === 0 ? size : -size;
}
