import { useThree } from "@react-three/fiber";
import { useEffect } from "react";
import { addScaled, length, type Vec3 } from "../../geometry/vec.ts";
import { type LoadArrow, useLoadsView } from "../state/loadsView.ts";
import { Solid } from "./Solid.tsx";
import { rodGeometry } from "./solidGeometry.ts";
import { useGeometry } from "./useGeometry.ts";

/** mm of the longest arrow; the others by their force. */
const LONGEST = 220;
/** mm. */
const SHAFT = 3;
const HEAD = { length: 26, radius: 10 } as const;

/** The forces of the load case looked at, to one scale, each ending where it acts. Vehicle axes. */
export function LoadArrows() {
  const arrows = useLoadsView((s) => s.arrows);
  const invalidate = useThree((s) => s.invalidate);
  useEffect(() => {
    if (arrows.length >= 0) invalidate();
  }, [arrows, invalidate]);
  const most = Math.max(...arrows.map(({ force }) => length(force)), 1e-9);
  return arrows.map((arrow) => (
    <Arrow key={arrow.name + arrow.at.join()} arrow={arrow} mmPerNewton={LONGEST / most} />
  ));
}

function Arrow({ arrow: { at, force }, mmPerNewton }: { arrow: LoadArrow; mmPerNewton: number }) {
  const size = length(force) * mmPerNewton;
  const isDrawn = size > HEAD.length;
  const tail = addScaled(at, force, -mmPerNewton);
  const neck: Vec3 = addScaled(at, force, (-HEAD.length * mmPerNewton) / size);
  const from = [...at, ...force, mmPerNewton];
  const shaft = useGeometry(
    () => rodGeometry(isDrawn ? tail : [0, 0, 0], isDrawn ? neck : [0, 0, 1], SHAFT),
    from,
  );
  const head = useGeometry(
    () => rodGeometry(isDrawn ? neck : [0, 0, 0], isDrawn ? at : [0, 0, 1], HEAD.radius, 0.5),
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
