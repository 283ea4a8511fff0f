import type { Vec3 } from "../../geometry/vec.ts";
import { type KeyPath, keyText } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";
import { measuredPoints } from "../../studies/plausibility/fileUnits.ts";
import { axesOf, type EllipseView } from "../state/measuredView.ts";

/**
 * How far from where they are drawn points of a setup may be that have a ± beside their numbers, corners of a mesh too; flat where
 * one has none.
 */
export function typedEllipses(setup: Setup): readonly EllipseView[] {
  if (setup.within.length === 0) return [];
  const within = new Map(setup.within.map((one) => [keyText(one.path), one.within]));
  return [...measuredPoints(setup), ...cornersWithin(setup)].flatMap(({ path, at }): EllipseView[] => {
    const [x, y, z] = [0, 1, 2].map((axis) => within.get(keyText([...path, axis])) ?? 0) as [...Vec3];
    if (x === 0 && y === 0 && z === 0) return [];
    return [{ name: "", at, isAssumed: false, isTyped: true, axes: axesOf([x, y, z]) }];
  });
}

/** The corners of meshes in the setup itself that have a ± of their own. */
function cornersWithin({ within, truck }: Setup): readonly { readonly path: KeyPath; readonly at: Vec3 }[] {
  const paths = new Map(
    within.flatMap(({ path }) =>
      path[1] === "body" && path[3] === "vertices" ? [[keyText(path.slice(0, 5)), path.slice(0, 5)]] : [],
    ),
  );
  return [...paths.values()].flatMap((path) => {
    const part = truck.body[Number(path[2])];
    const at = 3 * Number(path[4]);
    if (part?.kind !== "mesh") return [];
    const [x, y, z] = part.positions.slice(at, at + 3);
    return [{ path, at: [x!, y!, z!] }];
  });
}
