import type { Truck } from "../../state/truck.ts";
import type { MapSideName } from "../../work/drawnMap.ts";
import { useAnswer } from "../../work/useAnswer.ts";
import type { MapFrame } from "./mapFrame.ts";

export type MapWorstProps = {
  truck: Truck;
  frame: MapFrame;
  side: MapSideName;
};

/** A cross at the worst pose of all, as the check proved it. */
export function MapWorst({ truck, frame, side }: MapWorstProps) {
  const report = useAnswer("check", truck)?.answer;
  const entries = report?.parts.filter((entry) => side === "both" || entry.side === side) ?? [];
  const first = entries[0];
  if (first === undefined) return null;
  const worst = entries.reduce((least, entry) => (entry.gap < least.gap ? entry : least), first);
  // What rides with the wheel is as near everywhere: no place of the map is its own.
  if (worst.together) return null;
  const x = frame.x(worst.steer);
  const y = frame.y(worst.travel);
  return (
    <path
      className="map-worst"
      d={`M${x - 6} ${y - 6}L${x + 6} ${y + 6}M${x + 6} ${y - 6}L${x - 6} ${y + 6}`}
    />
  );
}
