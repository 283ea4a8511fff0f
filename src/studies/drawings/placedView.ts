import { textWidth } from "../../geometry/page.ts";
import { drawnDimensions, type LaidDimension, laidDimensions } from "./dimensions.ts";
import type { DrawnView } from "./drawnView.ts";
import { type Drawn, line, NOTHING, together } from "./pageParts.ts";

/** A view at a scale about its own zero, mm of paper. */
export interface PlacedView {
  readonly drawn: Drawn;
  readonly laid: readonly LaidDimension[];
  /** How far it reaches from its zero, words and dimensions counted. */
  readonly reach: {
    readonly left: number;
    readonly right: number;
    readonly below: number;
    readonly above: number;
  };
}

// mm of paper.
const TITLE = 3.2;
const TITLE_ROOM = 7;
const MARK = 7;

/** @param scale paper for knuckle @param said scale in words, under the view where it is not the sheet's */
export function placedView(view: DrawnView, scale: number, said = ""): PlacedView {
  const laid = laidDimensions(view.dimensions, view.bounds, scale);
  const lines = view.lines.map((one) => ({
    ...one,
    points: Float64Array.from(one.points, (mm) => mm * scale),
  }));
  const body = together({ ...NOTHING, lines }, drawnDimensions(laid), cutMarks(view, scale));
  const low = reachOf(body);
  const title = said === "" ? view.title : `${view.title}, ${said}`;
  const middle = ((view.bounds[0] + view.bounds[2]) / 2) * scale;
  const text = {
    at: [middle, low.y0 - TITLE_ROOM + 1] as const,
    size: TITLE,
    text: title,
    anchor: "middle" as const,
    bold: true,
  };
  const drawn = together(body, { ...NOTHING, texts: [text] });
  const all = reachOf(drawn);
  return { drawn, laid, reach: { left: -all.x0, right: all.x1, below: -all.y0 + 1, above: all.y1 } };
}

/** Where the plane of the section stands: a thick stroke, an arrow the way it is seen and its letter, above and below. */
function cutMarks({ cutAt, bounds }: DrawnView, scale: number): Drawn {
  if (cutAt === undefined) return NOTHING;
  const x = cutAt * scale;
  const ends = [
    { y: bounds[3] * scale + 7, way: 1 },
    { y: bounds[1] * scale - 7, way: -1 },
  ];
  return {
    lines: ends.flatMap(({ y, way }) => [
      line("outline", x, y - 2.5 * way, x, y + 2.5 * way),
      line("dimension", x, y, x + MARK, y),
      {
        pen: "dimension" as const,
        points: [x + MARK, y, x + MARK - 2.5, y + 0.6, x + MARK - 2.5, y - 0.6],
        closed: true,
        filled: true,
      },
    ]),
    circles: [],
    texts: ends.map(({ y, way }) => ({
      at: [x + MARK + 1.5, way > 0 ? y - 0.6 : y - 2.2] as const,
      size: 3.6,
      text: "A",
      bold: true,
    })),
  };
}

function reachOf({ lines, texts }: Drawn): { x0: number; y0: number; x1: number; y1: number } {
  let [x0, y0, x1, y1] = [0, 0, 0, 0];
  const meet = (x: number, y: number) => {
    [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x), Math.max(y1, y)];
  };
  for (const { points } of lines) for (let i = 0; i < points.length; i += 2) meet(points[i]!, points[i + 1]!);
  for (const { at, text, size, anchor = "start", turn = 0 } of texts) {
    const width = textWidth(text, size) * 1.05;
    const back = { start: 0, middle: 0.5, end: 1 }[anchor] * width;
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    for (const [a, b] of [
      [-back, 0],
      [width - back, size],
    ] as const)
      meet(at[0] + a * cos - b * sin, at[1] + a * sin + b * cos);
  }
  return { x0, y0, x1, y1 };
}
