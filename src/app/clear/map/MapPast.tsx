import type { ClearanceMap } from "../../../studies/map/clearanceMap.ts";
import type { DrawnMap } from "../../work/drawnMap.ts";
import { MAP_BOX } from "./mapFrame.ts";

/** A place of the map under the pointer: travel, mm, and steer. */
export type PointedPose = { readonly travel: number; readonly steer: number };

export type MapPastProps = {
  drawn: DrawnMap | null;
  pointed: PointedPose | null;
  /** The limit that the pose shown passes most, named; "" when all are kept. */
  past: string;
};

/** Which limit is passed under the pointer, or where the dot is. */
export function MapPast({ drawn, pointed, past }: MapPastProps) {
  const told = (drawn && pointed && pastAt(drawn.map, pointed)) || past;
  if (told === "") return null;
  return (
    <text
      className="map-past"
      x={MAP_BOX.width - MAP_BOX.right - 5}
      y={MAP_BOX.height - MAP_BOX.bottom - 6}
      textAnchor="end"
    >
      {told}
    </text>
  );
}

/** By the nearest cell; "" where none is passed. */
function pastAt({ travels, steers, pastLimit }: ClearanceMap, { travel, steer }: PointedPose): string {
  if (pastLimit === null) return "";
  const row = nearest(travels, travel);
  const limit = pastLimit.limits[pastLimit.passed[row * steers.length + nearest(steers, steer)]!];
  return limit === undefined ? "" : `past ${limit.side} ${limit.name}`;
}

/** Place in an even row of numbers. */
function nearest(values: Float64Array, value: number): number {
  const last = values.length - 1;
  const share = (value - values[0]!) / (values[last]! - values[0]!);
  return Math.min(last, Math.max(0, Math.round(share * last)));
}
