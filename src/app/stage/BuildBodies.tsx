import { useMemo } from "react";
import { BufferAttribute, BufferGeometry } from "three";
import type { BuildSetup } from "../../setup/types/buildTypes.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";
import { knuckleSolid, type SolidBody } from "../../studies/knuckleSolid/knuckleSolid.ts";
import { useStage } from "../state/stageSettings.ts";
import { useInk } from "./InkProvider.tsx";
import { Solid, type SolidProps } from "./Solid.tsx";
import { useGeometry } from "./useGeometry.ts";

export type BuildBodiesProps = {
  build: BuildSetup;
  knuckle: KnuckleSetup;
};

/** The knuckle as its build says: pin, tubes and bars fitted to each other, plates. Knuckle frame. */
export function BuildBodies({ build, knuckle }: BuildBodiesProps) {
  const bodies = useMemo(() => knuckleSolid(build, knuckle), [build, knuckle]);
  return bodies.map((body, i) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: bodies are told apart by their place in the build
    <Body key={i} body={body} />
  ));
}

function Body({ body }: { body: SolidBody }) {
  const geometry = useGeometry(() => geometryOf(body), [body]);
  const tone = body.kind === "plate" ? "arm" : body.kind === "pin" ? "rod" : "knuckle";
  return <CutSolid geometry={geometry} tone={tone} />;
}

/** A solid that looks solid where the knuckle is cut open. */
export function CutSolid(props: Pick<SolidProps, "geometry" | "tone">) {
  const ink = useInk();
  const isCut = useStage((s) => s.isCutOpen);
  return (
    <>
      <Solid {...props} hasOutline={!isCut} />
      {isCut && <mesh geometry={props.geometry} material={ink.cutFace} />}
    </>
  );
}

/** Every face with corners of its own, so that flat sides of a round stay apart from edges. */
function geometryOf({ mesh: { positions, triangles } }: SolidBody): BufferGeometry {
  const indexed = new BufferGeometry();
  indexed.setAttribute("position", new BufferAttribute(Float32Array.from(positions), 3));
  indexed.setIndex(new BufferAttribute(triangles, 1));
  const geometry = indexed.toNonIndexed();
  geometry.computeVertexNormals();
  indexed.dispose();
  return geometry;
}
