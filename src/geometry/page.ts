/**
 * Widths of the printable ASCII letters of Helvetica from space on, in thousandths of the letter size (Adobe's font metrics for
 * the 14 standard fonts of PDF, from memory). Faces metrically alike print as wide.
 */
const WIDTHS = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556,
  556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278,
  500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469,
  556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500,
  278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];
/** Of letters outside the table: as wide as most of them. */
const OTHER = 600;
const FIRST = 32;

/** How long a line of text is in Helvetica. @param size of its letters, in the unit of the answer */
export function textWidth(text: string, size: number): number {
  let thousandths = 0;
  for (const letter of text) thousandths += WIDTHS[letter.codePointAt(0)! - FIRST] ?? OTHER;
  return (thousandths * size) / 1000;
}

/**
 * What a line of a sheet is for; the writers decide how it looks. `outline` and `hidden`: edges seen and not seen. `center`:
 * an axis. `cut`: where a plane cuts, or where a template is cut. `mark`: a line that is scribed, not cut. `hatch`, `dimension`,
 * `frame` as in any shop drawing.
 */
export type Pen = "outline" | "hidden" | "center" | "cut" | "mark" | "hatch" | "dimension" | "frame";

/** Straight pieces one after another: x0, y0, x1, y1, … */
export interface PageLine {
  readonly pen: Pen;
  readonly points: ArrayLike<number>;
  /** The first point is not repeated at the end of a closed one. Default false. */
  readonly closed?: boolean;
  /** Filled with ink, as the tip of an arrow. Default false. */
  readonly filled?: boolean;
}

export interface PageCircle {
  readonly pen: Pen;
  readonly center: readonly [x: number, y: number];
  readonly radius: number;
}

export interface PageText {
  readonly at: readonly [x: number, y: number];
  /** Height of its letters' body: from one line to the next it takes a third more. */
  readonly size: number;
  readonly text: string;
  /** Which end of the text `at` is. Default start. */
  readonly anchor?: "start" | "middle" | "end";
  /** Counterclockwise, rad; 0 or a quarter turn. Default 0. */
  readonly turn?: number;
  readonly bold?: boolean;
}

/** One sheet of paper with what is drawn on it. mm of the paper from its lower left corner, x to the right, y up. */
export interface Page {
  readonly title: string;
  /** Where the drawing's own zero lies, for formats that keep it. Default the corner. */
  readonly origin?: readonly [x: number, y: number];
  readonly width: number;
  readonly height: number;
  readonly lines: readonly PageLine[];
  readonly circles: readonly PageCircle[];
  readonly texts: readonly PageText[];
}
