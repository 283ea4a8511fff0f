import type { Vec3 } from "../../geometry/vec.ts";
import { keyText } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";
import { measuredPoints } from "../../studies/plausibility/fileUnits.ts";
import type { EllipseView } from "../state/measuredView.ts";

/** How far from where they are drawn points of a setup may be that have a ± beside their numbers; flat where one has none. */
export function typedEllipses(setup: Setup): readonly EllipseView[] {
  if (setup.within.length === 0) return [];
  const within = new Map(setup.within.map((one) => [keyText(one.path), one.within]));
  return measuredPoints(setup).flatMap(({ path, at }): EllipseView[] => {
    const [x, y, z] = [0, 1, 2].map((axis) => within.get(keyText([...path, axis])) ?? 0) as [...Vec3];
    if (x === 0 && y === 0 && z === 0) return [];
    return [
      {
        name: "",
        at,
        isAssumed: false,
        isTyped: true,
        axes: [
          [x, 0, 0],
          [0, y, 0],
          [0, 0, z],
        ],
      },
    ];
  });
}
