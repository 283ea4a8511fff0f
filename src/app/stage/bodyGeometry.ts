import { BoxGeometry, BufferAttribute, BufferGeometry } from "three";
import { mergeGeometries } from "three/addons/utils/BufferGeometryUtils.js";
import type { BodyPart, BoxPart, MeshPart, PathPart } from "../../setup/types/truckTypes.ts";
import { ballGeometry, rodGeometry } from "./solidGeometry.ts";

/** mm. A path thinner than this is drawn this thin: a line that could not be seen would be no drawing. */
const THINNEST = 2.5;

/** A body part of the left side as a surface, in vehicle axes. Drawn only; gaps are measured to the part itself. */
export function bodyGeometry(part: BodyPart): BufferGeometry {
  switch (part.kind) {
    case "path":
      return pathGeometry(part);
    case "box":
      return boxGeometry(part);
    case "mesh":
      return meshGeometry(part);
  }
}

function pathGeometry({ points, radius }: PathPart): BufferGeometry {
  const drawn = Math.max(radius, THINNEST);
  return mergeGeometries(
    points.flatMap((point, i) => {
      const next = points[i + 1];
      return next
        ? [ballGeometry(point, drawn), rodGeometry(point, next, drawn)]
        : [ballGeometry(point, drawn)];
    }),
  );
}

function boxGeometry({ min, max }: BoxPart): BufferGeometry {
  return new BoxGeometry(max[0] - min[0], max[1] - min[1], max[2] - min[2]).translate(
    0.5 * (min[0] + max[0]),
    0.5 * (min[1] + max[1]),
    0.5 * (min[2] + max[2]),
  );
}

function meshGeometry({ positions, triangles }: MeshPart): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(Float32Array.from(positions), 3));
  geometry.setIndex(new BufferAttribute(triangles, 1));
  // Own corners for each face, so that every facet has its own normal.
  const faceted = geometry.toNonIndexed();
  faceted.computeVertexNormals();
  return faceted;
}
