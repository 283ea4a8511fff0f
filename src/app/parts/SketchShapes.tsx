import type { Place, SketchShape } from "../../geometry/sketch.ts";

export type SketchShapesProps = {
  shapes: readonly SketchShape[];
  /** What the classes of its lines begin with: `jig` makes `jig-tape`, `jig-read`. */
  prefix: string;
};

/** The lines, rings and words of a sketch, inside an svg of its size; how each looks is the page's. */
export function SketchShapes({ shapes, prefix }: SketchShapesProps) {
  return shapes.map((shape, i) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: a shape is its place in the drawing
    <Shape key={i} shape={shape} prefix={prefix} />
  ));
}

function Shape({ shape, prefix }: { shape: SketchShape; prefix: string }) {
  switch (shape.kind) {
    case "line":
      return <path className={`${prefix}-${shape.look}`} d={`M${shape.points.map(placeText).join("L")}`} />;
    case "ring":
      return (
        <circle
          className={`${prefix}-ring ${prefix}-${shape.look}`}
          cx={shape.at[0]}
          cy={shape.at[1]}
          r={shape.radius}
        />
      );
    case "text":
      return (
        <text
          className={`${prefix}-${shape.isRead ? "read" : "word"}`}
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
