import { useWorkbench } from "../../state/useWorkbench.ts";
import { MAP_BOX, type MapFrame } from "./mapFrame.ts";

export type MapDotProps = {
  frame: MapFrame;
};

/** The pose shown, with a hair each way to read it off the edges. */
export function MapDot({ frame }: MapDotProps) {
  const travel = useWorkbench((s) => s.travel);
  const steer = useWorkbench((s) => s.steer);
  const x = frame.x(steer);
  const y = frame.y(travel);
  const { left, right, top, bottom, width, height } = MAP_BOX;
  return (
    <g className="map-pose">
      <line x1={x} x2={x} y1={top} y2={height - bottom} />
      <line x1={left} x2={width - right} y1={y} y2={y} />
      <circle cx={x} cy={y} r={9} />
      <circle className="map-pose-core" cx={x} cy={y} r={2.5} />
    </g>
  );
}
