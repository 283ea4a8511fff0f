import { memo } from "react";
import type { Contour } from "../../../studies/map/contours.ts";
import type { DrawnMap, MapSideName } from "../../work/mapMessages.ts";
import { bandPaths } from "./bandPaths.ts";
import { isOpen } from "./isOpen.ts";
import { MAP_BOX, type MapFrame } from "./mapFrame.ts";

export type MapPictureProps = {
  drawn: DrawnMap;
  side: MapSideName;
  frame: MapFrame;
  /** mm the shop wants to keep. */
  allowance: number;
};

/** Gaps as tones with their lines: hatched across where it touches, hatched along one way past a limit, the other way where the linkage cannot go, dotted where the time was up before it was looked at. */
export const MapPicture = memo(function MapPicture({ drawn, side, frame, allowance }: MapPictureProps) {
  const { map } = drawn;
  const gap = drawn.gap[side];
  const lines = drawn.lines[side];
  // From the allowance on, each tone is twice as far.
  const steps = [0, allowance, 2 * allowance, 4 * allowance, 8 * allowance];
  const bands = bandPaths(map, gap, allowance > 0 ? steps : [0], frame);
  const reach = Float64Array.from(map.reach.status, (status) => (status === 0 ? -1 : 1));
  const [unreached] = map.reach.status.some((status) => status !== 0)
    ? bandPaths(map, reach, [0], frame)
    : [];
  // As far from the threshold as a cell without a gap is for the tones: both meet at one line, and nothing red shows between.
  const open = gap.map((_, cell) => (isOpen(map, gap, cell) ? 1e6 : -1));
  const [notLookedAt] = map.cutShort ? bandPaths(map, open, [0], frame) : [];
  const { pastLimit } = map;
  const [past] =
    pastLimit !== null && pastLimit.limits.length > 0
      ? bandPaths(
          map,
          pastLimit.share.map((share) => -share),
          [0],
          frame,
        )
      : [];
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
      {notLookedAt && <path className="map-unreached" d={notLookedAt} />}
      {notLookedAt && <path fill="url(#map-hatch-open)" d={notLookedAt} />}
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
