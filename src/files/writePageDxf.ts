import type { Page, Pen } from "../geometry/page.ts";
import {
  coordinate,
  dxfFile,
  entityGroups,
  type Group,
  headerGroups,
  lineGroups,
  tableGroups,
  textGroups,
} from "./dxfParts.ts";

const CONTINUOUS = { name: "CONTINUOUS", about: "____________", dashes: [] } as const;

/** What a machine cuts, what it marks, and what is only for the eye: layers that can be switched off one by one. */
const LAYERS = [
  { name: "CUT", color: 7, lineType: CONTINUOUS.name },
  { name: "MARK", color: 5, lineType: CONTINUOUS.name },
  { name: "NOTES", color: 8, lineType: CONTINUOUS.name },
] as const;

function layerOf(pen: Pen): string {
  return pen === "cut" ? "CUT" : pen === "mark" ? "MARK" : "NOTES";
}

/** Height of capitals in letter sizes. */
const CAPITALS = 0.72;

/**
 * A page as DXF text, 1:1, measured from the page's origin in the units said by $INSUNITS. Pen `cut` is on layer CUT (outlines
 * as closed POLYLINE, holes as CIRCLE), `mark` on MARK, all else with the words on NOTES.
 */
export function pageDxfText(page: Page, units: "in" | "mm"): string {
  const [ox, oy] = page.origin ?? [0, 0];
  const lines = page.lines.flatMap(({ pen, points, closed = false }) => {
    const moved = Float64Array.from(points, (value, i) => value - (i % 2 === 0 ? ox : oy));
    return lineGroups({ points: moved, closed }, layerOf(pen), units);
  });
  const circles = page.circles.flatMap(({ pen, center, radius }): Group[] => [
    [0, "CIRCLE"],
    [8, layerOf(pen)],
    [10, coordinate(center[0] - ox, units)],
    [20, coordinate(center[1] - oy, units)],
    [30, "0.0"],
    [40, coordinate(radius, units)],
  ]);
  const texts = page.texts.flatMap(({ text, at, size }) =>
    textGroups(text, { at: [at[0] - ox, at[1] - oy], height: size * CAPITALS }, "NOTES", units),
  );
  return dxfFile(
    headerGroups("Wellsweep drawing, 1:1", [-ox, -oy, page.width - ox, page.height - oy], units),
    tableGroups([CONTINUOUS], LAYERS, units),
    entityGroups([...lines, ...circles, ...texts]),
  );
}
