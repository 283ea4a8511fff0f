import type { Sketch } from "../../../geometry/sketch.ts";
import { SketchShapes } from "../../parts/SketchShapes.tsx";

export type JigSketchViewProps = {
  title: string;
  sketch: Sketch;
};

/** One view of the jig, drawn to the knuckle. */
export function JigSketchView({ title, sketch: { width, height, shapes } }: JigSketchViewProps) {
  return (
    <figure className="jig-view">
      <figcaption>{title}</figcaption>
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={title}>
        <SketchShapes shapes={shapes} prefix="jig" />
      </svg>
    </figure>
  );
}
