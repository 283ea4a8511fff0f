import { type OrthographicCamera, Vector3 } from "three";
import type { Vec3 } from "../../geometry/vec.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { ViewName } from "../state/workbenchState.ts";
import type { Extent } from "./extents.ts";

/**
 * From the truck toward the eye. Up on the screen is Z; the top view leans back by a hair, so that forward is up.
 * The truck's left side is nearer in the side view, and faces left. In the wheel well the eye is inboard of the tire,
 * ahead of the axle and below its middle: it looks out and up into the arch.
 */
const DIRECTIONS: Readonly<Record<ViewName, Vec3>> = {
  "three-quarter": [1.15, 0.85, 0.55],
  front: [1, 0, 0],
  side: [0, 1, 0],
  top: [-1e-4, 0, 1],
  well: [0.55, -1, -0.22],
};

/** Toward the eye of a view. @param side whose wheel is looked at, where it makes a difference */
export function viewDirection(view: ViewName, side: Side): Vec3 {
  const [x, y, z] = DIRECTIONS[view];
  return (view === "well" || view === "side") && side === "right" ? [x, -y, z] : [x, y, z];
}

/** Puts a camera so far from the middle of an extent, toward the eye, looking at it. @returns that middle */
export function standAt(
  camera: OrthographicCamera,
  { min, max }: Extent,
  [x, y, z]: Vec3,
  distance: number,
): [number, number, number] {
  const far = distance / Math.hypot(x, y, z);
  const middle = [0, 1, 2].map((i) => 0.5 * (min[i]! + max[i]!)) as [number, number, number];
  camera.up.set(0, 0, 1);
  camera.position.set(middle[0] + far * x, middle[1] + far * y, middle[2] + far * z);
  camera.lookAt(...middle);
  camera.updateMatrixWorld();
  return middle;
}

/** A view as it was set: what it holds, and how the camera stood for it. */
export interface SetView {
  readonly extent: Extent;
  /** Pixels per mm. */
  readonly zoom: number;
  /** Vehicle axes, mm. */
  readonly eye: Vec3;
}

/** mm that what is drawn may grow, shrink or move and its picture stays: well within what is left free around it. */
const STAYS = 6;

/** Whether a view that was set for one extent is to be set anew for another. */
export function isOutgrown(held: Extent, now: Extent): boolean {
  return (["min", "max"] as const).some((end) =>
    now[end].some((at, axis) => Math.abs(at - held[end][axis]!) > STAYS),
  );
}

/** mm off its place, and share of its zoom, up to which a camera is where it was put: rounding. */
const ROUNDING = { place: 0.01, zoom: 1e-6 };

/** Whether no hand has turned, moved or zoomed a view since it was set. */
export function isUntouched({ position, zoom }: OrthographicCamera, set: SetView): boolean {
  const [x, y, z] = set.eye;
  return (
    Math.hypot(position.x - x, position.y - y, position.z - z) < ROUNDING.place &&
    Math.abs(zoom / set.zoom - 1) < ROUNDING.zoom
  );
}

/** Share of the picture that is left free around what it must hold. */
const MARGIN = 0.05;

// Leaf scratch.
const corner = new Vector3();

/** Pixels per mm at which a camera that looks at the extent's center holds all of it. Needs the camera's matrices. */
export function fitZoom(camera: OrthographicCamera, extent: Extent, width: number, height: number): number {
  let halfWidth = 1;
  let halfHeight = 1;
  for (const [x, y, z] of heldFromCenter(extent)) {
    corner.set(x, y, z).transformDirection(camera.matrixWorldInverse);
    // transformDirection gives a unit vector; the length goes back on.
    corner.multiplyScalar(Math.hypot(x, y, z));
    halfWidth = Math.max(halfWidth, Math.abs(corner.x));
    halfHeight = Math.max(halfHeight, Math.abs(corner.y));
  }
  return (1 - MARGIN) * Math.min((0.5 * width) / halfWidth, (0.5 * height) / halfHeight);
}

/** What must be in the picture, from the box's center, mm. */
function heldFromCenter({ min, max, points }: Extent): readonly Vec3[] {
  const half = (axis: 0 | 1 | 2) => 0.5 * (max[axis] - min[axis]);
  const [x, y, z] = [half(0), half(1), half(2)];
  if (points)
    return points.map((point) => [point[0] - min[0] - x, point[1] - min[1] - y, point[2] - min[2] - z]);
  return [-x, x].flatMap((i) => [-y, y].flatMap((j) => [-z, z].map((k): Vec3 => [i, j, k])));
}
