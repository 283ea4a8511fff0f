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

/** The hatchings that a map and its key are drawn with. */
export function MapHatches() {
  return (
    <defs>
      <pattern id="map-hatch-rubs" width="9" height="9" patternUnits="userSpaceOnUse">
        <path className="map-hatch-rubs" d="M0 0L9 9M9 0L0 9" />
      </pattern>
      <pattern id="map-hatch-reach" width="6" height="6" patternUnits="userSpaceOnUse">
        <path className="map-hatch-reach" d="M0 6L6 0" />
      </pattern>
      <pattern id="map-hatch-open" width="10" height="10" patternUnits="userSpaceOnUse">
        <circle className="map-hatch-open" cx="5" cy="5" r="1.3" />
      </pattern>
      <pattern id="map-hatch-limit" width="8" height="8" patternUnits="userSpaceOnUse">
        <path className="map-hatch-limit" d="M0 0L8 8M-1 7L1 9M7 -1L9 1" />
      </pattern>
    </defs>
  );
}
