import type { Ref } from "react";
import { type BufferGeometry, EdgesGeometry, type LineSegments, type Mesh } from "three";
import { useStage } from "../state/stageSettings.ts";
import type { Tone } from "./fills.ts";
import { useInk } from "./InkProvider.tsx";
import { useGeometry } from "./useGeometry.ts";

export type SolidProps = {
  geometry: BufferGeometry;
  tone: Tone;
  /**
   * 0 (default) = opaque. 1 and up: what is behind it shows through; a higher layer is drawn over a lower one,
   * so that wheels (1) show through the body (2).
   */
  veil?: 0 | 1 | 2;
  /** It is a guess still: a dashed silhouette, no edges, and what is behind it shows through. Default false. */
  isGuess?: boolean;
  /** Draws its silhouette. Default true. */
  hasOutline?: boolean;
  /** Draws its sharp edges. Default true. */
  hasEdges?: boolean;
  /** Silhouette and edges, for whoever changes their ink by state. */
  outlineRef?: Ref<Mesh>;
  edgesRef?: Ref<LineSegments>;
};

/** Degrees. Faces that meet flatter than this are one surface, and their seam is not inked. */
const FLAT = 25;

/**
 * A solid as a drawing shows it: a flat fill, an inked silhouette and inked edges. A veil is drawn as depth,
 * lines and fill in that order, so that what lies inside shows but its own far side does not.
 */
export function Solid({ isGuess = false, ...props }: SolidProps) {
  return isGuess ? <Guess {...props} /> : <Known {...props} />;
}

/** Before all veils, so that wheels and body are drawn over it. */
function Guess({ geometry, tone, outlineRef }: SolidProps) {
  const ink = useInk();
  return (
    <>
      <mesh geometry={geometry} material={ink.depth} renderOrder={1} />
      <mesh ref={outlineRef ?? null} geometry={geometry} material={ink.guess.clear} renderOrder={2} />
      <mesh geometry={geometry} material={ink.veil[tone]} renderOrder={3} />
    </>
  );
}

function Known({ geometry, tone, veil = 0, hasOutline = true, hasEdges = true, ...refs }: SolidProps) {
  const ink = useInk();
  const edges = useGeometry(() => new EdgesGeometry(geometry, FLAT), [geometry]);
  const order = 10 * veil;
  // Cut open, a veil would show the far faces that its silhouette is made of.
  const isCut = useStage((s) => veil > 0 && s.section !== null);
  return (
    <>
      {veil > 0 && <mesh geometry={geometry} material={ink.depth} renderOrder={order} />}
      {hasOutline && !isCut && (
        <mesh
          ref={refs.outlineRef ?? null}
          geometry={geometry}
          material={ink.outline.clear}
          renderOrder={order + 1}
        />
      )}
      {hasEdges && (
        <lineSegments
          ref={refs.edgesRef ?? null}
          geometry={edges}
          material={ink.edge.clear}
          renderOrder={order + 1}
        />
      )}
      <mesh
        geometry={geometry}
        material={veil > 0 ? ink.veil[tone] : ink.solid[tone]}
        renderOrder={veil > 0 ? order + 2 : 0}
      />
    </>
  );
}
