/**
 * The cells of a chart, numbered row by row, in the order they are worked out: corners, middles, quarters and so on, so that
 * what is there at any time shows the whole coarsely.
 * @param byColumn of cells as fine as each other, those of one column follow each other; else those of one row
 */
export function chartOrder(columns: number, rows: number, byColumn: boolean): readonly number[] {
  const [x, y] = [levelsOf(columns), levelsOf(rows)];
  const cells = Array.from({ length: columns * rows }, (_, cell) => cell);
  const level = (cell: number) => Math.max(x[cell % columns]!, y[Math.floor(cell / columns)]!);
  const along = (cell: number) => (byColumn ? (cell % columns) * rows + Math.floor(cell / columns) : cell);
  return cells.sort((a, b) => level(a) - level(b) || along(a) - along(b));
}

/** Cells of the first picture of a chart: corners, middles of its sides and its own. */
export const FIRST_CELLS = 9;

/** The places of an axis that are worked out first: at most `most`, both ends among them, about evenly. */
export function firstPlaces(count: number, most: number): readonly number[] {
  const levels = levelsOf(count);
  const upTo = (level: number) => [...levels.keys()].filter((i) => levels[i]! <= level);
  let level = 0;
  while (level < 255 && upTo(level + 1).length <= most && upTo(level).length < count) level++;
  return upTo(level);
}

/** How coarse each place of a list is: 0 = its ends, 1 = between them, and so on. */
function levelsOf(count: number): Uint8Array {
  const levels = new Uint8Array(count).fill(255);
  let step = 1;
  while (step < count - 1) step *= 2;
  for (let level = 0; step >= 1; level++, step /= 2) {
    for (let i = 0; i < count; i += step) levels[i] = Math.min(levels[i]!, level);
    levels[count - 1] = 0;
  }
  return levels;
}
