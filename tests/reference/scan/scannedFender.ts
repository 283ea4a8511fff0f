/**
 * An invented scan of a front wheel arch as a hand-held scanner gives it: the fender's skin down to the lip, the
 * flange behind it, its hem, and the liner up and inboard. Noisy, unevenly dense, with holes where the light
 * found nothing and a ragged border; mm, in axes of its own. The same bytes on any machine: it takes sums,
 * products and square roots alone, which round the same everywhere.
 */

type Triple = readonly [number, number, number];

const MM_PER_INCH = 25.4;

/** The lip's edge, front to rear, inches in vehicle axes: the lip of the demo truck, let down a little. */
const LIP: readonly Triple[] = [
  [17.75, 34.9375, 12.5],
  [17.125, 35.3125, 18.25],
  [14.75, 35.625, 23.75],
  [10.625, 35.875, 27.625],
  [5.375, 36.0625, 29.75],
  [0, 36.125, 30.375],
  [-5.375, 36.0625, 29.75],
  [-10.625, 35.875, 27.625],
  [-14.75, 35.625, 23.75],
  [-17.125, 35.3125, 18.25],
  [-17.75, 34.9375, 12.5],
];

/** mm. Across the arch: how far inboard of the lip's edge, and how far out from the wheel; skin to liner. */
const SECTION: readonly (readonly [inboard: number, outward: number])[] = [
  [-9, 70],
  [-7, 40],
  [-3, 12],
  [0, 0],
  [10, -1.5],
  [20, -1],
  [23, 4],
  [24, 20],
  [30, 58],
  [70, 84],
  [190, 90],
  [300, 84],
  [390, 70],
];

/** Rows across the arch between two points of the section: dense at the lip, sparse on the liner. */
const ROWS_BETWEEN = [4, 4, 4, 5, 5, 3, 4, 4, 5, 6, 6, 5] as const;
const COLUMNS = 112;
/** mm. Standard deviation of the noise along each axis. */
const NOISE = 0.3;

/** Holes: middle along the arch (share), across (share of rows), half sizes of both. */
const HOLES: readonly (readonly [number, number, number, number])[] = [
  [0.18, 0.82, 0.022, 0.06],
  [0.37, 0.7, 0.012, 0.035],
  [0.52, 0.9, 0.03, 0.05],
  [0.66, 0.12, 0.015, 0.07],
  [0.71, 0.62, 0.02, 0.03],
  [0.86, 0.78, 0.025, 0.08],
];

/**
 * The scanner's axes: rows are its x, y, z in vehicle axes. From the quaternion (10, 2, 4, 1) / 11, so that
 * every entry is a whole number over 121 and no angle is needed.
 */
const SCANNER_AXES: readonly Triple[] = [
  [87 / 121, 36 / 121, -76 / 121],
  [-4 / 121, 111 / 121, 48 / 121],
  [84 / 121, -32 / 121, 81 / 121],
];
/** mm, vehicle axes. Where the scanner counts from. */
const SCANNER_ORIGIN: Triple = [212, 655, 431];

/** A knock in the fender: everything near it is pushed inboard, most in its middle. */
export interface Dent {
  /** Share of the arch from its front, 0 … 1. */
  readonly at: number;
  /** Half its length, as a share of the arch. */
  readonly half: number;
  /** mm inboard in its middle. */
  readonly deep: number;
}

export interface ScanOptions {
  /** Columns of the scan along the arch. */
  readonly columns?: number;
  readonly dent?: Dent;
}

/** The scan of the worked truck with a bent fender: pushed in behind the top of the arch. */
export const BENT_FENDER: ScanOptions = { columns: 64, dent: { at: 0.61, half: 0.13, deep: 19 } };

/** The file, binary STL. */
export function scannedFenderStl({ columns = COLUMNS, dent }: ScanOptions = {}): Uint8Array {
  const random = stream(1957);
  const rows = sectionRows();
  const grid: Triple[][] = [];
  for (let column = 0; column < columns; column++) {
    const along = alongShare(column, columns, random);
    const pushed = dent ? dentAt(along, dent) : 0;
    grid.push(
      rows.map(([inboard, outward]) =>
        toScanner(noisy(surfacePoint(along, [inboard + pushed, outward]), random)),
      ),
    );
  }
  const corners: number[] = [];
  for (let i = 0; i + 1 < columns; i++) {
    for (let j = 0; j + 1 < rows.length; j++) {
      const [a, b, c, d] = [grid[i]![j]!, grid[i + 1]![j]!, grid[i + 1]![j + 1]!, grid[i]![j + 1]!];
      // Either diagonal, as it comes.
      const halves =
        random() < 0.5
          ? [
              [a, b, c],
              [a, c, d],
            ]
          : [
              [a, b, d],
              [b, c, d],
            ];
      for (const half of halves) {
        const share = [(i + 0.5) / (columns - 1), (j + 0.5) / (rows.length - 1)] as const;
        if (!isMissing(share[0], share[1], random)) corners.push(...half.flat());
      }
    }
  }
  return binaryStl(corners);
}

