import { memo } from "react";
import type { Setup } from "../../../setup/types/types.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { ticksOf, tickText } from "../../parts/plotNumbers.ts";
import { MAP_BOX, type MapFrame, TRAVEL_TITLE } from "./mapFrame.ts";

export type MapScalesProps = {
  setup: Setup;
  frame: MapFrame;
  format: LengthFormat;
};

const STEERS = [1, 0.5, 0, -0.5, -1] as const;

/** The map's edge: travel up the side, steering along the foot, the named heights as lines across. */
export const MapScales = memo(function MapScales({ setup, frame, format }: MapScalesProps) {
  const { left, right, top, bottom, width, height } = MAP_BOX;
  const { droop, bump } = setup.travel;
  return (
    <g>
      <rect
        className="map-edge"
        x={left}
        y={top}
        width={width - left - right}
        height={height - top - bottom}
      />
      {ticksOf(droop, bump, 8, "length", format.units).map((tick) => (
        <text key={tick} className="map-tick" x={left - 6} y={frame.y(tick) + 4} textAnchor="end">
          {tickText(tick, "length", format)}
        </text>
      ))}
      {STEERS.map((steer) => (
        <g key={steer}>
          <line className="map-grid" x1={frame.x(steer)} x2={frame.x(steer)} y1={top} y2={height - bottom} />
          <text
            className="map-tick"
            x={frame.x(steer)}
            y={height - bottom + 14}
            textAnchor={steer === 1 ? "start" : steer === -1 ? "end" : "middle"}
          >
            {steer === 0 ? "straight" : steer === 1 ? "left lock" : steer === -1 ? "right lock" : "50%"}
          </text>
        </g>
      ))}
      {setup.stances.map((stance) => (
        <g key={stance.name}>
          <line
            className="map-stance"
            x1={left}
            x2={width - right}
            y1={frame.y(stance.travel)}
            y2={frame.y(stance.travel)}
          />
          <text
            className="map-stance-name"
            x={left + 5}
            y={frame.y(stance.travel) + (stance.travel > droop + 0.9 * (bump - droop) ? 12 : -4)}
          >
            {stance.name}
          </text>
        </g>
      ))}
      <text className="map-tick map-travel-title" {...TRAVEL_TITLE}>
        travel, {format.units}: + bump (truck low), − droop
      </text>
    </g>
  );
});
