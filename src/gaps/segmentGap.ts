import { GAP } from "./cells/cellSearch.ts";
import { CELL } from "./cells/cells.ts";
import { DEPTH_SHARE, GAP_TOLERANCE } from "./cells/tolerances.ts";
import { probeRing, ringProbe } from "./ring/ringProbe.ts";
import type { RingShape } from "./ring/ringShape.ts";

/**
 * A look at the ring from the segment: parameter, x, r, signed distance with the direction in which it grows (x, r), then
 * planes of three numbers (distance, direction x, r): the hull's, and one for each convex piece of the section.
 */
const LOOK = { t: 0, x: 1, r: 2, d: 3, away: 4, hull: 6, pieces: 9 } as const;
/** More pieces than these and the hull alone bounds. */
const MOST_PIECES = 4;
const LOOK_ROW = LOOK.pieces + 3 * MOST_PIECES;
/** Looks after which the search gives up: a segment deep in a hollow of the section takes the general way. */
const MOST_LOOKS = 96;

// Leaf scratch.
const probe = ringProbe();
const looks = new Float64Array(MOST_LOOKS * LOOK_ROW);
/** Pairs of looks with the segment between them left to search. */
const open = new Int32Array(2 * MOST_LOOKS);
/** The segment in the wheel's frame: start x, its run along x; start across (3), its run across (3); r² = a + 2bt + ct². */
const line = new Float64Array(11);
const LINE = { x: 0, dx: 1, across: 2, run: 5, a: 8, b: 9, c: 10 } as const;

/**
 * Gap between the ring and one segment cell, wherever it runs, the barrel's hole included. The convex hull's
 * distance is bounded from below by its plane at any look, u·(x, r); x is linear along the segment and r convex, so
 * the plane's least value between two looks is known in closed form: at an end where u points toward the axis, else
 * at an end or where its slope is zero. Outside the ring the least over its convex pieces bounds as well.
 * Halves what these bounds leave open.
 * Fills `out` as `GAP` says when the gap is below `beat`. @param coarse mm, how much too large it may be told
 * @returns the gap or `beat`; NaN when it gave up, `out` then left alone.
 */
export function segmentGapTo(
  out: Float64Array,
  at: number,
  shape: RingShape,
  wheel: Float64Array,
  wheelAt: number,
  cells: Float64Array,
  cellAt: number,
  beat: number,
  coarse = 0,
): number {
  placeLine(wheel, wheelAt, cells, cellAt);
  const radius = cells[cellAt + CELL.radius]!;
  let best = beat + radius;
  let bestLook = -1;
  let count = 2;
  const pieces = shape.pieceStarts.length - 1;
  look(0, 0, shape);
  look(LOOK_ROW, 1, shape);
  for (let k = 0; k < 2; k++) {
    if (!(looks[k * LOOK_ROW + LOOK.d]! < best)) continue;
    best = looks[k * LOOK_ROW + LOOK.d]!;
    bestLook = k;
  }
  open[0] = 0;
  open[1] = 1;
  let left = 1;
  while (left > 0) {
    left--;
    const from = open[2 * left]!;
    const to = open[2 * left + 1]!;
    const a = from * LOOK_ROW;
    const b = to * LOOK_ROW;
    const tolerance = coarse + GAP_TOLERANCE + (best < radius ? DEPTH_SHARE * (radius - best) : 0);
    if (floorBetween(a, b, LOOK.hull) >= best - tolerance) continue;
    if (isAbove(a, b, best - tolerance, pieces)) continue;
    if (count === MOST_LOOKS) return Number.NaN;
    const middle = count++;
    look(middle * LOOK_ROW, 0.5 * (looks[a]! + looks[b]!), shape);
    const d = looks[middle * LOOK_ROW + LOOK.d]!;
    if (d < best) {
      best = d;
      bestLook = middle;
    }
    // The nearer half is searched first.
    const nearer = looks[a + LOOK.d]! < looks[b + LOOK.d]!;
    open[2 * left] = nearer ? middle : from;
    open[2 * left + 1] = nearer ? to : middle;
    left++;
    open[2 * left] = nearer ? from : middle;
    open[2 * left + 1] = nearer ? middle : to;
    left++;
  }
  if (bestLook < 0) return beat;
  report(out, at, wheel, wheelAt, bestLook * LOOK_ROW, radius);
  return best - radius;
}

