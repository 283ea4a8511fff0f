import { useThree } from "@react-three/fiber";
import { useLayoutEffect } from "react";
import { BufferAttribute, BufferGeometry } from "three";
import { useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import type { DrawnSide } from "../work/drawnEnvelope.ts";
import { useInk } from "./InkProvider.tsx";
import { useEnvelope } from "./useEnvelope.ts";
import { useGeometry } from "./useGeometry.ts";

export type EnvelopeViewProps = {
  truck: Truck;
};

/** mm. Past everything: where a setup's allowance leaves fewer bands. */
const BEYOND = 1e9;

/** What the tires sweep, as a quiet surface in bands of distance to the body. Of the truck shown, or nothing. */
export function EnvelopeView({ truck }: EnvelopeViewProps) {
  const ink = useInk();
  const dpr = useThree((s) => s.viewport.dpr);
  const drawn = useEnvelope(truck)?.answer ?? null;
  const edges = drawn?.edges ?? null;
  useLayoutEffect(() => {
    if (edges === null) return;
    ink.band.uniforms.edges!.value.set(edges[0] ?? BEYOND, edges[1] ?? BEYOND, edges[2] ?? BEYOND);
    ink.band.uniforms.scale!.value = dpr;
  }, [ink, edges, dpr]);
  return drawn?.sides.map((side) => <EnvelopeSide key={`${truck.file} ${side.side}`} drawn={side} />);
}

function EnvelopeSide({ drawn }: { drawn: DrawnSide }) {
  const ink = useInk();
  const surface = useGeometry(() => surfaceGeometry(drawn), [drawn]);
  const lines = useGeometry(() => linesGeometry(drawn), [drawn]);
  // Cut open, its inside would be inked all over.
  const isWhole = useStage((s) => s.section === null);
  return (
    <>
      {isWhole && <mesh geometry={surface} material={ink.outline.clear} renderOrder={31} />}
      <mesh geometry={surface} material={ink.depth} renderOrder={30} />
      <mesh geometry={surface} material={ink.band} renderOrder={32} />
      <lineSegments geometry={lines} material={ink.edge.clear} renderOrder={33} />
    </>
  );
}

function surfaceGeometry({ positions, triangles, distances }: DrawnSide): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(positions, 3));
  geometry.setAttribute("distance_", new BufferAttribute(distances, 1));
  geometry.setIndex(new BufferAttribute(triangles, 1));
  geometry.computeVertexNormals();
  return geometry;
}

function linesGeometry({ lines }: DrawnSide): BufferGeometry {
  const all = new Float32Array(lines.reduce((sum, one) => sum + one.length, 0));
  let at = 0;
  for (const one of lines) {
    all.set(one, at);
    at += one.length;
  }
  return new BufferGeometry().setAttribute("position", new BufferAttribute(all, 3));
}
