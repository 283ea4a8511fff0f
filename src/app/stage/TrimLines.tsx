import { useThree } from "@react-three/fiber";
import { useEffect } from "react";
import { BufferGeometry, Float32BufferAttribute } from "three";
import { useTrimView } from "../state/trimView.ts";
import { useInk } from "./InkProvider.tsx";
import { useGeometry } from "./useGeometry.ts";

/** What of the panels is trimmed away: its border, and hatching from side to side of it. */
export function TrimLines() {
  const outlines = useTrimView((s) => s.outlines);
  const invalidate = useThree((s) => s.invalidate);
  const ink = useInk();
  const geometry = useGeometry(() => trimGeometry(outlines), [outlines]);
  useEffect(() => {
    if (outlines.length >= 0) invalidate();
  }, [outlines, invalidate]);
  if (outlines.length === 0) return null;
  return <lineSegments geometry={geometry} material={ink.edge.rubs} renderOrder={42} />;
}

/** Every so many points a line crosses over to the point as far from the other end: a strip is hatched by that. */
const EVERY = 3;

function trimGeometry(outlines: readonly Float64Array[]): BufferGeometry {
  const positions: number[] = [];
  for (const points of outlines) {
    const count = points.length / 3;
    const push = (i: number) => positions.push(...points.subarray(3 * (i % count), 3 * (i % count) + 3));
    for (let i = 0; i < count; i++) {
      push(i);
      push(i + 1);
      if (i % EVERY !== 0 || 2 * i >= count) continue;
      push(i);
      push(count - i);
    }
  }
  return new BufferGeometry().setAttribute("position", new Float32BufferAttribute(positions, 3));
}
