import type { RingShape } from "./ring/ringShape.ts";

/**
 * Whether a solid box may have a place in the ring that is deeper than all of its faces, whatever the pose. A place of the
 * ring and all others of its circle about the wheel's axis are equally deep. Unless the box holds all of that circle, the
 * circle goes through a face of it, and the face is as deep. Along an axis of the box a circle of radius R whose plane has
 * the normal n reaches R√(1 − n²), and the three squares under those roots add up to 2.
 */
export function mayHoldCircle(cells: Float64Array, at: number, { leastRadius }: RingShape): boolean {
  let sum = 0;
  for (let i = 4; i <= 6; i++) sum += Math.min(1, (cells[at + i]! / leastRadius) ** 2);
  return !(sum < 2);
}

/** Whether a point of the ring lies inside a box: with all faces clear, the box then holds the whole ring. */
export function ringInBox(
  cells: Float64Array,
  at: number,
  shape: RingShape,
  wheel: Float64Array,
  wheelAt: number,
): boolean {
  const [x, r] = shape.outline[0]!;
  const level = Math.sqrt(wheel[wheelAt + 3]! ** 2 + wheel[wheelAt + 4]! ** 2);
  const up = [
    (-wheel[wheelAt + 5]! * wheel[wheelAt + 3]!) / level,
    (-wheel[wheelAt + 5]! * wheel[wheelAt + 4]!) / level,
    level,
  ];
  for (let i = 0; i < 3; i++) {
    const p = wheel[wheelAt + i]! + x * wheel[wheelAt + 3 + i]! + r * up[i]!;
    if (Math.abs(p - cells[at + 1 + i]!) > cells[at + 4 + i]!) return false;
  }
  return true;
}