function placeLine(wheel: Float64Array, wheelAt: number, cells: Float64Array, cellAt: number): void {
  let ax = 0;
  let bx = 0;
  for (let i = 0; i < 3; i++) {
    const n = wheel[wheelAt + 3 + i]!;
    ax += n * (cells[cellAt + 1 + i]! - wheel[wheelAt + i]!);
    bx += n * (cells[cellAt + 4 + i]! - wheel[wheelAt + i]!);
  }
  line[LINE.x] = ax;
  line[LINE.dx] = bx - ax;
  line[LINE.a] = 0;
  line[LINE.b] = 0;
  line[LINE.c] = 0;
  for (let i = 0; i < 3; i++) {
    const n = wheel[wheelAt + 3 + i]!;
    const from = cells[cellAt + 1 + i]! - wheel[wheelAt + i]! - ax * n;
    const run = cells[cellAt + 4 + i]! - wheel[wheelAt + i]! - bx * n - from;
    line[LINE.across + i] = from;
    line[LINE.run + i] = run;
    line[LINE.a]! += from * from;
    line[LINE.b]! += from * run;
    line[LINE.c]! += run * run;
  }
}

/** Looks at the ring from parameter t and keeps what it sees in the row `row`. */
function look(row: number, t: number, shape: RingShape): void {
  const x = line[LINE.x]! + t * line[LINE.dx]!;
  const rSq = line[LINE.a]! + t * (2 * line[LINE.b]! + t * line[LINE.c]!);
  const r = rSq > 0 ? Math.sqrt(rSq) : 0;
  probeRing(probe, shape, x, r);
  looks[row] = t;
  looks[row + LOOK.x] = x;
  looks[row + LOOK.r] = r;
  looks[row + LOOK.d] = probe.distance;
  looks[row + LOOK.away] = probe.gradientX;
  looks[row + LOOK.away + 1] = probe.gradientR;
  looks[row + LOOK.hull] = probe.hullDistance;
  looks[row + LOOK.hull + 1] = probe.hullGradientX;
  looks[row + LOOK.hull + 2] = probe.hullGradientR;
  const numbers = 3 * (shape.pieceStarts.length - 1);
  for (let i = 0; i < numbers && i < 3 * MOST_PIECES; i++) looks[row + LOOK.pieces + i] = probe.pieces[i]!;
}

/** Whether every convex piece stays at least `level` away between two looks; says nothing of depths. */
function isAbove(a: number, b: number, level: number, pieces: number): boolean {
  if (!(level > 0) || pieces > MOST_PIECES) return false;
  for (let k = 0; k < pieces; k++) if (floorBetween(a, b, LOOK.pieces + 3 * k) < level) return false;
  return true;
}

/** The better of a convex set's planes at both looks, over what lies between. */
function floorBetween(a: number, b: number, plane: number): number {
  const first = planeFloor(a, a, b, plane);
  const second = planeFloor(b, a, b, plane);
  return first > second ? first : second;
}

/** Least value, between the looks `a` and `b`, of a plane seen at the look `at`. */
function planeFloor(at: number, a: number, b: number, plane: number): number {
  const ux = looks[at + plane + 1]!;
  const ur = looks[at + plane + 2]!;
  const base = looks[at + plane]! - ux * looks[at + LOOK.x]! - ur * looks[at + LOOK.r]!;
  const atA = base + ux * looks[a + LOOK.x]! + ur * looks[a + LOOK.r]!;
  const atB = base + ux * looks[b + LOOK.x]! + ur * looks[b + LOOK.r]!;
  let floor = atA < atB ? atA : atB;
  if (!(ur > 0)) return floor;
  const c = line[LINE.c]!;
  const slope = (-ux * line[LINE.dx]!) / ur;
  const room = 1 - (slope * slope) / c;
  if (!(room > 0)) return floor;
  // r'(t) = (b + ct)/r = slope.
  const hSq = line[LINE.a]! - (line[LINE.b]! * line[LINE.b]!) / c;
  const w = slope * Math.sqrt(hSq > 0 ? hSq / room : 0);
  const t = (w - line[LINE.b]!) / c;
  if (!(t > looks[a]! && t < looks[b]!)) return floor;
  const value =
    base + ux * (line[LINE.x]! + t * line[LINE.dx]!) + ur * Math.sqrt((hSq > 0 ? hSq : 0) + (w * w) / c);
  if (value < floor) floor = value;
  return floor;
}

function report(
  out: Float64Array,
  at: number,
  wheel: Float64Array,
  wheelAt: number,
  row: number,
  radius: number,
): void {
  const t = looks[row]!;
  const x = looks[row + LOOK.x]!;
  const r = looks[row + LOOK.r]!;
  const d = looks[row + LOOK.d]!;
  const ux = looks[row + LOOK.away]!;
  const share = r > 0 ? looks[row + LOOK.away + 1]! / r : 0;
  out[at] = d - radius;
  for (let i = 0; i < 3; i++) {
    const n = wheel[wheelAt + 3 + i]!;
    const across = line[LINE.across + i]! + t * line[LINE.run + i]!;
    const p = wheel[wheelAt + i]! + x * n + across;
    const away = ux * n + share * across;
    out[at + GAP.point + i] = p - radius * away;
    out[at + GAP.onRing + i] = p - d * away;
  }
}
