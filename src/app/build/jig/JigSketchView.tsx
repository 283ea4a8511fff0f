import type { Place, Sketch, SketchShape } from "../../../geometry/sketch.ts";

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
        {shapes.map((shape, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a shape is its place in the drawing
          <Shape key={i} shape={shape} />
        ))}
      </svg>
    </figure>
  );
}

function Shape({ shape }: { shape: SketchShape }) {
  switch (shape.kind) {
    case "line":
      return <path className={`jig-${shape.look}`} d={`M${shape.points.map(placeText).join("L")}`} />;
    case "ring":
      return (
        <circle className={`jig-ring jig-${shape.look}`} cx={shape.at[0]} cy={shape.at[1]} r={shape.radius} />
      );
    case "text":
      return (
        <text
          className={shape.isRead ? "jig-read" : "jig-word"}
          x={shape.at[0]}
          y={shape.at[1]}
          textAnchor={shape.anchor}
        >
          {shape.text}
        </text>
      );
  }
}

function placeText([x, y]: Place): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}
