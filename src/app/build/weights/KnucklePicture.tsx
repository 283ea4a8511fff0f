import { useMemo } from "react";
import type { KnuckleView } from "../../work/knuckleViewOf.ts";

/** What a picture holds, mm of the knuckle. */
export interface PictureFrame {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** mm around the part. */
const ROOM = 6;

/** A knuckle from the front, left side: outboard to the right. What it is stands beside it in words. */
export function KnucklePicture({ view, frame }: { view: KnuckleView; frame: PictureFrame }) {
  const path = useMemo(() => view.lines.map(pathOf).join(""), [view]);
  const { left, bottom, right, top } = frame;
  const box = [left - ROOM, -top - ROOM, right - left + 2 * ROOM, top - bottom + 2 * ROOM];
  return (
    <svg className="knuckle-picture" viewBox={box.map((n) => n.toFixed(1)).join(" ")} aria-hidden="true">
      <path d={path} />
    </svg>
  );
}

function pathOf(points: ArrayLike<number>): string {
  let text = "";
  for (let i = 0; i + 1 < points.length; i += 2)
    text += `${i === 0 ? "M" : "L"}${points[i]!.toFixed(1)} ${(-points[i + 1]!).toFixed(1)}`;
  return text;
}
