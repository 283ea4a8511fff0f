import { memo } from "react";
import type { Contour } from "../../../studies/map/contours.ts";
import type { DrawnMap, MapSideName } from "../../work/drawnMap.ts";
import { MAP_BOX, type MapFrame } from "./mapFrame.ts";
import { mapRegions } from "./mapRegions.ts";

export type MapPictureProps = {
  drawn: DrawnMap;
  side: MapSideName;
  frame: MapFrame;
  /** mm the shop wants to keep. */
  allowance: number;
};

/** Gaps as tones with their lines: hatched across where it touches, hatched along one way past a limit, the other way where the linkage cannot go, dotted where the time was up before it was looked at. */
export const MapPicture = memo(function MapPicture({ drawn, side, frame, allowance }: MapPictureProps) {
  const lines = drawn.lines[side];
  const { bands, open, unreached, past } = mapRegions(drawn, side, allowance, frame);
  const { left, top, width, height, right, bottom } = MAP_BOX;
  return (
    <g>
      <rect
        className="map-rubs"
        x={left}
        y={top}
        width={width - left - right}
        height={height - top - bottom}
      />
      <rect
        fill="url(#map-hatch-rubs)"
        x={left}
        y={top}
        width={width - left - right}
        height={height - top - bottom}
      />
      {bands.map((path, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a band is its place in the row
        <path key={i} className={`map-band map-band-${i}`} d={path} />
      ))}
      {past && <path fill="url(#map-hatch-limit)" d={past} />}
      {open && <path className="map-unreached" d={open} />}
      {open && <path fill="url(#map-hatch-open)" d={open} />}
      {unreached && <path className="map-unreached" d={unreached} />}
      {unreached && <path fill="url(#map-hatch-reach)" d={unreached} />}
      {lines.allowance.map((line, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines have no other name
        <path key={i} className="map-line-allowance" d={pathOf(line, frame)} />
      ))}
      {lines.touch.map((line, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines have no other name
        <path key={i} className="map-line-touch" d={pathOf(line, frame)} />
      ))}
      {drawn.limitBorder.map((line, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines have no other name
        <path key={i} className="map-line-limit" d={pathOf(line, frame)} />
      ))}
    </g>
  );
});

function pathOf(line: Contour, frame: MapFrame): string {
  let path = "";
  for (let i = 0; i < line.length; i += 2) {
    path += `${i === 0 ? "M" : "L"}${frame.x(line[i + 1]!).toFixed(1)} ${frame.y(line[i]!).toFixed(1)}`;
  }
  return path;
}
