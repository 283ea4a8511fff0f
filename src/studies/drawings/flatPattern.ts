import { type Page, textWidth } from "../../geometry/page.ts";
import { sheetOfWords } from "../wording/drawingWords.ts";
import { clipped } from "./clipped.ts";
import {
  BAR_HEIGHT,
  type Drawn,
  LEADING,
  line,
  movedBy,
  NOTHING,
  pageOf,
  paragraph,
  scaleBar,
  together,
} from "./pageParts.ts";
import { lyingPaper, MARGIN, PAPERS, type PaperName, type PaperSize } from "./shopFile.ts";

/** Something drawn 1:1 to be cut or wrapped round: a template or a plate. mm, its own x to the right, y up. */
export interface FlatPattern {
  readonly title: string;
  /** Written under it, lines that fit beside each other on no less than letter paper. */
  readonly notes: readonly string[];
  readonly units: "in" | "mm";
  readonly drawn: Drawn;
  /** x, y of the low and the high corner of what is drawn. */
  readonly bounds: readonly [number, number, number, number];
}

/** mm. Sizes of letters. */
const TITLE = 4.2;
const NOTE = 3;
/** mm. What two neighboring sheets both show. */
const OVERLAP = 10;
/** mm. Arms of the crosses that sheets are laid together by. */
const CROSS = 4;
/** A hair's rounding must not ask for another sheet, mm. */
const HAIR = 1e-6;

/** On one page just large enough for it, in the middle of its width. */
export function patternPage(pattern: FlatPattern): Page {
  const [x0, y0, x1, y1] = pattern.bounds;
  const foot = footOf(pattern);
  const width = Math.max(x1 - x0, foot.width) + 2 * MARGIN;
  const origin = [(width - (x1 - x0)) / 2 - x0, MARGIN + foot.height + MARGIN / 2 - y0] as const;
  const size = { width, height: origin[1] + y1 + MARGIN };
  const drawn = together(movedBy(pattern.drawn, ...origin), movedBy(foot.drawn, MARGIN, MARGIN));
  return { ...pageOf(pattern.title, size, drawn), origin };
}

/**
 * On sheets of a paper, upright or lying, whichever takes fewer; what is larger than one sheet goes over several that overlap
 * by 10 mm, with crosses to lay them together by; what fits stands in the middle. Each has the bar.
 */
export function patternSheets(pattern: FlatPattern, paper: PaperName): Page[] {
  const upright = tilesOn(pattern, PAPERS[paper]);
  const lying = tilesOn(pattern, lyingPaper(paper));
  const { size, columns, rows } =
    lying.columns * lying.rows < upright.columns * upright.rows ? lying : upright;
  const foot = footOf(pattern);
  const [x0, y0, x1, y1] = pattern.bounds;
  const window = windowOf(size, foot.height);
  const bottom = MARGIN + foot.height + MARGIN / 2;
  const middle = (room: number, length: number, count: number) => (count === 1 ? (room - length) / 2 : 0);
  const left = x0 - middle(window.width, x1 - x0, columns);
  const low0 = y0 - middle(window.height, y1 - y0, rows);
  const sheets: Page[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const low = [left + column * (window.width - OVERLAP), low0 + row * (window.height - OVERLAP)] as const;
      const high = [low[0] + window.width, low[1] + window.height] as const;
      const seen = clipped(pattern.drawn, [...low, ...high]);
      const count = columns * rows;
      const words = count === 1 ? [] : [sheetOfWords(row * columns + column + 1, count, row + 1, column + 1)];
      const drawn = together(
        movedBy(seen, MARGIN - low[0], bottom - low[1]),
        movedBy(crossesOf({ column, row, columns, rows }, window), MARGIN, bottom),
        movedBy(footOf(pattern, words).drawn, MARGIN, MARGIN),
      );
      sheets.push(pageOf([pattern.title, ...words].join(", "), size, drawn));
    }
  }
  return sheets;
}

function tilesOn(pattern: FlatPattern, size: PaperSize) {
  const [x0, y0, x1, y1] = pattern.bounds;
  const window = windowOf(size, footOf(pattern).height);
  const count = (length: number, room: number) =>
    length <= room + HAIR ? 1 : 1 + Math.ceil((length - room - HAIR) / (room - OVERLAP));
  return { size, columns: count(x1 - x0, window.width), rows: count(y1 - y0, window.height) };
}

function windowOf({ width, height }: PaperSize, foot: number): PaperSize {
  return { width: width - 2 * MARGIN, height: height - 2 * MARGIN - foot - MARGIN / 2 };
}

/** Title, which sheet it is (`more`, a line), notes and bar, from the lower left corner. */
function footOf(
  { title, notes, units }: FlatPattern,
  more: readonly string[] = [],
): { readonly drawn: Drawn; readonly width: number; readonly height: number } {
  const height = BAR_HEIGHT + (TITLE + (notes.length + 2) * NOTE) * LEADING;
  const lines = paragraph([...more, ...notes], 0, height - TITLE * LEADING, NOTE);
  const drawn: Drawn = {
    ...NOTHING,
    texts: [{ at: [0, height - TITLE], size: TITLE, text: title, bold: true }, ...lines],
  };
  const width = Math.max(textWidth(title, TITLE) * 1.06, ...notes.map((text) => textWidth(text, NOTE)), 104);
  return { drawn: together(drawn, scaleBar(units, 0, 0)), width, height };
}

/** In the middle of every overlap, in the same places of the pattern on both sheets. */
function crossesOf(
  { column, row, columns, rows }: { column: number; row: number; columns: number; rows: number },
  { width, height }: PaperSize,
): Drawn {
  const half = OVERLAP / 2;
  const xs = [...(column > 0 ? [half] : []), ...(column < columns - 1 ? [width - half] : [])];
  const ys = [...(row > 0 ? [half] : []), ...(row < rows - 1 ? [height - half] : [])];
  const cross = (x: number, y: number) => [
    line("dimension", x - CROSS, y, x + CROSS, y),
    line("dimension", x, y - CROSS, x, y + CROSS),
  ];
  const inner = (length: number) => [2 * OVERLAP, length - 2 * OVERLAP];
  const lines = [
    ...xs.flatMap((x) => inner(height).flatMap((y) => cross(x, y))),
    ...ys.flatMap((y) => inner(width).flatMap((x) => cross(x, y))),
  ];
  return { ...NOTHING, lines };
}
