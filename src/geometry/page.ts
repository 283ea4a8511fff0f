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