/** Where a point of the lip's edge is in the mesh, without noise. @param share of the arch from its front, 0 … 1 */
export function lipInScan(share: number): Triple {
  return toScanner(surfacePoint(share, [0, 0]));
}

/** The same point on the truck: mm, vehicle axes. */
export function lipOnTruck(share: number): Triple {
  return surfacePoint(share, [0, 0]);
}

function sectionRows(): readonly (readonly [number, number])[] {
  const rows = ROWS_BETWEEN.flatMap((count, i) => {
    const [from, to] = [SECTION[i]!, SECTION[i + 1]!];
    return Array.from({ length: count }, (_, k): readonly [number, number] => {
      const t = k / count;
      return [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
    });
  });
  return [...rows, SECTION.at(-1)!];
}

/** Columns crowd where the scanner went slowly, near the middle, and never run quite straight. */
function alongShare(column: number, columns: number, random: () => number): number {
  const t = (2 * column) / (columns - 1) - 1;
  const crowded = 0.5 + 0.5 * t * (0.62 + 0.38 * t * t);
  const isEnd = column === 0 || column === columns - 1;
  return isEnd ? crowded : crowded + (0.3 * (random() - 0.5)) / columns;
}

/** mm inboard: smooth to nothing at the dent's ends. */
function dentAt(share: number, { at, half, deep }: Dent): number {
  const off = (share - at) / half;
  const left = Math.max(0, 1 - off * off);
  return deep * left * left;
}

/** mm, vehicle axes. @param share of the arch @param across inboard of the lip's edge, and out from the wheel */
function surfacePoint(share: number, [inboard, outward]: readonly [number, number]): Triple {
  const [x, y, z] = lipPoint(share);
  const step = 1e-3;
  const before = lipPoint(Math.max(0, share - step));
  const after = lipPoint(Math.min(1, share + step));
  // Across the lip's direction, in the plane of the wheel: out from the wheel.
  const [dx, dz] = [after[0] - before[0], after[2] - before[2]];
  const length = Math.sqrt(dx * dx + dz * dz);
  return [x + (outward * dz) / length, y - inboard, z - (outward * dx) / length];
}

/** mm. A smooth curve through the lip's points (Catmull and Rom, 1974), evenly by point. */
function lipPoint(share: number): Triple {
  const spans = LIP.length - 1;
  const i = Math.min(spans - 1, Math.floor(share * spans));
  const t = share * spans - i;
  const at = (k: number) => LIP[Math.min(spans, Math.max(0, k))]!;
  const [p, q, r, s] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
  const along = (axis: 0 | 1 | 2) => {
    const [a, b, c, d] = [p[axis], q[axis], r[axis], s[axis]];
    const cubic = 2 * b + t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
    return (MM_PER_INCH * cubic) / 2;
  };
  return [along(0), along(1), along(2)];
}

/** The sum of twelve even numbers is nearly normal, and needs no logarithm. */
function noisy(point: Triple, random: () => number): Triple {
  const normal = () => {
    let sum = -6;
    for (let i = 0; i < 12; i++) sum += random();
    return NOISE * sum;
  };
  return [point[0] + normal(), point[1] + normal(), point[2] + normal()];
}

function isMissing(along: number, across: number, random: () => number): boolean {
  const chance = random();
  const inHole = HOLES.some(([x, y, a, b]) => {
    const [u, v] = [(along - x) / a, (across - y) / b];
    return u * u + v * v < 0.7 + 0.6 * chance;
  });
  const border = Math.min(along, 1 - along, 2 * (1 - across), 2 * across);
  return inHole || chance < 0.004 || border < 0.012 * chance;
}

function toScanner(point: Triple): Triple {
  const from = point.map((value, i) => value - SCANNER_ORIGIN[i]!);
  const along = (row: number) => SCANNER_AXES[row]!.reduce((sum, entry, i) => sum + entry * from[i]!, 0);
  return [along(0), along(1), along(2)];
}

function binaryStl(corners: readonly number[]): Uint8Array {
  const count = corners.length / 9;
  const bytes = new Uint8Array(84 + 50 * count);
  bytes.set(new TextEncoder().encode("Invented scan of a front wheel arch, left side, millimeters"));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, count, true);
  // Normals stay 0: readers take them from the corners.
  corners.forEach((value, i) => {
    view.setFloat32(84 + 50 * Math.floor(i / 9) + 12 + 4 * (i % 9), value, true);
  });
  return bytes;
}

/** A repeatable stream of numbers in [0, 1) (Park and Miller's minimal standard generator, 1988, from memory). */
function stream(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
