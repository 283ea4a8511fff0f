import {
  type Page,
  type PageCircle,
  type PageLine,
  type PageText,
  type Pen,
  textWidth,
} from "../../geometry/page.ts";
import { isSpelledOtherwise } from "../../geometry/winAnsi.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import { barWords, LETTERS_NOTE } from "../wording/drawingWords.ts";

/** What a page is put together from. */
export interface Drawn {
  readonly lines: readonly PageLine[];
  readonly circles: readonly PageCircle[];
  readonly texts: readonly PageText[];
}

export const NOTHING: Drawn = { lines: [], circles: [], texts: [] };

export function together(...parts: readonly Drawn[]): Drawn {
  return {
    lines: parts.flatMap(({ lines }) => lines),
    circles: parts.flatMap(({ circles }) => circles),
    texts: parts.flatMap(({ texts }) => texts),
  };
}

/** The same elsewhere on the page. */
export function movedBy(drawn: Drawn, dx: number, dy: number): Drawn {
  return {
    lines: drawn.lines.map((line) => ({
      ...line,
      points: Float64Array.from(line.points, (value, i) => value + (i % 2 === 0 ? dx : dy)),
    })),
    circles: drawn.circles.map((circle) => ({
      ...circle,
      center: [circle.center[0] + dx, circle.center[1] + dy] as const,
    })),
    texts: drawn.texts.map((text) => ({ ...text, at: [text.at[0] + dx, text.at[1] + dy] as const })),
  };
}

export function line(pen: Pen, ...points: readonly number[]): PageLine {
  return { pen, points };
}

/** Lines of text from a place down. */
export function paragraph(lines: readonly string[], x: number, top: number, size: number): PageText[] {
  return lines.map((text, i) => ({ at: [x, top - size - i * size * LEADING] as const, size, text }));
}

/** A text in lines no longer than `width`. */
export function wrapped(text: string, width: number, size: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && textWidth(longer, size) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** From one line of text to the next, in sizes. */
export const LEADING = 1.35;

/** mm. Height that `scaleBar` takes up above its place. */
export const BAR_HEIGHT = 8;

/** A bar to measure on the print: 4 in or 100 mm by the units. @param x, y its lower left corner */
export function scaleBar(units: "in" | "mm", x: number, y: number): Drawn {
  const length = units === "in" ? 4 * MM_PER_INCH : 100;
  return {
    ...NOTHING,
    lines: [
      line("dimension", x, y + 1.5, x + length, y + 1.5),
      line("dimension", x, y, x, y + 3),
      line("dimension", x + length, y, x + length, y + 3),
    ],
    texts: [{ at: [x, y + 4.5], size: 2.8, text: barWords(units) }],
  };
}

/** mm. Where it is told, under the margin, that letters are spelled otherwise, and how large. */
const LETTERS = { x: 10, y: 4, size: 2.4 };

/** A page of that size; words whose letters a PDF's font does not have are told of at its foot. */
export function pageOf(title: string, size: { width: number; height: number }, drawn: Drawn): Page {
  const { x, y, size: height } = LETTERS;
  const isOther = drawn.texts.some(({ text }) => isSpelledOtherwise(text));
  const note: PageText = { at: [x, y], size: height, text: LETTERS_NOTE };
  const texts = isOther ? [...drawn.texts, note] : drawn.texts;
  return { title, width: size.width, height: size.height, ...drawn, texts };
}
