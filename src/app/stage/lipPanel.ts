import { BufferGeometry, Float32BufferAttribute } from "three";
import type { Vec3 } from "../../geometry/vec.ts";
import type { PathPart } from "../../setup/types/truckTypes.ts";

/** mm over the top of the lip to which the panel is whole, and at which nothing of it is left. */
const WHOLE = 40;
const GONE = 330;

/** mm past the ends of the lip over which it fades. */
const PAST = 190;

/** How far the panel leans inboard, as a share of its height. */
const LEAN = 0.09;

/** How much of a whole panel is there, 0 to 1. */
const THERE = 0.9;

interface Column {
  readonly foot: Vec3;
  /** How much of it is there. */
  readonly share: number;
}

/**
 * The side of a fender over a lip: straight up from it, past its ends, fading to nothing. It is drawn, not measured: of the
 * fender the setup knows the lip alone. Same frame as the part.
 */
export function lipPanelGeometry({ points }: PathPart): BufferGeometry {
  const positions: number[] = [];
  const colors: number[] = [];
  const top = Math.max(...points.map(([, , z]) => z));
  const columns = columnsOver(points);
  const corner = ({ foot, share }: Column, row: 0 | 1 | 2) => {
    const z = [foot[2], top + WHOLE, top + GONE][row]!;
    const y = foot[1] - Math.sign(foot[1]) * LEAN * (z - foot[2]);
    positions.push(foot[0], y, z);
    colors.push(1, 1, 1, row === 2 ? 0 : THERE * share);
  };
  for (let i = 0; i + 1 < columns.length; i++) {
    const [a, b] = [columns[i]!, columns[i + 1]!];
    for (const row of [0, 1] as const) {
      const next = row === 0 ? 1 : 2;
      corner(a, row);
      corner(b, row);
      corner(b, next);
      corner(a, row);
      corner(b, next);
      corner(a, next);
    }
  }
  const panel = new BufferGeometry()
    .setAttribute("position", new Float32BufferAttribute(positions, 3))
    .setAttribute("color", new Float32BufferAttribute(colors, 4));
  panel.computeVertexNormals();
  return panel;
}

/** One over each point of the lip, in order along the truck, and one past each end. */
function columnsOver(points: readonly Vec3[]): Column[] {
  const along = points[0]![0] <= points.at(-1)![0] ? points : [...points].reverse();
  const past = (end: Vec3, way: number): Column => ({
    foot: [end[0] + way * PAST, end[1], end[2]],
    share: 0,
  });
  return [past(along[0]!, -1), ...along.map((foot) => ({ foot, share: 1 })), past(along.at(-1)!, 1)];
}
