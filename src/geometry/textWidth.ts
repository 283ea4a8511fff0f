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
