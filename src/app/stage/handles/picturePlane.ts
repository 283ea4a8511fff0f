import type { Vec3 } from "../../../geometry/vec.ts";
import type { ScreenPoint } from "../overlay/gapMark.ts";

/** Where vehicle axes fall on the picture: pixels of the origin, and pixels that each axis goes by in one mm. */
export interface Picture {
  readonly origin: ScreenPoint;
  readonly axes: readonly [ScreenPoint, ScreenPoint, ScreenPoint];
}

/** The two vehicle axes that lie in the picture of a view along the third: 0 = x, 1 = y, 2 = z. */
export interface PicturePlane {
  /** Level on the picture. */
  readonly across: number;
  /** Upright on the picture. */
  readonly along: number;
}

/** Share of a mm's length on the picture by which an axis may be off its way: a view along an axis, not turned by hand. */
const LEAN = 2e-3;

const PLANES: readonly PicturePlane[] = [
  { across: 1, along: 2 },
  { across: 0, along: 2 },
  { across: 1, along: 0 },
];

/** A point's place on the picture, pixels. @param point vehicle axes, mm */
export function onPicture({ origin, axes }: Picture, point: Vec3): ScreenPoint {
  const along = (way: "x" | "y") =>
    axes.reduce((sum, axis, i) => sum + axis[way] * (point[i] ?? 0), origin[way]);
  return { x: along("x"), y: along("y") };
}

/** The plane that is seen square on, from the front, the side or above; null where the truck is turned. */
export function planeSeen({ axes }: Picture): PicturePlane | null {
  const most = Math.max(...axes.map(({ x, y }) => Math.hypot(x, y)));
  const isFlat = (pixels: number) => Math.abs(pixels) < LEAN * most;
  return (
    PLANES.find(({ across, along }) => {
      const depth = axes[3 - across - along]!;
      return [depth.x, depth.y, axes[across]!.y, axes[along]!.x].every(isFlat);
    }) ?? null
  );
}
