/**
 * Widths in em, by kinds of letters, no less than those of any font the page asks for (of them Open Sans is the widest; by its
 * own metrics, from memory).
 */
const WIDTHS: readonly (readonly [RegExp, number])[] = [
  [/[ijlI.,;:'|! \u00a0()[\]]/, 0.31],
  [/[ftr/-]/, 0.42],
  [/[cskvxyz]/, 0.55],
  [/[aeg]/, 0.585],
  [/\d/, 0.575],
  [/[mwMW@%—…]/, 0.95],
  [/[A-Z<>×]/, 0.78],
];
const OTHER = 0.635;
/** Of letters written strong; figures keep their width. */
const BOLD = 1.04;

/** No less than what a line takes, px. @param font the letters' size, px */
export function lineRoom(text: string, font: number, isBold = false): number {
  const more = (letter: string) => (isBold && !/\d/.test(letter) ? BOLD : 1);
  return font * [...text].reduce((sum, letter) => sum + widthOf(letter) * more(letter), 0);
}

function widthOf(letter: string): number {
  // Past Latin, Greek and Cyrillic are letters as wide as they are tall.
  if (letter > "\u052f" && !/[\u2000-\u20ff]/.test(letter)) return 1.05;
  return WIDTHS.find(([kind]) => kind.test(letter))?.[1] ?? OTHER;
}

/**
 * A text in lines no wider than a room: broken at its spaces, in a word where that alone is too wide. What goes past the most
 * lines is left out, and the last line says so.
 */
export function brokenLines(
  text: string,
  room: number,
  font: number,
  mostLines: number,
  isBold = false,
): readonly string[] {
  const fits = (line: string) => lineRoom(line, font, isBold) <= room;
  const written: string[] = [];
  for (const word of text.split(" ")) {
    const last = written.at(-1);
    if (last !== undefined && fits(`${last} ${word}`)) {
      written[written.length - 1] = `${last} ${word}`;
      continue;
    }
    let rest = [...word];
    while (rest.length > 1 && !fits(rest.join(""))) {
      let end = rest.length;
      while (end > 1 && !fits(`${rest.slice(0, end).join("")}-`)) end--;
      written.push(`${rest.slice(0, end).join("")}-`);
      rest = rest.slice(end);
    }
    written.push(rest.join(""));
  }
  if (written.length <= mostLines) return written;
  const kept = written.slice(0, mostLines);
  let last = [...kept.at(-1)!.replace(/-$/, "")];
  while (last.length > 0 && !fits(`${last.join("")}…`)) last = last.slice(0, -1);
  return [...kept.slice(0, -1), `${last.join("").trimEnd()}…`];
}
