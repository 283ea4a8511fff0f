import { useThree } from "@react-three/fiber";
import { useEffect } from "react";
import { addScaled, length, type Vec3 } from "../../geometry/vec.ts";
import { type LoadArrow, mmPerNewton, useLoadsView } from "../state/loadsView.ts";
import { Solid } from "./Solid.tsx";
import { rodGeometry } from "./solidGeometry.ts";
import { useGeometry } from "./useGeometry.ts";

/** mm. An arrow no longer than its head is not drawn. */
export const ARROW_HEAD = 26;
const SHAFT = 3;
const HEAD_RADIUS = 10;

/** The forces of the load case looked at, to one scale, each ending where it acts. Vehicle axes. */
export function LoadArrows() {
  const arrows = useLoadsView((s) => s.arrows);
  const invalidate = useThree((s) => s.invalidate);
  useEffect(() => {
    if (arrows.length >= 0) invalidate();
  }, [arrows, invalidate]);
  const mm = mmPerNewton(arrows);
  return arrows.map((arrow) => <Arrow key={arrow.name + arrow.at.join()} arrow={arrow} scale={mm} />);
}

/** @param scale mm for a newton */
function Arrow({ arrow: { at, force }, scale }: { arrow: LoadArrow; scale: number }) {
  const size = length(force) * scale;
  const isDrawn = size > ARROW_HEAD;
  const tail = addScaled(at, force, -scale);
  const neck: Vec3 = addScaled(at, force, (-ARROW_HEAD * scale) / size);
  const from = [...at, ...force, scale];
  const shaft = useGeometry(
    () => rodGeometry(isDrawn ? tail : [0, 0, 0], isDrawn ? neck : [0, 0, 1], SHAFT),
    from,
  );
  const head = useGeometry(
    () => rodGeometry(isDrawn ? neck : [0, 0, 0], isDrawn ? at : [0, 0, 1], HEAD_RADIUS, 0.5),
    from,
  );
  if (!isDrawn) return null;
  return (
    <>
      <Solid geometry={shaft} tone="body" />
      <Solid geometry={head} tone="body" />
    </>
  );
}
