import { useThree } from "@react-three/fiber";
import { useEffect, useMemo } from "react";
import { BufferGeometry, Float32BufferAttribute } from "three";
import { addScaled, length, sub, type Vec3 } from "../../geometry/vec.ts";
import { type EllipseView, useMeasuredView } from "../state/measuredView.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { useInk } from "./InkProvider.tsx";
import { typedEllipses } from "./typedEllipses.ts";
import { useGeometry } from "./useGeometry.ts";

/** Lines of a circle. */
const SEGMENTS = 48;

/** mm. A point known to a hair is still to be seen. */
const LEAST = 5;

/**
 * How far from where it is drawn each point may be, one standard deviation: three ellipses about it, by its readings and dashed
 * while it is a guess, or by what is typed beside its numbers, and of a scan's matched points. Only in the pose the truck was
 * measured in.
 */
export function ReadingEllipses({ truck: { setup } }: { truck: Truck }) {
  const read = useMeasuredView((s) => s.ellipses);
  const matched = useMeasuredView((s) => s.matched);
  const ellipses = useMemo(
    () => [...(read.length > 0 ? read : typedEllipses(setup)), ...Object.values(matched).flat()],
    [read, matched, setup],
  );
  const isMeasuredPose = useWorkbench((s) => s.travel === 0 && s.steer === 0);
  const invalidate = useThree((s) => s.invalidate);
  useEffect(() => {
    if (ellipses.length >= 0 && isMeasuredPose !== null) invalidate();
  }, [ellipses, isMeasuredPose, invalidate]);
  if (!isMeasuredPose) return null;
  // biome-ignore lint/suspicious/noArrayIndexKey: two points may lie at one place
  return ellipses.map((one, i) => <Ellipse key={i} ellipse={one} />);
}

function Ellipse({ ellipse }: { ellipse: EllipseView }) {
  const ink = useInk();
  const geometry = useGeometry(() => ellipseGeometry(ellipse), [ellipse]);
  return (
    <lineSegments
      geometry={geometry}
      material={ellipse.isAssumed ? ink.ghostLine : ink.withinLine}
      renderOrder={41}
    />
  );
}

/** Three circles of the unit ball, square to each other, as the ellipsoid has them; dashed by distance along each. */
function ellipseGeometry({ at, axes, isTyped }: EllipseView): BufferGeometry {
  const columns = [0, 1, 2].map((k): Vec3 => {
    const column: Vec3 = [axes[0][k]!, axes[1][k]!, axes[2][k]!];
    const size = length(column);
    // Exact along an axis, it is flat.
    if (size === 0 && isTyped) return column;
    if (size >= LEAST) return column;
    const unit: Vec3 = [k === 0 ? LEAST : 0, k === 1 ? LEAST : 0, k === 2 ? LEAST : 0];
    return size > 0 ? addScaled([0, 0, 0], column, LEAST / size) : unit;
  }) as [Vec3, Vec3, Vec3];
  const positions: number[] = [];
  const distances: number[] = [];
  for (const [a, b] of [
    [columns[0], columns[1]],
    [columns[1], columns[2]],
    [columns[2], columns[0]],
  ] as const) {
    const place = (k: number): Vec3 => {
      const turn = (2 * Math.PI * k) / SEGMENTS;
      return addScaled(addScaled(at, a, Math.cos(turn)), b, Math.sin(turn));
    };
    let along = 0;
    for (let k = 0; k < SEGMENTS; k++) {
      const [from, to] = [place(k), place(k + 1)];
      positions.push(...from, ...to);
      distances.push(along);
      along += length(sub(to, from));
      distances.push(along);
    }
  }
  return new BufferGeometry()
    .setAttribute("position", new Float32BufferAttribute(positions, 3))
    .setAttribute("lineDistance", new Float32BufferAttribute(distances, 1));
}
